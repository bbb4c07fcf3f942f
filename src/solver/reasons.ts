// Reasons and repairs over choices. A reason is a minimal set of choices that cannot stand together; a repair is a minimal set of choices
// to give up so that the rest can stand. Each is a minimal hitting set of all the others.

import { decideIn } from "./decide.js";
import { Engine } from "./engine.js";
import type { Budget, Choice, Problem } from "./problem.js";
import { Spent, Subsets } from "./subsets.js";
import type { ChoiceSets } from "./tasks.js";

/** "stopped": the budget ended before the set was proven. */
export type OneSet = readonly string[] | undefined | "stopped";

/** One reason (undefined when all choices can stand together). Earlier choices are kept out of it where possible. */
export function oneReason(problem: Problem, choices: readonly Choice[], budget?: Budget): OneSet {
  return attempt(problem, choices, budget, (subsets) => {
    const all = range(choices.length);
    return subsets.stands(all) ? undefined : quickXplain(subsets, all);
  });
}

/** One repair; empty when nothing need be given up, undefined when giving up everything does not help. */
export function oneRepair(problem: Problem, choices: readonly Choice[], budget?: Budget): OneSet {
  return attempt(problem, choices, budget, (subsets) => {
    if (!subsets.stands([])) return undefined;
    return fastDiag(subsets, range(choices.length));
  });
}

/** Every reason. */
export function reasons(problem: Problem, choices: readonly Choice[], budget?: Budget): ChoiceSets {
  return named(choices, marco(new Subsets(problem, rulesOf(choices), budget)), "reasons");
}

/** Every repair; none when the problem without choices has no solution. */
export function repairs(problem: Problem, choices: readonly Choice[], budget?: Budget): ChoiceSets {
  return named(choices, marco(new Subsets(problem, rulesOf(choices), budget)), "repairs");
}

const rulesOf = (choices: readonly Choice[]) => choices.map((choice) => choice.rules);
const range = (n: number) => Array.from({ length: n }, (_, i) => i);

function attempt(
  problem: Problem,
  choices: readonly Choice[],
  budget: Budget | undefined,
  task: (subsets: Subsets) => readonly number[] | undefined,
): OneSet {
  try {
    return task(new Subsets(problem, rulesOf(choices), budget))?.map((c) => choices[c]!.id);
  } catch (error) {
    if (error instanceof Spent) return "stopped";
    throw error;
  }
}

function named(choices: readonly Choice[], found: Sets, which: "reasons" | "repairs"): ChoiceSets {
  return { sets: shortestFirst(found[which]).map((set) => set.map((c) => choices[c]!.id)), complete: found.complete };
}

/** Shortest first, then by the order of the members. */
export function shortestFirst(sets: readonly (readonly number[])[]): readonly (readonly number[])[] {
  return sets
    .map((set) => [...set].sort((a, b) => a - b))
    .sort((a, b) => {
      if (a.length !== b.length) return a.length - b.length;
      const i = a.findIndex((member, j) => member !== b[j]);
      return i < 0 ? 0 : a[i]! - b[i]!;
    });
}

/** A minimal subset of `groups` that cannot stand, given that they cannot (Junker, "QuickXplain", AAAI 2004). */
export function quickXplain(subsets: Subsets, groups: readonly number[]): readonly number[] {
  const explain = (background: readonly number[], changed: boolean, among: readonly number[]): readonly number[] => {
    if (changed && !subsets.stands(background)) return [];
    if (among.length === 1) return among;
    const half = among.length >> 1;
    const [front, back] = [among.slice(0, half), among.slice(half)];
    const second = explain([...background, ...front], front.length > 0, back);
    const first = explain([...background, ...second], second.length > 0, front);
    return [...first, ...second];
  };
  if (groups.length === 0 || !subsets.stands([])) return [];
  return [...explain([], false, groups)].sort((a, b) => a - b);
}

/** A minimal subset of `groups` to give up so that the rest can stand (Felfernig, Schubert, Zehentner, "FastDiag", 2012). */
export function fastDiag(subsets: Subsets, groups: readonly number[]): readonly number[] {
  const diagnose = (changed: boolean, among: readonly number[], standing: readonly number[]): readonly number[] => {
    if (changed && subsets.stands(standing)) return [];
    if (among.length === 1) return among;
    const half = among.length >> 1;
    const [front, back] = [among.slice(0, half), among.slice(half)];
    const without = (given: readonly number[], out: readonly number[]) => given.filter((g) => !out.includes(g));
    const first = diagnose(true, back, without(standing, front));
    const second = diagnose(first.length > 0, front, without(standing, first));
    return [...first, ...second];
  };
  if (groups.length === 0 || subsets.stands(groups)) return [];
  return [...diagnose(false, groups, groups)].sort((a, b) => a - b);
}

interface Sets {
  readonly reasons: readonly (readonly number[])[];
  readonly repairs: readonly (readonly number[])[];
  readonly complete: boolean;
}

/**
 * All reasons and all repairs (Liffiton, Previti, Malik, Marques-Silva, "Fast, Flexible MUS Enumeration", 2016). A map of the subsets not
 * yet judged is itself a small problem: one yes/no variable a choice. A subset that stands is grown to a largest one, and its complement
 * is a repair; one that does not is shrunk to a reason. Both strike out of the map what they settle.
 */
export function marco(subsets: Subsets, limit = Number.POSITIVE_INFINITY): Sets {
  const reasons: (readonly number[])[] = [];
  const repairs: (readonly number[])[] = [];
  const all = range(subsets.count);
  const rules: Problem["rules"][number][] = [];
  try {
    for (;;) {
      const seed = decideIn(new Engine({ variables: all.map((g) => ({ name: `${g}`, size: 2 })), rules }), subsets.purse);
      if (seed.kind === "none") return { reasons, repairs, complete: true };
      if (seed.kind === "stopped" || reasons.length >= limit) return { reasons, repairs, complete: false };
      // Value 0 means "in", so that the search, which tries small values first, starts from large subsets.
      const inside = all.filter((g) => seed.solution[g] === 0);
      const keeps = subsets.witness(inside);
      if (keeps) {
        const out = grow(subsets, keeps);
        repairs.push(out);
        rules.push({ kind: "clause", literals: out.map((variable) => ({ variable, values: [0] })) });
      } else {
        const core = quickXplain(subsets, inside);
        reasons.push(core);
        subsets.refuse(core);
        rules.push({ kind: "clause", literals: core.map((variable) => ({ variable, values: [1] })) });
      }
    }
  } catch (error) {
    if (error instanceof Spent) return { reasons, repairs, complete: false };
    throw error;
  }
}

/** What a largest standing superset of a standing subset leaves out. */
function grow(subsets: Subsets, start: readonly boolean[]): readonly number[] {
  const keeps = [...start];
  const out: number[] = [];
  for (let g = 0; g < keeps.length; g++) {
    if (keeps[g]) continue;
    const more = subsets.witness([...range(keeps.length).filter((h) => keeps[h]), g]);
    if (!more) out.push(g);
    else
      more.forEach((kept, h) => {
        if (kept) keeps[h] = true;
      });
  }
  return out;
}
