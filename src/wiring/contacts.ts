// Which contacts a switch needs: the contact plans of one switch that give every mode, with the fewest poles for each number of
// bank lines and the other way round. Uniform switches by counting (proof below); others by trying every assignment.
//
// Lines and grounding enables share poles: the hub carries ground and each throw at most one net. A contact between two points
// of a card, or a change-over, takes a section of its own. At one position of a uniform switch a ground pole pulls one net low,
// so g ground poles are enough exactly when no mode needs more than g nets low at once; this is what `uniformPlans` counts.
import type { Switch } from "../records/index.js";
import { closedIn, type Demands, type SwitchedCard } from "./demands.js";
import { isUniform, type Section, sectionsOf } from "./sections.js";

/** What a throw is wired to. `line` counts the switched lines from 0; `card` is a place in the demanded cards. */
export type ThrowUse =
  | { readonly kind: "line"; readonly line: number }
  | { readonly kind: "card"; readonly card: number; readonly side: "closed" | "on" | "off" };

export type SectionUse =
  | { readonly kind: "ground"; readonly throws: ReadonlyMap<string, ThrowUse> }
  | { readonly kind: "card"; readonly card: number; readonly throws: ReadonlyMap<string, ThrowUse> };

export interface ContactPlan {
  readonly part: Switch;
  readonly sections: readonly Section[];
  /** One entry a section; undefined: unused. */
  readonly uses: readonly (SectionUse | undefined)[];
  readonly poles: number;
  readonly lines: number;
  /** Wired throws. */
  readonly contacts: number;
  /** Mode at each position; undefined: beyond the stop. */
  readonly modeAt: readonly (number | undefined)[];
  /** Levels of the switched lines at each position; bit j set: line j high. */
  readonly levelsAt: readonly number[];
  /** Version by levels; levels that are not listed hold the safest version. */
  readonly versionAt: ReadonlyMap<number, number>;
}

export interface ContactSearch {
  /** Best plans, none of which another beats in both poles and lines; fewest poles first. */
  readonly plans: readonly ContactPlan[];
  /** Every assignment of the class was looked at. */
  readonly complete: boolean;
  readonly looked: number;
  /** Why there is none. */
  readonly says?: string;
}

/** Assignments looked at before an unusual switch is given up as too large. */
const mostAssignments = 400_000;
/** Lines an unusual switch is tried with. */
const mostLines = 4;

export function contactPlans(part: Switch, demands: Demands, linesAvailable: number): ContactSearch {
  const sections = sectionsOf(part);
  const modes = demands.modes.length;
  if (part.positions.length < modes) {
    return { plans: [], complete: true, looked: 0, says: `${part.name} has ${part.positions.length} positions for ${modes} modes` };
  }
  if (isUniform(sections, part.positions.length)) return uniformPlans(part, sections, demands, linesAvailable);
  return searchedPlans(part, sections, demands, linesAvailable);
}

/** Positions past the modes of a knob are shut off by its stop ring; a lever has no stop. */
export function hasStop(part: Switch): boolean {
  return part.form === "rotary";
}

function isOwn(card: SwitchedCard): boolean {
  return card.kind !== "ground";
}

/** Nets that the enables alone pull low in a mode. */
function lowCards(demands: Demands, mode: number): number[] {
  const on = demands.modes[mode]!.on;
  return demands.cards.flatMap((card, i) => (card.kind === "ground" && closedIn(card, on[i]!) ? [i] : []));
}

/** Ways to have 1 to `zeros` of `lines` lines low. */
export function codesWithin(lines: number, zeros: number): number {
  let total = 0;
  let choose = 1;
  for (let z = 1; z <= Math.min(lines, zeros); z += 1) {
    choose = (choose * (lines - z + 1)) / z;
    total += choose;
  }
  return total;
}

/** Contacts each version can spare for lines with `ground` poles; the safest version needs none and is left out. */
export function slackOf(demands: Demands, ground: number): readonly { readonly version: number; readonly slack: number }[] {
  return demands.versions
    .map((version, v) => ({
      version: v,
      slack: Math.min(...demands.modes.flatMap((mode, m) => (mode.firmware === version ? [ground - lowCards(demands, m).length] : []))),
    }))
    .sort((a, b) => a.slack - b.slack || a.version - b.version);
}

/** Fewest lines that tell all versions apart with this many ground poles, or undefined. */
export function fewestLines(demands: Demands, ground: number, linesAvailable: number): number | undefined {
  const all = slackOf(demands, ground);
  if (all.some((s) => s.slack < 0)) return undefined;
  const others = all.filter((s) => s.version !== 0);
  for (let lines = 0; lines <= linesAvailable; lines += 1) {
    if (others.every((s, i) => codesWithin(lines, s.slack) >= i + 1)) return lines;
  }
  return undefined;
}

