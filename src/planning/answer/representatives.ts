// Ranked representatives: groups of combinations that differ in more than slots, best first, from three sources:
// the cheapest changes at each level of remaining effect, and what members had running (so that a proven way is never missed).

import {
  applies,
  type Compiled,
  changeCost,
  eachCard,
  type Frame,
  forbids,
  inSlot,
  ofRevision,
  onRevisions,
  runsVersion,
  setTo,
  withMemory,
  withRules,
} from "../../encoding/index.js";
import type { ResolvedCard } from "../../machine/index.js";
import { type BuildCard, bytes, itemAt } from "../../records/index.js";
import { type Budget, type Constraint, cheapest, decide, type Problem, possible, type Solution } from "../../solver/index.js";
import type { Combination } from "./answer.js";
import { combinationOf } from "./combination.js";
import { evidenceRank, type Proven, provenModes } from "./evidence.js";
import { atLeastProven } from "./proofs.js";
import { atMostLevel } from "./verdict.js";

interface Candidate {
  readonly solution: Solution;
  readonly effects: readonly number[];
  readonly open: boolean;
}

/** Up to `most` groups, best first; of the certain ones if there are any, else of the possible. `among` narrows both. */
export function representatives(
  compiled: Compiled,
  most: number,
  budget?: Budget,
  among: readonly Problem[] = compiled.unsettled.length > 0 ? [compiled.certain, compiled.possible] : [compiled.certain],
): Combination[] {
  const { frame } = compiled;
  const group = groupVariables(frame);
  const found = new Map<string, Candidate>();
  const add = (solution: Solution, provenBetter = false) => {
    const key = group.map((v) => solution[v]).join(",");
    const candidate = { solution, effects: effectsOf(compiled, solution), open: compiled.unsettled.some((u) => applies(u, solution)) };
    const before = found.get(key);
    const better = before ? compare(effectRank(candidate), effectRank(before)) : -1;
    if (better < 0 || (better === 0 && provenBetter)) found.set(key, candidate);
    // Milder in the same group and better proven in other slots: both are told.
    else if (provenBetter) found.set(`${key} proven`, candidate);
  };
  const cost = changeCost(frame);
  const proven = provenModes(compiled.question);
  for (const problem of among) {
    let tests = 0;
    for (const pins of provenPins(compiled, proven)) {
      // Only tests that can be had count towards the most: one of another machine must not keep this one's out.
      if (tests === mostTests) break;
      const pinned = withRules(problem, pins);
      if (decide(pinned, budget).kind !== "found") continue;
      tests += 1;
      for (const s of cheapest(mildest(compiled, pinned, budget), [cost], { k: 1 }, budget).solutions) add(s.solution);
    }
    for (const s of cheapest(mildest(compiled, problem, budget), [cost], { k: most, project: group }, budget).solutions) add(s.solution);
    for (const level of levels(compiled)) {
      if (found.size >= most) break;
      for (const s of cheapest(atMostLevel(compiled, problem, level), [cost], { k: most, project: group }, budget).solutions)
        add(s.solution);
    }
    const better = betterProven(compiled, problem, [...found.values()], proven, budget);
    if (better) add(better, true);
    if (found.size > 0) break;
  }
  const told = [...found.values()].map((c) => ({
    ...c,
    price: priceOf(compiled, c.solution),
    told: combinationOf(compiled, c.solution, slotsAt(compiled, c.solution), proven),
  }));
  told.sort((a, b) => compare(rank(a), rank(b)));
  return told.slice(0, most).map((c) => ({ ...c.told, ...withFreedom(compiled, c, proven, budget) }));
}

/** Most copies of a card for which a better proven way is looked for beyond the single tests. */
const mostCopies = 2;

/**
 * A way with no worse an effect than the mildest of these and better proven than any as mild: one that several tests prove, each a mode of
 * it, is pinned by none of them.
 */
function betterProven(
  compiled: Compiled,
  problem: Problem,
  found: readonly Candidate[],
  proven: readonly Proven[],
  budget?: Budget,
): Solution | undefined {
  // The links of a machine with many copies of a card have too many ways to tell the copies apart.
  const ids = compiled.question.cards.map((c) => c.card.id);
  if (ids.some((id) => ids.filter((other) => other === id).length > mostCopies)) return undefined;
  const worst = Math.min(...found.map(worstEffect));
  const mild = found.filter((c) => worstEffect(c) === worst);
  const graded = mild.map((c) => evidenceRank(combinationOf(compiled, c.solution, slotsAt(compiled, c.solution), proven).evidence));
  const within = atMostLevel(compiled, problem, worst + 1);
  for (const grade of ["bench", "documented", "reported"] as const) {
    if (graded.length === 0 || evidenceRank(grade) >= Math.min(...graded)) return undefined;
    const narrowed = atLeastProven(compiled.frame, within, grade);
    if (!narrowed || decide(narrowed, budget).kind !== "found") continue;
    const [cheapestOf] = cheapest(mildest(compiled, narrowed, budget), [changeCost(compiled.frame)], { k: 1 }, budget).solutions;
    return cheapestOf?.solution.slice(0, compiled.frame.variables.length);
  }
  return undefined;
}

