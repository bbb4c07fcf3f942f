// Count: how many solutions there are, exactly (BigInt), or at least how many when the budget ends first.
import { Counting } from "./counting.js";
import { Engine } from "./engine.js";
import type { Budget, Problem } from "./problem.js";
import { findOne, Purse } from "./search.js";
import { Tally } from "./tally.js";
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
  const engine = new Engine(problem);
  if (!engine.wake()) return { count: 0n, exact: true };
  const purse = new Purse(budget);
  const known = findOne(engine, purse);
  if (typeof known === "string") return { count: 0n, exact: known === "none" };
  const tally = new Tally(engine, options.project);
  const total = tally.count(purse, known);
  return { count: total, exact: tally.exact };
}

export function countPerValue(problem: Problem, budget?: Budget): CountPerValue {
  const sizes = problem.variables.map((v) => v.size);
  const engine = new Engine(problem);
  const nothing = sizes.map((size) => new Array<bigint>(size).fill(0n));
  if (!engine.wake()) return { exact: true, counts: nothing };
  const diagram = new Counting(engine, new Purse(budget)).build();
  return diagram ? { exact: true, counts: diagram.countPerValue(sizes) } : { exact: false, counts: nothing };
}