function uniformPlans(part: Switch, sections: readonly Section[], demands: Demands, linesAvailable: number): ContactSearch {
  const own = demands.cards.filter(isOwn).length;
  const plans: ContactPlan[] = [];
  for (let ground = 0; ground + own <= sections.length; ground += 1) {
    const lines = fewestLines(demands, ground, linesAvailable);
    if (lines === undefined || plans.some((p) => p.lines <= lines)) continue;
    plans.push(uniformPlan(part, sections, demands, ground, lines));
  }
  if (plans.length > 0) return { plans, complete: true, looked: plans.length };
  const needs = own + demands.cards.filter((c) => !isOwn(c)).length;
  return {
    plans,
    complete: true,
    looked: 0,
    says:
      `${part.name} has ${sections.length} pole${sections.length === 1 ? "" : "s"}; ${own} go to enables with points of their own` +
      `, and the rest cannot pull ${demands.versions.length} images and ${needs - own} grounding enables as the modes ask`,
  };
}

function uniformPlan(part: Switch, sections: readonly Section[], demands: Demands, ground: number, lines: number): ContactPlan {
  const codes = codesByContacts(lines);
  const versionAt = new Map<number, number>([[2 ** lines - 1, 0]]);
  const codeOf = new Map<number, number>([[0, 2 ** lines - 1]]);
  let next = 1;
  // Tightest first: the codes with the fewest lows go to the versions that can spare the fewest contacts.
  for (const { version } of slackOf(demands, ground)) {
    if (version === 0) continue;
    const code = codes[next++]!;
    versionAt.set(code, version);
    codeOf.set(version, code);
  }
  const modeAt = part.positions.map((_, p) => (p < demands.modes.length ? p : hasStop(part) ? undefined : demands.safest));
  const throwsOf = sections.map(() => new Map<string, ThrowUse>());
  const levelsAt: number[] = [];
  const home = new Map<string, number>();
  const own = new Map(demands.cards.flatMap((card, i) => (isOwn(card) ? [i] : [])).map((card, i) => [card, ground + i]));
  modeAt.forEach((mode, position) => {
    if (mode === undefined) {
      levelsAt.push(2 ** lines - 1);
      return;
    }
    const code = codeOf.get(demands.versions.indexOf(demands.modes[mode]!.firmware))!;
    levelsAt.push(code);
    const low: ThrowUse[] = [
      ...Array.from({ length: lines }, (_, line) => line).flatMap((line): ThrowUse[] =>
        (code >> line) & 1 ? [] : [{ kind: "line", line }],
      ),
      ...lowCards(demands, mode).map((card): ThrowUse => ({ kind: "card", card, side: "closed" })),
    ];
    place(low, position, sections.slice(0, ground), throwsOf, home);
    for (const [card, section] of own) {
      const record = demands.cards[card]!;
      const closed = closedIn(record, demands.modes[mode]!.on[card]!);
      const side = record.kind === "change-over" ? (closed ? "on" : "off") : "closed";
      if (record.kind === "pair" && !closed) continue;
      throwsOf[section]!.set(throwAt(sections[section]!, position), { kind: "card", card, side });
    }
  });
  const ownAt = new Map([...own].map(([card, section]) => [section, card]));
  const uses = sections.map((_, s): SectionUse | undefined => {
    const throws = throwsOf[s]!;
    const card = ownAt.get(s);
    if (card !== undefined) return { kind: "card", card, throws };
    return throws.size > 0 ? { kind: "ground", throws } : undefined;
  });
  return finish({ part, sections, uses, lines, modeAt, levelsAt, versionAt });
}

/** Puts the nets of one position on free poles; a net stays on the pole it had before where it can. */
function place(
  low: readonly ThrowUse[],
  position: number,
  sections: readonly Section[],
  throwsOf: readonly Map<string, ThrowUse>[],
  home: Map<string, number>,
): void {
  const taken = new Set<number>();
  const name = (use: ThrowUse) => (use.kind === "line" ? `line ${use.line}` : `card ${use.card}`);
  const put = (use: ThrowUse, section: number) => {
    taken.add(section);
    if (!home.has(name(use))) home.set(name(use), section);
    throwsOf[section]!.set(throwAt(sections[section]!, position), use);
  };
  const later: ThrowUse[] = [];
  for (const use of low) {
    const at = home.get(name(use));
    if (at !== undefined && !taken.has(at)) put(use, at);
    else later.push(use);
  }
  for (const use of later) {
    const free = sections.findIndex((_, s) => !taken.has(s));
    if (free >= 0) put(use, free);
  }
}

function throwAt(section: Section, position: number): string {
  return section.throws.find((t) => t.closed.has(position))!.terminal;
}

/** All levels of the lines, fewest lows first; the first is all high. */
function codesByContacts(lines: number): number[] {
  const lows = (code: number) => lines - [...code.toString(2)].filter((b) => b === "1").length;
  return Array.from({ length: 2 ** lines }, (_, code) => code).sort((a, b) => lows(a) - lows(b) || b - a);
}

function finish(plan: Omit<ContactPlan, "poles" | "contacts">): ContactPlan {
  const used = plan.uses.filter((u) => u !== undefined);
  return { ...plan, poles: used.length, contacts: used.reduce((sum, u) => sum + u.throws.size, 0) };
}

/** Every assignment of nets to terminals, for switches whose throws close in several positions or in none. */
function searchedPlans(part: Switch, sections: readonly Section[], demands: Demands, linesAvailable: number): ContactSearch {
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
