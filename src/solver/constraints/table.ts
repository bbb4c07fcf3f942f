// A table of three or more variables: together they take one of the listed rows. Compact-Table (Demeulenaere and others, "Compact-Table:
// Efficiently Filtering Table Constraints with Reversible Sparse Bit-Sets", 2016): the rows still possible are a reversible bitset; each
// value has its rows, kept as the words of a bitset that are not zero, and stays while the two have a row in common.

import type { Propagator } from "../engine/propagator.js";
import { maskOf } from "../engine/propagator.js";
import { bitCount, type Store } from "../engine/store.js";
import type { Solution } from "../model/problem.js";

/** The rows of one value: which words of the bitset of rows have some, and those words. */
interface Uses {
  readonly at: Int32Array;
  readonly words: Int32Array;
}

export class CompactTable implements Propagator {
  readonly priority = 0;
  readonly cost: number;
  /** First of the reversible cells that hold the possible rows. */
  private readonly rows: number;
  private readonly width: number;
  /** For each variable (by position) and value the rows that use it. */
  private readonly uses: readonly (readonly Uses[])[];
  /** For each variable and value where in its rows a possible one was found last. */
  private readonly residues: readonly Int32Array[];
  /** First of the reversible cells that hold how many values each variable had when its rows were struck last. */
  private readonly seen: number;
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
    this.seen = store.reserve(variables.length);
    this.uses = variables.map((v, i) => usesOf(rows, i, store.sizes[v]!));
    this.residues = variables.map((v) => new Int32Array(store.sizes[v]!));
    this.union = new Int32Array(this.width);
    this.cost = variables.length * (this.width + rows.length / 8);
  }

  propagate(store: Store): boolean {
    let struck = false;
    let first = true;
    for (let i = 0; i < this.variables.length; i++) {
      const size = store.size(this.variables[i]!);
      const before = store.cells[this.seen + i]!;
      if (before !== 0) first = false;
      if (before === size) continue;
      store.set(this.seen + i, size);
      const left = this.strike(store, i);
      if (left === "none") return false;
      struck ||= left === "fewer";
    }
    if (!struck && !first) return true;
    for (let i = 0; i < this.variables.length; i++) {
      const variable = this.variables[i]!;
      for (const value of store.values(variable)) if (!this.isUsed(store, i, value) && !store.remove(variable, value)) return false;
      // What is removed here had no possible row, so there is nothing to strike for it.
      store.set(this.seen + i, store.size(variable));
    }
    return true;
  }

  /** Strikes the rows that use a value the variable no longer has. */
  private strike(store: Store, i: number): "none" | "fewer" | "same" {
    const { union, width } = this;
    union.fill(0);
    for (const value of store.values(this.variables[i]!)) {
      const { at, words } = this.uses[i]![value]!;
      for (let k = 0; k < at.length; k++) union[at[k]!]! |= words[k]!;
    }
    let any = 0;
    let fewer = false;
    for (let w = 0; w < width; w++) {
      const old = store.cells[this.rows + w]!;
      const next = old & union[w]!;
      if (next !== old) {
        store.set(this.rows + w, next);
        fewer = true;
      }
      any |= next;
    }
    return any === 0 ? "none" : fewer ? "fewer" : "same";
  }

  private isUsed(store: Store, i: number, value: number): boolean {
    const { at, words } = this.uses[i]![value]!;
    const residues = this.residues[i]!;
    const last = residues[value]!;
    if (last < at.length && (store.cells[this.rows + at[last]!]! & words[last]!) !== 0) return true;
    for (let k = 0; k < at.length; k++) {
      if ((store.cells[this.rows + at[k]!]! & words[k]!) === 0) continue;
      residues[value] = k;
      return true;
    }
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
    // Along the words of the first variable's value; the others' are found as the words go up.
    const uses = this.variables.map((v, i) => this.uses[i]![solution[v]!]!);
    const next = new Int32Array(uses.length);
    const [first] = uses as [Uses];
    for (let k = 0; k < first.at.length; k++) {
      let rows = first.words[k]!;
      for (let i = 1; i < uses.length && rows !== 0; i++) {
        const { at, words } = uses[i]!;
        while (next[i]! < at.length && at[next[i]!]! < first.at[k]!) next[i]!++;
        rows &= at[next[i]!] === first.at[k]! ? words[next[i]!]! : 0;
      }
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

/** The rows of each value of one column. */
function usesOf(rows: readonly (readonly number[])[], column: number, size: number): readonly Uses[] {
  const counts = new Int32Array(size);
  const lastWord = new Int32Array(size).fill(-1);
  for (let r = 0; r < rows.length; r++) {
    const value = rows[r]![column]!;
    if (lastWord[value] !== r >>> 5) counts[value]!++;
    lastWord[value] = r >>> 5;
  }
  const uses = Array.from(counts, (count) => ({ at: new Int32Array(count), words: new Int32Array(count) }));
  const filled = counts.fill(0);
  for (let r = 0; r < rows.length; r++) {
    const value = rows[r]![column]!;
    const { at, words } = uses[value]!;
    const last = filled[value]! - 1;
    const k = last >= 0 && at[last] === r >>> 5 ? last : filled[value]!++;
    at[k] = r >>> 5;
    words[k]! |= 1 << (r & 31);
  }
  return uses;
}
