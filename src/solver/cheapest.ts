// Cheapest: the k best solutions, distinct by a projection, under costs that count in order (the first matters most), with proof.
// Branch and bound: after each solution only strictly cheaper ones are looked for; when none is left, the last one found is optimal.

import { decideIn } from "./decide.js";
import { Engine } from "./engine.js";
import type { Budget, Problem, Rule, Solution } from "./problem.js";
import { Purse } from "./search.js";
import type { Cost, Ranked } from "./tasks.js";

export interface CheapestOptions {
  readonly k: number;
  /** Variables that tell answers apart; all when left out. */
  readonly project?: readonly number[];
}

export function cheapest(problem: Problem, costs: readonly Cost[], options: CheapestOptions, budget?: Budget): Ranked {
  const purse = new Purse(budget);
  const project = options.project ?? problem.variables.map((_, v) => v);
  const solutions: { solution: Solution; cost: readonly number[] }[] = [];
  let rules: readonly Rule[] = problem.rules;
  while (solutions.length < options.k) {
    const best = optimum({ variables: problem.variables, rules }, costs, purse);
    if (best === "stopped") return { solutions, proven: false };
    if (best === "none") break;
    solutions.push({ solution: best, cost: costs.map((cost) => costOf(cost, best)) });
    rules = [...rules, { kind: "forbid", literals: project.map((variable) => ({ variable, values: [best[variable]!] })) }];
  }
  return { solutions, proven: true };
}

function optimum(problem: Problem, costs: readonly Cost[], purse: Purse): Solution | "none" | "stopped" {
  let rules = problem.rules;
  const first = decideIn(new Engine(problem), purse);
  if (first.kind !== "found") return first.kind;
  let best = first.solution;
  for (const cost of costs) {
    for (;;) {
      const bound: Rule = { kind: "linear", terms: cost.terms, max: costOf(cost, best) - 1 };
      const better = decideIn(new Engine({ variables: problem.variables, rules: [...rules, bound] }), purse);
      if (better.kind === "stopped") return "stopped";
      if (better.kind === "none") break;
      best = better.solution;
    }
    rules = [...rules, { kind: "linear", terms: cost.terms, max: costOf(cost, best) }];
  }
  return best;
}

export function costOf(cost: Cost, solution: Solution): number {
  return cost.terms.reduce((sum, { variable, weights }) => sum + (weights[solution[variable]!] ?? 0), 0);
}
