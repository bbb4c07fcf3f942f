// Reasons and repairs over choices. A reason is a minimal set of choices that cannot stand together; a repair is a minimal set of choices
// to give up so that the rest can stand. Each is a minimal hitting set of all the others.

import type { Budget, Choice, Problem } from "../model/problem.js";
import { orExhausted } from "../model/step-budget.js";
import type { ChoiceSets, ReasonsAndRepairs } from "../model/tasks.js";
import { type Duals, dualize } from "./duality.js";
import { fastDiag, quickXplain } from "./quick.js";
import { Subsets } from "./subsets.js";

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

/** Every reason and every repair, from one run. No repair when the problem without choices has no solution. */
export function reasonsAndRepairs(problem: Problem, choices: readonly Choice[], budget?: Budget): ReasonsAndRepairs {
  const found = orExhausted<Duals>(
    () => dualize(new Subsets(problem, rulesOf(choices), budget)),
    () => ({ reasons: [], repairs: [], complete: false }),
  );
  const named = (sets: readonly (readonly number[])[]): ChoiceSets => ({
    sets: shortestFirst(sets).map((set) => set.map((c) => choices[c]!.id)),
    complete: found.complete,
  });
  return { reasons: named(found.reasons), repairs: named(found.repairs) };
}

/** Every reason. */
export function reasons(problem: Problem, choices: readonly Choice[], budget?: Budget): ChoiceSets {
  return reasonsAndRepairs(problem, choices, budget).reasons;
}

/** Every repair. */
export function repairs(problem: Problem, choices: readonly Choice[], budget?: Budget): ChoiceSets {
  return reasonsAndRepairs(problem, choices, budget).repairs;
}

const rulesOf = (choices: readonly Choice[]) => choices.map((choice) => choice.rules);
const range = (n: number) => Array.from({ length: n }, (_, i) => i);

function attempt(
  problem: Problem,
  choices: readonly Choice[],
  budget: Budget | undefined,
  task: (subsets: Subsets) => readonly number[] | undefined,
): OneSet {
  return orExhausted<OneSet>(
    () => task(new Subsets(problem, rulesOf(choices), budget))?.map((c) => choices[c]!.id),
    () => "stopped",
  );
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
