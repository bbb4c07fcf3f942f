// Count: how many solutions there are, exactly (BigInt), or at least how many when the budget ends first.
import { Engine } from "./engine.js";
import type { Budget, Problem } from "./problem.js";
import { Purse, search } from "./search.js";
import type { Count } from "./tasks.js";

export interface CountOptions {
  /** Count distinct assignments of these variables only. */
  readonly project?: readonly number[];
}

export interface CountPerValue {
  readonly exact: boolean;
  /** Per variable and value the solutions that take it; at least so many when not exact. */
  readonly counts: readonly (readonly bigint[])[];
}

export function count(problem: Problem, options: CountOptions = {}, budget?: Budget): Count {
  let n = 0;
  const engine = new Engine(problem);
  if (!engine.wake()) return { count: 0n, exact: true };
  const outcome = search(
    engine,
    new Purse(budget),
    () => {
      n++;
      return options.project ? "nextFirst" : "next";
    },
    options.project ? { first: options.project } : {},
  );
  return { count: BigInt(n), exact: outcome === "exhausted" };
}

export function countPerValue(problem: Problem, budget?: Budget): CountPerValue {
  const counts = problem.variables.map((v) => new Array<number>(v.size).fill(0));
  const engine = new Engine(problem);
  let exact = true;
  if (engine.wake()) {
    const outcome = search(engine, new Purse(budget), (solution) => {
      solution.forEach((value, v) => {
        counts[v]![value]!++;
      });
      return "next";
    });
    exact = outcome === "exhausted";
  }
  return { exact, counts: counts.map((row) => row.map(BigInt)) };
}
