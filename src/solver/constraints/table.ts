// A table of three or more variables: together they take one of the listed rows. Compact-Table (Demeulenaere and others, "Compact-Table:
// Efficiently Filtering Table Constraints with Reversible Sparse Bit-Sets", 2016): the rows still possible are a reversible bitset; each
// value has the bitset of its rows, and stays while the two have a row in common.

import type { Propagator } from "../engine/propagator.js";
import { maskOf } from "../engine/propagator.js";
import { bitCount, type Store } from "../engine/store.js";
import type { Solution } from "../model/problem.js";

export class Table implements Propagator {
  readonly priority = 0;
  /** First of the reversible cells that hold the possible rows. */
  private readonly rows: number;
  private readonly width: number;
  /** For each variable (by position) and value the rows that use it. */
  private readonly uses: readonly (readonly Int32Array[])[];
  private readonly union: Int32Array;

  constructor(
    readonly variables: readonly number[],
    rows: readonly (readonly number[])[],
    store: Store,
  ) {
    this.width = Math.max(1, (rows.length + 31) >>> 5);
    this.rows = store.reserve(this.width);
    const all = maskOf(
      rows.length,
      rows.map((_, r) => r),
    );
    for (let w = 0; w < this.width; w++) store.cells[this.rows + w] = all[w]!;
    this.uses = variables.map((v, i) => {
      const byValue = Array.from({ length: store.sizes[v]! }, () => new Int32Array(this.width));
      for (let r = 0; r < rows.length; r++) byValue[rows[r]![i]!]![r >>> 5]! |= 1 << (r & 31);
      return byValue;
    });
    this.union = new Int32Array(this.width);
  }

  propagate(store: Store): boolean {
    for (let i = 0; i < this.variables.length; i++) if (!this.strike(store, i)) return false;
    for (let i = 0; i < this.variables.length; i++) {
      const variable = this.variables[i]!;
      for (const value of store.values(variable)) {
        if (!this.isUsed(store, this.uses[i]![value]!) && !store.remove(variable, value)) return false;
      }
    }
    return true;
  }

  /** Strikes the rows that use a value the variable no longer has. */
  private strike(store: Store, i: number): boolean {
    const { union, width } = this;
    union.fill(0);
    for (const value of store.values(this.variables[i]!)) {
      const uses = this.uses[i]![value]!;
      for (let w = 0; w < width; w++) union[w]! |= uses[w]!;
    }
    let any = 0;
    for (let w = 0; w < width; w++) {
      const old = store.cells[this.rows + w]!;
      const next = old & union[w]!;
      if (next !== old) store.set(this.rows + w, next);
      any |= next;
    }
    return any !== 0;
  }

  private isUsed(store: Store, uses: Int32Array): boolean {
    for (let w = 0; w < this.width; w++) if ((store.cells[this.rows + w]! & uses[w]!) !== 0) return true;
    return false;
  }

  couple(store: Store, join: (one: number, two: number) => void): boolean {
    let left = 0;
    for (let w = 0; w < this.width; w++) left += bitCount(store.cells[this.rows + w]!);
    const open = this.variables.filter((v) => store.size(v) > 1);
    if (open.length < 2 || left === open.reduce((product, v) => product * store.size(v), 1)) return false;
    for (const v of open) join(open[0]!, v);
    return true;
  }

  accepts(solution: Solution): boolean {
    for (let w = 0; w < this.width; w++) {
      let rows = -1;
      for (let i = 0; i < this.variables.length; i++) rows &= this.uses[i]![solution[this.variables[i]!]!]![w]!;
      if (rows !== 0) return true;
    }
    return false;
  }

  trait(_: number, value: number): number {
    return value;
  }

  residue(store: Store, key: number[], at: number): number {
    for (let w = 0; w < this.width; w++) key[at + w] = store.cells[this.rows + w]!;
    return at + this.width;
  }
}
