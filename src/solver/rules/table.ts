// A table: the variables together take one of the listed rows. Simple tabular reduction: rows that can no longer be taken are
// skipped, and a value stays only while a row left uses it.
import type { Propagator } from "../propagator.js";
import type { Store } from "../store.js";

export class Table implements Propagator {
  readonly priority = 1;

  constructor(
    readonly variables: readonly number[],
    private readonly rows: readonly (readonly number[])[],
  ) {}

  propagate(store: Store): boolean {
    const kept = this.variables.map((v) => new Int32Array(store.length[v]!));
    for (const row of this.rows) {
      if (!row.every((value, i) => store.has(this.variables[i]!, value))) continue;
      row.forEach((value, i) => {
        kept[i]![value >>> 5]! |= 1 << (value & 31);
      });
    }
    return this.variables.every((v, i) => store.keepAll(v, kept[i]!));
  }
}
