// A linear sum: the weights of the values taken add up to something between min and max. Bounds reasoning: a value goes when even the
// best choice everywhere else cannot bring the sum back between the bounds.

import type { Propagator } from "../engine/propagator.js";
import type { Store } from "../engine/store.js";
import { reach } from "../model/exact.js";
import type { Solution, Term } from "../model/problem.js";

export class Linear implements Propagator {
  readonly priority = 0;
  readonly variables: readonly number[];
  private readonly low: Float64Array;
  private readonly high: Float64Array;
  /** The different weights of each term: a weight is told apart by its place among them. */
  private readonly steps: readonly (readonly number[])[];
  private least = 0;
  private most = 0;

  constructor(
    private readonly terms: readonly Term[],
    readonly min: number,
    /** Only branch and bound moves it, between searches. */
    public max: number,
  ) {
    this.variables = terms.map((t) => t.variable);
    this.low = new Float64Array(terms.length);
    this.high = new Float64Array(terms.length);
    this.steps = terms.map((term) => [...new Set(term.weights)]);
  }

  /** Terms on one variable are added up, and every value has a weight. Sums are whole, so bounds between whole numbers are moved to them. */
  static of(terms: readonly Term[], sizes: readonly number[], min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY): Linear {
    if (Number.isNaN(min) || Number.isNaN(max)) throw new RangeError("The bounds of a sum must be numbers.");
    reach(terms);
    return new Linear(
      [...weightsOf(terms, sizes)].map(([variable, weights]) => ({ variable, weights })),
      Math.ceil(min),
      Math.floor(max),
    );
  }

  propagate(store: Store): boolean {
    for (;;) {
      const changed = this.narrow(store);
      if (changed !== "again") return changed;
      // With one bound only, the removals leave the end that the other values are measured by untouched.
      if (this.min === Number.NEGATIVE_INFINITY || this.max === Number.POSITIVE_INFINITY) return true;
    }
  }

  /** The least the sum can come to, each variable seen alone. */
  floor(store: Store): number {
    this.measure(store);
    return this.least;
  }

  couple(store: Store, join: (one: number, two: number) => void): boolean {
    this.measure(store);
    if (this.most <= this.max && this.least >= this.min) return false;
    let first = -1;
    for (let i = 0; i < this.terms.length; i++) {
      if (this.low[i] === this.high[i]) continue;
      const { variable } = this.terms[i]!;
      if (first < 0) first = variable;
      else join(first, variable);
    }
    return first >= 0;
  }

  accepts(solution: Solution): boolean {
    let sum = 0;
    for (const { variable, weights } of this.terms) sum += weights[solution[variable]!]!;
    return sum >= this.min && sum <= this.max;
  }

  trait(variable: number, value: number): number {
    const i = this.variables.indexOf(variable);
    return this.steps[i]!.indexOf(this.terms[i]!.weights[value]!);
  }

  /**
   * How much room the sum still has, rounded to what the open variables can use of it: of all sums they can reach, the largest that
   * fits (and the smallest that suffices). Different sums so far that leave the same room in this sense are one state.
   */
  residue(store: Store, key: number[], at: number): number {
    this.measure(store);
    const room = this.max - this.least;
    const lack = this.min - this.least;
    const range = this.most - this.least;
    if (!(range <= 4096)) {
      key[at] = Math.floor(this.least / 2 ** 31);
      key[at + 1] = this.least % 2 ** 31;
      return at + 2;
    }
    let sums = 1n;
    for (let i = 0; i < this.terms.length; i++) {
      if (this.low[i] === this.high[i]) continue;
      const { variable, weights } = this.terms[i]!;
      let next = 0n;
      for (const step of new Set(store.values(variable).map((value) => weights[value]! - this.low[i]!))) next |= sums << BigInt(step);
      sums = next;
    }
    const reached = (sum: number) => ((sums >> BigInt(sum)) & 1n) === 1n;
    let fits = Math.min(range, room);
    while (fits > 0 && !reached(fits)) fits--;
    let suffices = Math.max(0, lack);
    while (suffices < range && !reached(suffices)) suffices++;
    key[at] = fits;
    key[at + 1] = suffices;
    return at + 2;
  }

  /** The least and the most each term and the whole can come to. */
  private measure(store: Store): void {
    this.least = 0;
    this.most = 0;
    for (let i = 0; i < this.terms.length; i++) {
      const { variable, weights } = this.terms[i]!;
      let low = Number.POSITIVE_INFINITY;
      let high = Number.NEGATIVE_INFINITY;
      const start = store.start[variable]!;
      for (let w = 0; w < store.length[variable]!; w++) {
        for (let word = store.cells[start + w]!; word !== 0; word &= word - 1) {
          const weight = weights[(w << 5) + 31 - Math.clz32(word & -word)]!;
          if (weight < low) low = weight;
          if (weight > high) high = weight;
        }
      }
      this.low[i] = low;
      this.high[i] = high;
      this.least += low;
      this.most += high;
    }
  }

  private narrow(store: Store): boolean | "again" {
    let changed = false;
    this.measure(store);
    const { least, most } = this;
    if (least > this.max || most < this.min) return false;
    if (most <= this.max && least >= this.min) return true;
    for (let i = 0; i < this.terms.length; i++) {
      const { variable, weights } = this.terms[i]!;
      const upper = this.max - (least - this.low[i]!);
      const lower = this.min - (most - this.high[i]!);
      if (this.high[i]! <= upper && this.low[i]! >= lower) continue;
      const start = store.start[variable]!;
      for (let w = 0; w < store.length[variable]!; w++) {
        let gone = 0;
        for (let word = store.cells[start + w]!; word !== 0; word &= word - 1) {
          const bit = word & -word;
          const weight = weights[(w << 5) + 31 - Math.clz32(bit)]!;
          if (weight > upper || weight < lower) gone |= bit;
        }
        if (gone === 0) continue;
        if (!store.keep(variable, w, ~gone)) return false;
        changed = true;
      }
    }
    return changed ? "again" : true;
  }
}

/** What each value of each variable adds to a sum. */
export function weightsOf(terms: readonly Term[], sizes: readonly number[]): ReadonlyMap<number, readonly number[]> {
  const merged = new Map<number, number[]>();
  for (const { variable, weights } of terms) {
    const sum = merged.get(variable) ?? new Array<number>(sizes[variable]!).fill(0);
    for (let value = 0; value < sum.length; value++) sum[value]! += weights[value] ?? 0;
    merged.set(variable, sum);
  }
  return merged;
}
