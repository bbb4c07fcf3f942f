// Explanations over the problem's own rules: which rules, told apart by their ids, leave no solution. Rules without id always count.

import type { Budget, Choice, Constraint, Problem } from "../model/problem.js";
import { BudgetExhausted, orExhausted } from "../model/step-budget.js";
import { dualize } from "./duality.js";
import { quickXplain } from "./quick.js";
import { shortestFirst } from "./reasons.js";
import { Subsets } from "./subsets.js";

export interface Explanation {
  /** `none`: there is a solution, so nothing to explain. `stopped`: the budget ended before a set was proven. */
  readonly kind: "found" | "none" | "stopped";
  readonly ids: readonly string[];
  /** Every id is needed: without any one of them there would be a solution. */
  readonly minimal: boolean;
  /** Whether a different minimal set exists too; unknown when the budget ended before that was proven. */
  readonly others: "yes" | "no" | "unknown";
}

export interface Explanations {
  readonly sets: readonly (readonly string[])[];
  readonly complete: boolean;
}

export function explain(problem: Problem, choices: readonly Choice[] = [], budget?: Budget): Explanation {
  let ids: readonly string[] = [];
  let found: readonly number[] | undefined;
  try {
    const { subsets, ...named } = byId(problem, choices, budget);
    ids = named.ids;
    const all = ids.map((_, i) => i);
    if (subsets.stands(all)) return { kind: "none", ids: [], minimal: true, others: "no" };
    found = quickXplain(subsets, all);
    const others = found.some((member) => !subsets.stands(all.filter((i) => i !== member))) ? "yes" : "no";
    return { kind: "found", ids: found.map((i) => ids[i]!), minimal: true, others };
  } catch (error) {
    if (!(error instanceof BudgetExhausted)) throw error;
    if (found) return { kind: "found", ids: found.map((i) => ids[i]!), minimal: true, others: "unknown" };
    return { kind: "stopped", ids: [], minimal: false, others: "unknown" };
  }
}

export function explainAll(
  problem: Problem,
  choices: readonly Choice[] = [],
  options: { readonly limit?: number } = {},
  budget?: Budget,
): Explanations {
  return orExhausted<Explanations>(
    () => {
      const { ids, subsets } = byId(problem, choices, budget);
      const { reasons, complete } = dualize(subsets, options.limit);
      return { sets: shortestFirst(reasons).map((set) => set.map((i) => ids[i]!)), complete };
    },
    () => ({ sets: [], complete: false }),
  );
}

function byId(problem: Problem, choices: readonly Choice[], budget: Budget | undefined): { ids: readonly string[]; subsets: Subsets } {
  const groups = new Map<string, Constraint[]>();
  const always: Constraint[] = [];
  for (const rule of [...problem.rules, ...choices.flatMap((choice) => choice.rules)]) {
    const group = rule.id === undefined ? always : groups.get(rule.id);
    if (group) group.push(rule);
    else if (rule.id !== undefined) groups.set(rule.id, [rule]);
  }
  return { ids: [...groups.keys()], subsets: new Subsets({ variables: problem.variables, rules: always }, [...groups.values()], budget) };
}
