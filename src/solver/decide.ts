// Decide: is there a solution, and one if so.
import { Engine } from "./engine.js";
import type { Budget, Problem, Solution } from "./problem.js";
import { Purse, search } from "./search.js";
import type { Decision } from "./tasks.js";

export function decide(problem: Problem, budget?: Budget): Decision {
  return decideIn(new Engine(problem), new Purse(budget));
}

/** The same with an engine at hand; the engine is left as it was. */
export function decideIn(engine: Engine, purse: Purse): Decision {
  const mark = engine.store.mark();
  let found: Solution | undefined;
  let stopped = false;
  if (engine.wake()) {
    const outcome = search(engine, purse, (solution) => {
      found = solution;
      return "end";
    });
    stopped = outcome === "stopped";
  }
  engine.store.undo(mark);
  if (found) return { kind: "found", solution: found };
  return { kind: stopped ? "stopped" : "none" };
}
