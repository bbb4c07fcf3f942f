// Decide: is there a solution, and one if so.

import { Engine } from "../engine/engine.js";
import type { Budget, Problem } from "../model/problem.js";
import { orExhausted, StepBudget } from "../model/step-budget.js";
import type { Decision } from "../model/tasks.js";
import { findOne } from "./search.js";

export function decide(problem: Problem, budget?: Budget): Decision {
  const steps = new StepBudget(budget);
  return orExhausted<Decision>(
    () => {
      const engine = new Engine(problem, steps);
      const found = engine.wake() ? findOne(engine, steps) : "none";
      return typeof found === "string" ? { kind: found } : { kind: "found", solution: found };
    },
    () => ({ kind: "stopped" }),
  );
}