/**
 * The problem with every remedy, loss and note ruled out that need not be suffered, the worst ruled out first. Whole runs of them are tried
 * at once and halved only where they cannot all go, which gives what one after another would give, with far fewer tries.
 */
function mildest(compiled: Compiled, problem: Problem, budget?: Budget): Problem {
  const without = (mild: Problem, softs: Compiled["soft"]): Problem => {
    if (softs.length === 0) return mild;
    const tried = withRules(
      mild,
      softs.flatMap((s) => forbids(s.when)),
    );
    if (decide(tried, budget).kind === "found") return tried;
    const half = Math.ceil(softs.length / 2);
    return softs.length === 1 ? mild : without(without(mild, softs.slice(0, half)), softs.slice(half));
  };
  // Equals come in the order of what they are about, variables and values: not in that of the names or files of the records.
  const soft = compiled.soft.map((s) => ({ s, about: JSON.stringify(s.when) }));
  soft.sort((a, b) => b.s.level - a.s.level || compareText(a.about, b.about));
  return without(
    problem,
    soft.map(({ s }) => s),
  );
}

/** How many remedies, losses and notes a solution has: [remedies, losses, notes]. */
function effectsOf(compiled: Compiled, solution: Solution): readonly number[] {
  const met = compiled.soft.filter((s) => applies(s, solution));
  return [3, 2, 1].map((level) => met.filter((s) => s.level === level).length);
}

/** The worst kind of effect a machine keeps: 0 none or only a note, 1 a loss, 2 a remedy to take. */
function worstEffect({ effects: [remedies = 0, losses = 0] }: Candidate): number {
  return remedies > 0 ? 2 : losses > 0 ? 1 : 0;
}

/** The worst kind of effect first, then how many of each kind. */
function effectRank(c: Candidate): number[] {
  return [c.open ? 1 : 0, 3 - [...c.effects, 1].findIndex((n) => n > 0), ...c.effects];
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return itemAt(a, i) - itemAt(b, i);
  return 0;
}

/**
 * Worst remaining effect, evidence (weakest link, then how much of it is proven), number of effects, changes, headroom, spare slots.
 * What only looks odd is no worse than nothing: a tested machine with a note comes before one that nobody has tried.
 */
function rank(c: Candidate & { readonly price: number; readonly told: Combination }): number[] {
  const rails = c.told.headroom.map((h) => (h.used_A === "unknown" || h.limit_A === "unknown" ? 0 : h.limit_A - h.used_A));
  const grades = c.told.rests.map((r) => evidenceRank(r.grade)).reduce((a, b) => a + b, 0);
  return [
    c.open ? 1 : 0,
    worstEffect(c),
    evidenceRank(c.told.evidence),
    grades,
    ...c.effects,
    c.price,
    -Math.min(Number.MAX_SAFE_INTEGER, ...rails),
    -c.told.spareSlots,
    ...c.solution,
  ];
}

/** All choices but the slots: combinations that agree on these are one group. */
export function groupVariables(frame: Frame): number[] {
  return frame.variables.map((_, v) => v).filter((v) => !frame.cards.some((c) => c.slot === v));
}

function levels(compiled: Compiled): number[] {
  return [...new Set([0, ...compiled.soft.map((s) => s.level)])].sort((a, b) => a - b);
}

function priceOf(compiled: Compiled, solution: Solution): number {
  return changeCost(compiled.frame).terms.reduce((sum, t) => sum + (t.weights[itemAt(solution, t.variable)] ?? 0), 0);
}

export function slotsAt(compiled: Compiled, solution: Solution): ReadonlySet<number>[] {
  return compiled.frame.cards.map((c) => new Set([itemAt(solution, c.slot)]));
}

/** The slots each card may take with the group's other choices and no further remedy, loss or note. */
function withFreedom(
  compiled: Compiled,
  { solution, open }: Candidate,
  proven: readonly Proven[],
  budget?: Budget,
): Pick<Combination, "cards"> {
  return { cards: combinationOf(compiled, solution, slotFreedom(compiled, solution, open, budget), proven).cards };
}

