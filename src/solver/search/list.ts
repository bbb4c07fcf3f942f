// List: the solutions one after another, or one for each distinct projection, always in the same order.

import { Engine } from "../engine/engine.js";
import type { Budget, Problem, Solution } from "../model/problem.js";
import { orExhausted, StepBudget } from "../model/step-budget.js";
import type { Listing } from "../model/tasks.js";
import { type Next, search } from "./search.js";

export interface ListOptions {
  /** Most solutions to list. */
  readonly limit?: number;
  /** Variables that tell solutions apart; of those that agree on them only one is listed. */
  readonly project?: readonly number[];
}

export function list(problem: Problem, options: ListOptions = {}, budget?: Budget): Listing {
  const limit = options.limit ?? Number.POSITIVE_INFINITY;
  const solutions: Solution[] = [];
  let more = false;
  const steps = new StepBudget(budget);
  const onSolution = (solution: Solution): Next => {
    if (solutions.length >= limit) {
      more = true;
      return "end";
    }
    solutions.push(solution);
    return options.project ? "nextFirst" : "next";
  };
  return orExhausted(
    () => {
      const engine = new Engine(problem, steps);
      if (!engine.wake()) return { solutions, complete: true };
      const outcome = search(engine, steps, onSolution, options.project ? { first: options.project } : {});
      return { solutions, complete: outcome === "completed" && !more };
    },
    () => ({ solutions, complete: false }),
  );
}
