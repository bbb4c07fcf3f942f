// What a sum may hold. Weights are whole numbers, and every sum a constraint or a cost can reach is one that a double holds exactly, so that
// no bound is ever a matter of rounding. Whoever has decimals scales them first (the problem file does); what is past the range is refused.
import type { Term } from "./problem.js";

/** The furthest a sum may reach from 0: up to here every whole number has a double of its own. */
export const furthest = Number.MAX_SAFE_INTEGER;

/** How far from 0 a sum of these terms can come at most: 3a - 5b with a, b of 0..2 reaches 16 at most. */
export function reach(terms: readonly Term[]): number {
  let sum = 0;
  for (const { weights } of terms) {
    let most = 0;
    for (const weight of weights) {
      if (!Number.isSafeInteger(weight)) throw new RangeError(`Weights must be whole numbers up to ${furthest}; one is ${weight}.`);
      if (Math.abs(weight) > most) most = Math.abs(weight);
    }
    sum += most;
  }
  if (sum > furthest) throw new RangeError(`A sum may reach ${furthest} at most; one reaches ${sum}.`);
  return sum;
}
