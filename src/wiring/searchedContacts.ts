// Contact plans of a switch whose throws close in several positions or in none: every assignment of nets to terminals is tried, and
// for each every choice of versions that gives each position a mode and each mode a position.
import type { Switch } from "../records/index.js";
import { type ContactPlan, type ContactSearch, finish, hasStop, isOwn, type SectionUse, type ThrowUse } from "./contactPlan.js";
import type { Demands } from "./demands.js";
import type { Section } from "./sections.js";

/** Assignments looked at before an unusual switch is given up as too large. */
const mostAssignments = 400_000;
/** Lines an unusual switch is tried with. */
const mostLines = 4;

/** Every assignment of nets to terminals, for switches whose throws close in several positions or in none. */
export function searchedPlans(part: Switch, sections: readonly Section[], demands: Demands, linesAvailable: number): ContactSearch {
  const best = new Map<number, ContactPlan>();
  let looked = 0;
  let complete = true;
  const grounds = demands.cards.flatMap((card, i) => (isOwn(card) ? [] : [i]));
  const least = Math.ceil(Math.log2(demands.versions.length));
  for (let lines = least; lines <= Math.min(linesAvailable, mostLines); lines += 1) {
    const nets: (ThrowUse | undefined)[] = [
      undefined,
      ...Array.from({ length: lines }, (_, line): ThrowUse => ({ kind: "line", line })),
      ...grounds.map((card): ThrowUse => ({ kind: "card", card, side: "closed" })),
    ];
    const uses: (SectionUse | undefined)[] = [];
    const walk = (s: number, own: ReadonlySet<number>): void => {
      if (looked >= mostAssignments) {
        complete = false;
        return;
      }
      const section = sections[s];
      if (!section) {
        looked += 1;
        const plan = judge(part, sections, [...uses], lines, demands);
        const before = best.get(lines);
        if (plan && (!before || plan.poles < before.poles || (plan.poles === before.poles && plan.contacts < before.contacts)))
          best.set(lines, plan);
        return;
      }
      uses.push(undefined);
      walk(s + 1, own);
      uses.pop();
      const terminals = section.throws.map((t) => t.terminal);
      assign(terminals, nets, (throws) => {
        uses.push({ kind: "ground", throws });
        walk(s + 1, own);
        uses.pop();
      });
      demands.cards.forEach((card, i) => {
        if (!isOwn(card) || own.has(i)) return;
        const sides: (ThrowUse | undefined)[] =
          card.kind === "pair"
            ? [undefined, { kind: "card", card: i, side: "closed" }]
            : [undefined, { kind: "card", card: i, side: "on" }, { kind: "card", card: i, side: "off" }];
        assign(terminals, sides, (throws) => {
          uses.push({ kind: "card", card: i, throws });
          walk(s + 1, new Set([...own, i]));
          uses.pop();
        });
      });
    };
    walk(0, new Set());
  }
  const plans = [...best.values()].sort((a, b) => a.poles - b.poles || a.lines - b.lines);
  const front = plans.filter((p, i) => plans.slice(0, i).every((q) => p.lines < q.lines));
  const says = complete
    ? `no wiring of ${part.name} gives the modes at its positions`
    : `${part.name} has too many contacts to try them all`;
  return { plans: front, complete, looked, says: front.length > 0 ? undefined : says };
}

function assign(
  terminals: readonly string[],
  nets: readonly (ThrowUse | undefined)[],
  take: (throws: Map<string, ThrowUse>) => void,
): void {
  const throws = new Map<string, ThrowUse>();
  const step = (i: number): void => {
    const terminal = terminals[i];
    if (terminal === undefined) {
      if (throws.size > 0) take(new Map(throws));
      return;
    }
    for (const net of nets) {
      if (net) throws.set(terminal, net);
      step(i + 1);
      throws.delete(terminal);
    }
  };
  step(0);
}

/** The plan an assignment makes, when each position gives a mode and each mode has a position. */
function judge(
  part: Switch,
  sections: readonly Section[],
  uses: readonly (SectionUse | undefined)[],
  lines: number,
  demands: Demands,
): ContactPlan | undefined {
  const wired = new Set(uses.flatMap((u) => (u ? [...u.throws.values()].filter((t) => t.kind === "card").map((t) => t.card) : [])));
  if (demands.cards.some((_, i) => !wired.has(i))) return undefined;
  const open = 2 ** lines - 1;
  const levelsAt: number[] = [];
  const wants: number[][] = [];
  for (let position = 0; position < part.positions.length; position += 1) {
    let levels = open;
    const sides: Set<string>[] = demands.cards.map(() => new Set());
    uses.forEach((use, s) => {
      for (const t of use ? sections[s]!.throws : []) {
        const net = t.closed.has(position) ? use!.throws.get(t.terminal) : undefined;
        if (net?.kind === "line") levels &= ~(1 << net.line);
        else if (net) sides[net.card]!.add(net.side);
      }
    });
    const on = demands.cards.map((card, i) => {
      if (card.kind === "change-over") return sides[i]!.size === 1 ? sides[i]!.has("on") : undefined;
      return sides[i]!.has("closed") === (card.closedIs === "on");
    });
    const fits = demands.modes.flatMap((mode, m) => (mode.on.every((want, i) => want === on[i]) ? [m] : []));
    if (fits.length === 0 && !hasStop(part)) return undefined;
    levelsAt.push(levels);
    wants.push(fits);
  }
  const versionAt = chooseVersions(levelsAt, wants, open, demands, hasStop(part));
  if (!versionAt) return undefined;
  const modeAt = modesAt(levelsAt, wants, versionAt, demands);
  if (demands.modes.some((_, mode) => !modeAt.includes(mode))) return undefined;
  return finish({ part, sections, uses, lines, modeAt, levelsAt, versionAt });
}

/** A version for each levels, so that every position has a mode (or lies beyond the stop) and every mode a position. */
function chooseVersions(
  levelsAt: readonly number[],
  wants: readonly (readonly number[])[],
  open: number,
  demands: Demands,
  stop: boolean,
): Map<number, number> | undefined {
  const different = [...new Set(levelsAt)];
  const chosen = new Map<number, number>([[open, 0]]);
  const version = (mode: number) => demands.versions.indexOf(demands.modes[mode]!.firmware);
  const holds = (levels: number, v: number) =>
    stop || levelsAt.every((at, p) => at !== levels || wants[p]!.some((mode) => version(mode) === v));
  const complete = () =>
    demands.modes.every((_, mode) => levelsAt.some((at, p) => wants[p]!.includes(mode) && chosen.get(at) === version(mode)));
  const step = (i: number): boolean => {
    const levels = different[i];
    if (levels === undefined) return complete();
    if (levels === open) return holds(levels, 0) && step(i + 1);
    for (let v = 0; v < demands.versions.length; v += 1) {
      if (!holds(levels, v)) continue;
      chosen.set(levels, v);
      if (step(i + 1)) return true;
      chosen.delete(levels);
    }
    return false;
  };
  return step(0) ? chosen : undefined;
}

function modesAt(
  levelsAt: readonly number[],
  wants: readonly (readonly number[])[],
  versionAt: ReadonlyMap<number, number>,
  demands: Demands,
): (number | undefined)[] {
  const used = new Set<number>();
  return levelsAt.map((levels, p) => {
    const version = demands.versions[versionAt.get(levels) ?? 0];
    const fits = wants[p]!.filter((mode) => demands.modes[mode]!.firmware === version);
    const mode = fits.find((m) => !used.has(m)) ?? fits[0];
    if (mode !== undefined) used.add(mode);
    return mode;
  });
}
