// Possible values: which values some solution takes. The base path is kept witnesses: a value that a known solution uses is possible for
// free, and only the rest are probed, each probe bringing a solution that covers more. So the choices offered are complete and free of
// dead ends (Amilhastre, Fargier, Marquis, "Consistency Restoration and Explanations in Dynamic CSPs", 2002; Hadzic and others,
// "Fast Backtrack-Free Product Configuration", 2004).
import { Engine } from "./engine.js";
import type { Budget, Problem, Solution } from "./problem.js";
import { findOne, Purse } from "./search.js";
import type { Possible } from "./tasks.js";

export function possible(problem: Problem, budget?: Budget): Possible {
  const engine = new Engine(problem);
  if (!engine.wake()) return { values: problem.variables.map(() => new Set<number>()), exact: true };
  return possibleIn(engine, [], new Purse(budget));
}

/** For an engine already propagated; solutions found are added to `witnesses`, which must all solve the problem. */
export function possibleIn(engine: Engine, witnesses: Solution[], purse: Purse): Possible {
  const { store } = engine;
  const covered = engine.problem.variables.map(() => new Set<number>());
  const cover = (solution: Solution) => {
    solution.forEach((value, v) => {
      covered[v]!.add(value);
    });
  };
  for (const witness of witnesses) if (witness.every((value, v) => store.has(v, value))) cover(witness);
  const fresh = (v: number): number => store.values(v).find((value) => !covered[v]!.has(value)) ?? store.first(v);
  for (let v = 0; v < engine.count; v++) {
    for (const value of store.values(v)) {
      if (covered[v]!.has(value)) continue;
      const mark = store.mark();
      const found = engine.take(v, value) ? findOne(engine, purse, { value: fresh }) : "none";
      store.undo(mark);
      if (found === "stopped") return { values: covered, exact: false };
      if (found === "none") continue;
      witnesses.push(found);
      cover(found);
    }
  }
  return { values: covered, exact: true };
}
