// Which version lies under which levels of the lines, once the switch has said which levels and which cards each position gives.
// Positions with the same levels show the same version, so versions are given to levels: the request with the fewest levels left
// that could meet it comes first, levels that are alike are tried once, and what can no longer be met ends a branch.
import { itemAt } from "../../records/index.js";
import type { Demands } from "../demand/demands.js";

export interface Request {
  /** Levels of the lines, position by position; only positions that can be reached. */
  readonly levelsAt: readonly number[];
  /** Modes whose cards are on and off as they are there, position by position. */
  readonly wants: readonly (readonly number[])[];
  /** Levels with every line open: they show the safest version. */
  readonly open: number;
  readonly demands: Demands;
}

/** Steps one choice may take. Random machines with sixteen positions take a few dozen. */
const mostSteps = 20_000;

/** The positions that share their levels. */
interface Group {
  readonly levels: number;
  /** How many of them want which modes. */
  readonly counts: ReadonlyMap<string, number>;
  /** Versions it may still show. */
  readonly versions: ReadonlySet<number>;
}

/** So many positions with these cards must still show this version. */
interface Need {
  readonly version: number;
  readonly cards: string;
  readonly count: number;
}

/**
 * A version for each levels, so that every position shows a mode and every mode has a position of its own. "stopped": the steps ran
 * out before there was an answer.
 */
export function chooseVersions(request: Request): Map<number, number> | "none" | "stopped" {
  const { levelsAt, wants, open, demands } = request;
  const named = new Map<readonly number[], string>();
  const nameOf = (modes: readonly number[]) => {
    const name = named.get(modes) ?? modes.join(" ");
    named.set(modes, name);
    return name;
  };
  const needs = needsOf(wants, nameOf, demands);
  if (!needs) return "none";
  const countsAt = new Map<number, Map<string, number>>();
  levelsAt.forEach((levels, p) => {
    const counts = countsAt.get(levels) ?? new Map<string, number>();
    const cards = nameOf(itemAt(wants, p));
    countsAt.set(levels, counts.set(cards, (counts.get(cards) ?? 0) + 1));
  });
  const groups = [...countsAt].map(([levels, counts]): Group => {
    const shows = (version: number) =>
      [...counts.keys()].every((cards) => needs.some((need) => need.version === version && need.cards === cards));
    const versions = demands.versions.flatMap((_, v) => (shows(v) && (levels !== open || v === 0) ? [v] : []));
    return { levels, counts, versions: new Set(versions) };
  });
  if (groups.some((group) => group.versions.size === 0)) return "none";
  let steps = 0;
  const chosen = new Map<number, number>([[open, 0]]);
  const step = (free: readonly Group[], unmet: readonly Need[]): boolean | undefined => {
    steps += 1;
    if (steps > mostSteps) return undefined;
    if (unmet.length === 0) {
      for (const group of free) chosen.set(group.levels, Math.min(...group.versions));
      return true;
    }
    const need = tightest(free, unmet);
    if (!need || !eachHasOne(free, unmet)) return false;
    const tried = new Set<string>();
    let left = free;
    for (const group of free) {
      if (!serves(group, need)) continue;
      const alike = likeness(group);
      if (tried.has(alike)) continue;
      tried.add(alike);
      chosen.set(group.levels, need.version);
      const found = step(
        left.filter((other) => other.levels !== group.levels),
        unmet.flatMap((other) => lessened(other, group, need.version)),
      );
      if (found !== false) return found;
      chosen.delete(group.levels);
      // Neither it nor one like it shows this version.
      left = left.map((other) => (likeness(other) === alike ? without(other, need.version) : other));
      if (left.some((other) => other.versions.size === 0)) return false;
    }
    return false;
  };
  const opened = groups.find((group) => group.levels === open);
  const found = step(
    groups.filter((group) => group !== opened),
    opened ? needs.flatMap((need) => lessened(need, opened, 0)) : needs,
  );
  return found === undefined ? "stopped" : found ? chosen : "none";
}

/** How many positions each version needs with each set of cards; undefined when some mode's cards are at no position. */
function needsOf(wants: Request["wants"], nameOf: (modes: readonly number[]) => string, demands: Demands): Need[] | undefined {
  const different = [...new Set(wants)];
  const cardsOf = demands.modes.map((_, mode) => {
    const modes = different.find((some) => some.includes(mode));
    return modes && nameOf(modes);
  });
  const needs = new Map<string, Need>();
  for (const [mode, { firmware }] of demands.modes.entries()) {
    const cards = cardsOf[mode];
    if (cards === undefined) return undefined;
    const version = demands.versions.indexOf(firmware);
    const key = `${version}: ${cards}`;
    needs.set(key, { version, cards, count: (needs.get(key)?.count ?? 0) + 1 });
  }
  return [...needs.values()];
}

function serves(group: Group, need: Need): boolean {
  return group.versions.has(need.version) && group.counts.has(need.cards);
}

/** The need that the fewest positions can meet; undefined when one can no longer be met. */
function tightest(free: readonly Group[], unmet: readonly Need[]): Need | undefined {
  let best: { readonly need: Need; readonly spare: number } | undefined;
  for (const need of unmet) {
    const serving = free.filter((group) => serves(group, need));
    const spare = serving.reduce((sum, group) => sum + (group.counts.get(need.cards) ?? 0), 0) - need.count;
    if (spare < 0) return undefined;
    if (!best || spare < best.spare) best = { need, spare };
  }
  return best?.need;
}

/** Each version with an unmet need can have a group of its own: by augmenting paths. */
function eachHasOne(free: readonly Group[], unmet: readonly Need[]): boolean {
  const holder = new Map<number, number>();
  const place = (version: number, seen: Set<number>): boolean =>
    free.some((group) => {
      if (seen.has(group.levels) || !unmet.some((need) => need.version === version && serves(group, need))) return false;
      seen.add(group.levels);
      const other = holder.get(group.levels);
      if (other !== undefined && !place(other, seen)) return false;
      holder.set(group.levels, version);
      return true;
    });
  return [...new Set(unmet.map((need) => need.version))].every((version) => place(version, new Set()));
}

/** What a need still asks for once the group shows a version. */
function lessened(need: Need, group: Group, version: number): Need[] {
  const met = need.version === version ? (group.counts.get(need.cards) ?? 0) : 0;
  return met >= need.count ? [] : [{ ...need, count: need.count - met }];
}

function without(group: Group, version: number): Group {
  return { ...group, versions: new Set([...group.versions].filter((v) => v !== version)) };
}

function likeness(group: Group): string {
  const counts = [...group.counts].map(([cards, count]) => `${cards}=${count}`).sort();
  return `${counts.join(";")}|${[...group.versions].join()}`;
}

/** The mode of each position; of two modes alike each gets one. */
export function modesAt({ levelsAt, wants, demands }: Request, versionAt: ReadonlyMap<number, number>): (number | undefined)[] {
  const used = new Set<number>();
  return levelsAt.map((levels, p) => {
    const version = demands.versions[versionAt.get(levels) ?? 0];
    const fits = itemAt(wants, p).filter((mode) => itemAt(demands.modes, mode).firmware === version);
    const mode = fits.find((m) => !used.has(m)) ?? fits[0];
    if (mode !== undefined) used.add(mode);
    return mode;
  });
}
