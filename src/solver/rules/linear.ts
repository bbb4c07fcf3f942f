// A linear sum: the weights of the values taken add up to something between min and max. Bounds reasoning: a value goes when even the
// best choice everywhere else cannot bring the sum back between the bounds.
import type { Term } from "../problem.js";
import type { Propagator } from "../propagator.js";
import type { Store } from "../store.js";

export class Linear implements Propagator {
  readonly priority = 0;
  readonly variables: readonly number[];
  private readonly low: Float64Array;
  private readonly high: Float64Array;

  constructor(
    private readonly terms: readonly Term[],
    readonly min: number,
    readonly max: number,
  ) {
    this.variables = terms.map((t) => t.variable);
    this.low = new Float64Array(terms.length);
    this.high = new Float64Array(terms.length);
  }

  propagate(store: Store): boolean {
    for (;;) {
      const changed = this.narrow(store);
      if (changed !== "again") return changed;
      // With one bound only, the removals leave the end that the other values are measured by untouched.
      if (this.min === Number.NEGATIVE_INFINITY || this.max === Number.POSITIVE_INFINITY) return true;
    }
  }

  /** Values that differ only above the rest of the sum still allowed are alike, but the sum so far is what tells states apart. */
  residue(store: Store, key: number[]): void {
    let fixed = 0;
    for (const { variable, weights } of this.terms) if (store.size(variable) === 1) fixed += weights[store.first(variable)]!;
    key.push(fixed);
  }

  private narrow(store: Store): boolean | "again" {
    let changed = false;
    let least = 0;
    let most = 0;
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
      least += low;
      most += high;
    }
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
