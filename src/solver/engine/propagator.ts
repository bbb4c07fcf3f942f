// A propagator: one rule made ready to remove values that no solution can take. (Rules on one pair of variables and clauses have stores of
// their own, pairs.ts and clauses.ts; all others are propagators.)
import type { Solution } from "../model/problem.js";
import type { Store } from "./store.js";

export interface Propagator {
  /** The variables whose changes wake it. */
  readonly variables: readonly number[];
  /** Elementary operations of one run, about; left out: as many as there are variables. */
  readonly cost?: number;
  /** Those with 0 run before those with 1. */
  readonly priority: 0 | 1;
  /** Removes values until it can remove no more by itself; false when the rule cannot hold. */
  propagate(store: Store): boolean;
  /** Whether complete values keep the rule; true where other rules say the same. */
  accepts(solution: Solution): boolean;
  /**
   * For the counting diagram: joins the variables not yet fixed that this rule still ties together; false when it ties none, because it
   * holds whatever they take (or because other rules say the same).
   */
  couple(store: Store, join: (one: number, two: number) => void): boolean;
  /**
   * For the count: writes to `key` from `at` on what the rule still asks of the variables not fixed, beyond what their domains say, and
   * gives where it ends. Two states of the search with equal domains and equal keys have the same solutions from there on.
   */
  residue(store: Store, key: number[], at: number): number;
  /** For the counting diagram: what the rule sees in a value. Values with equal traits in every rule are interchangeable. */
  trait(variable: number, value: number): number;
}

/** A bitset over the values of one variable. */
export function maskOf(size: number, values: Iterable<number>): Int32Array {
  const mask = new Int32Array(Math.max(1, (size + 31) >>> 5));
  for (const value of values) if (value >= 0 && value < size) mask[value >>> 5]! |= 1 << (value & 31);
  return mask;
}
