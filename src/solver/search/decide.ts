// Decide: is there a solution, and one if so.

import { Engine } from "../engine/engine.js";
import type { Budget, Problem } from "../model/problem.js";
import { StepBudget } from "../model/step-budget.js";
import type { Decision } from "../model/tasks.js";
import { findOne } from "./search.js";

export function decide(problem: Problem, budget?: Budget): Decision {
  return decideIn(new Engine(problem), new StepBudget(budget));
}

/** The same with an engine at hand; the engine is left as it was. */
export function decideIn(engine: Engine, steps: StepBudget): Decision {
  const mark = engine.store.mark();
  const found = engine.wake() ? findOne(engine, steps) : "none";
  engine.store.undo(mark);
  return typeof found === "string" ? { kind: found } : { kind: "found", solution: found };
}
