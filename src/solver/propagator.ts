// A propagator: one rule (or several merged) made ready to remove values that no solution can take.
import type { Store } from "./store.js";

export interface Propagator {
  /** The variables whose changes wake it. */
  readonly variables: readonly number[];
  /** 0 runs before 1, 1 before 2: cheap ones first. */
  readonly priority: 0 | 1 | 2;
  /** Removes values; false when the rule cannot hold any more. */
  propagate(store: Store): boolean;
}

/** A bitset over the values of one variable. */
export function maskOf(size: number, values: Iterable<number>): Int32Array {
  const mask = new Int32Array(Math.max(1, (size + 31) >>> 5));
  for (const value of values) if (value >= 0 && value < size) mask[value >>> 5]! |= 1 << (value & 31);
  return mask;
}