/** By card, the slots it may take with all else of the solution as it is; `open` when missing facts decide on it. */
export function slotFreedom(compiled: Compiled, solution: Solution, open: boolean, budget?: Budget): readonly ReadonlySet<number>[] {
  const others = compiled.soft.filter((s) => !applies(s, solution)).flatMap((s) => forbids(s.when));
  const base: Problem = withRules(open ? compiled.possible : compiled.certain, others);
  const pins: Constraint[] = groupVariables(compiled.frame).map((variable) => ({
    kind: "unary",
    variable,
    values: [itemAt(solution, variable)],
  }));
  const { values } = possible(withRules(base, pins), budget);
  return compiled.frame.cards.map((v) => itemAt(values, v.slot));
}

/** Most tests that are tried for a proven way. */
const mostTests = 10;

/**
 * For tested builds that worked with some of these cards: the machine pinned to what they had, each machine once. The tests with most of
 * the cards first, then the newest; what they are called decides nothing.
 */
function provenPins(compiled: Compiled, proven: readonly Proven[]): readonly Constraint[][] {
  const { question } = compiled;
  const scored = proven
    .flatMap((p) => pairings(question.cards, p.fitted).map((fitted) => ({ p, fitted })))
    .filter(({ fitted }) => fitted.size > 0)
    .map(({ p, fitted }) => ({ shared: fitted.size, date: p.build.result?.date ?? "", pins: pinsOf(compiled, p, fitted) }))
    .filter(({ pins }) => pins.every((rule) => rule.kind !== "unary" || rule.values.length > 0))
    .map((s) => ({ ...s, key: JSON.stringify(s.pins) }))
    .sort((a, b) => b.shared - a.shared || b.date.localeCompare(a.date) || compareText(a.key, b.key));
  const byKey = new Map<string, Constraint[]>();
  for (const { key, pins } of scored) if (!byKey.has(key)) byKey.set(key, pins);
  return [...byKey.values()];
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Most ways of telling which copy of a card was which in a test that are tried for one test. */
const mostPairings = 6;

/** The copies of the question each with one of the same card that was tested; of several copies of a card, any may be any. */
function pairings(cards: readonly ResolvedCard[], fitted: readonly BuildCard[]): ReadonlyMap<string, BuildCard>[] {
  const pair = (pairs: ReadonlyMap<string, BuildCard>, asked: ResolvedCard) => {
    const tested = fitted.filter((t) => t.card === asked.card.id);
    const left = tested.filter((t) => ![...pairs.values()].includes(t));
    const free = left.filter((t) => mayBe(asked.chosen, t));
    const others = cards.filter((c) => c.card.id === asked.card.id).length > tested.length || free.length === 0 ? [pairs] : [];
    return [...free.map((t) => new Map([...pairs, [asked.as, t]])), ...others];
  };
  return cards.reduce<ReadonlyMap<string, BuildCard>[]>(
    (all, asked) => all.flatMap((pairs) => pair(pairs, asked)).slice(0, mostPairings),
    [new Map()],
  );
}

/** True when the copy may still stand as the tested one did: nothing the owner chose of it says otherwise. */
function mayBe(chosen: BuildCard, tested: BuildCard): boolean {
  const agree = (a: string | undefined, b: string | undefined) => a === undefined || b === undefined || a === b;
  return (
    agree(chosen.slot, tested.slot) &&
    agree(chosen.revision, tested.revision) &&
    Object.entries(chosen.settings ?? {}).every(([id, position]) => agree(position, tested.settings?.[id]))
  );
}

/** The machine pinned to what was tested, as far as the question names it. */
function pinsOf({ frame }: Compiled, tested: Proven, fitted: ReadonlyMap<string, BuildCard>): Constraint[] {
  const { question } = frame;
  const pins: Constraint[] = [{ kind: "unary", ...onRevisions(frame, (r) => r === tested.build.revision) }];
  // What was tested with this much memory is proven with it; a machine whose memory is chosen keeps its own.
  const { memory } = tested.build;
  if (memory !== undefined && question.build.memory === undefined && question.memories.includes(bytes(memory)))
    pins.push({ kind: "unary", ...withMemory(frame, (m) => m === bytes(memory)) });
  if (question.modes.length === 1) pins.push({ kind: "unary", ...runsVersion(frame, 0, (v) => v === tested.firmware) });
  for (const { at, asked } of eachCard(frame)) {
    const t = fitted.get(asked.as);
    if (!t) continue;
    if (t.slot !== undefined) pins.push({ kind: "unary", ...inSlot(frame, at, (s) => s.id === t.slot) });
    for (const [id, position] of Object.entries(t.settings ?? {})) {
      const literal = setTo(frame, at, id, [position]);
      if (literal) pins.push({ kind: "unary", ...literal });
    }
    if (t.revision !== undefined && asked.revisions.length > 1)
      pins.push({ kind: "unary", ...ofRevision(frame, at, (r) => r === t.revision) });
  }
  return pins;
}
