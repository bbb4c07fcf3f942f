// Pair tables: which value of one variable goes with which of another, as bit matrices both ways.
// All rules on one pair are merged into one table before the search: two tables on one pair each see less than their conjunction does,
// and searches ran away on it. A dirty variable revises its neighbours, bits at a time (after Lecoutre and Vion, "Enforcing Arc
// Consistency using Bitwise Operations", 2008), by whichever is shortest:
// - the dirty variable still has more values than any neighbour's value forbids: nothing can have lost its support;
// - it has fewer values than the neighbour: the neighbour keeps the union of what goes with them;
// - otherwise each value of the neighbour looks for a support, in the word that had it last time first.
import type { Solution } from "../model/problem.js";
import { bitCount, type Store } from "./store.js";

/** One direction of a table: from the variable that changed to the one to be revised. All numbers but the first two and the last point into `rows`. */
export interface Arc {
  readonly from: number;
  readonly to: number;
  /** For each value of the changed variable, the bitset of the other's values that go with it. */
  readonly forward: number;
  /** For each value of the other, the bitset of the changed variable's values. */
  readonly backward: number;
  /** For each value of the other, the word that had its last support. */
  readonly residues: number;
  /** The most values of the changed variable that one value of the other forbids. */
  slack: number;
  readonly selector: number;
}

export class PairTables {
  /** The pair that failed last. */
  failed: readonly number[] = [];
  readonly arcs: Arc[][];
  /** All matrices one after another: a machine has hundreds of small ones, and an array each would cost more than filling them. */
  rows = new Int32Array(1 << 13);
  private used = 0;
  private readonly union: Int32Array;

  constructor(
    private readonly store: Store,
    private readonly on: Uint8Array,
  ) {
    this.arcs = store.sizes.map(() => []);
    this.union = new Int32Array(Math.max(1, ...store.length));
  }

  /**
   * The value a of x goes with the values of `allowed` (a bitset over y) only. Told from one side, both matrices change.
   * Tables are made when first spoken of; `selector` keeps those that can be switched off apart.
   */
  restrict(x: number, a: number, y: number, allowed: Int32Array, selector: number): void {
    this.cut(this.arc(x, y, selector), x, a, y, allowed);
  }

  private cut(arc: Arc, x: number, a: number, y: number, allowed: Int32Array): void {
    const { rows } = this;
    const width = this.store.length[y]!;
    const back = this.store.length[x]!;
    const own = arc.forward + a * width;
    for (let w = 0; w < width; w++) {
      const gone = rows[own + w]! & ~allowed[w]!;
      if (gone === 0) continue;
      rows[own + w]! &= allowed[w]!;
      for (let word = gone; word !== 0; word &= word - 1) {
        const b = (w << 5) + 31 - Math.clz32(word & -word);
        rows[arc.backward + b * back + (a >>> 5)]! &= ~(1 << (a & 31));
      }
    }
  }

  /** x and y take one of the rows together; `columns` says where in a row they stand. */
  keepRows(x: number, y: number, rows: readonly (readonly number[])[], columns: readonly [number, number], selector: number): void {
    const arc = this.arc(x, y, selector);
    const [width, back] = [this.store.length[y]!, this.store.length[x]!];
    const forward = new Int32Array(this.store.sizes[x]! * width);
    const backward = new Int32Array(this.store.sizes[y]! * back);
    for (const row of rows) {
      const [a, b] = [row[columns[0]]!, row[columns[1]]!];
      forward[a * width + (b >>> 5)]! |= 1 << (b & 31);
      backward[b * back + (a >>> 5)]! |= 1 << (a & 31);
    }
    for (let w = 0; w < forward.length; w++) this.rows[arc.forward + w]! &= forward[w]!;
    for (let w = 0; w < backward.length; w++) this.rows[arc.backward + w]! &= backward[w]!;
  }

  /** x takes a value of `good` or y one of `fine` (bitsets). */
  either(x: number, good: Int32Array, y: number, fine: Int32Array, selector: number): void {
    const arc = this.arc(x, y, selector);
    for (let a = 0; a < this.store.sizes[x]!; a++) {
      if (((good[a >>> 5]! >>> (a & 31)) & 1) === 0) this.cut(arc, x, a, y, fine);
    }
  }

  /** Room for `values` bitsets over `size` values, everything allowed. */
  private fullRows(values: number, size: number): number {
    const width = Math.max(1, (size + 31) >>> 5);
    const at = this.room(values * width);
    const last = size === 0 ? 0 : (size & 31) === 0 ? -1 : (1 << (size & 31)) - 1;
    if (width === 1) this.rows.fill(last, at, at + values);
    else {
      this.rows.fill(-1, at, at + values * width);
      for (let row = 1; row <= values; row++) this.rows[at + row * width - 1] = last;
    }
    return at;
  }

  private room(words: number): number {
    const at = this.used;
    this.used += words;
    if (this.used > this.rows.length) {
      const larger = new Int32Array(Math.max(this.used, this.rows.length * 2));
      larger.set(this.rows);
      this.rows = larger;
    }
    return at;
  }

  private arc(x: number, y: number, selector: number): Arc {
    const known = this.arcs[x]!;
    for (let i = known.length - 1; i >= 0; i--) if (known[i]!.to === y && known[i]!.selector === selector) return known[i]!;
    const [m, n] = [this.store.sizes[x]!, this.store.sizes[y]!];
    const fromX = this.fullRows(m, n);
    const fromY = this.fullRows(n, m);
    const arc: Arc = { from: x, to: y, forward: fromX, backward: fromY, residues: this.room(n), slack: 0, selector };
    const back: Arc = { from: y, to: x, forward: fromY, backward: fromX, residues: this.room(m), slack: 0, selector };
    this.arcs[x]!.push(arc);
    this.arcs[y]!.push(back);
    return arc;
  }

  /** To be called once all rules are in. */
  finish(): void {
    const { rows } = this;
    for (const [x, arcs] of this.arcs.entries()) {
      const width = this.store.length[x]!;
      const size = this.store.sizes[x]!;
      for (const arc of arcs) {
        let fewest = size;
        const end = arc.backward + this.store.sizes[arc.to]! * width;
        for (let row = arc.backward; row < end; row += width) {
          let allowed = 0;
          for (let w = 0; w < width; w++) allowed += bitCount(rows[row + w]!);
          if (allowed < fewest) fewest = allowed;
        }
        arc.slack = size - fewest;
      }
    }
  }

  /** Revises all neighbours of a variable that changed. */
  propagate(variable: number): boolean {
    const { store } = this;
    for (const arc of this.arcs[variable]!) {
      if (arc.selector >= 0 && this.on[arc.selector] === 0) continue;
      const size = store.cells[variable]!;
      if (size > arc.slack) continue;
      const ok = size <= store.cells[arc.to]! ? this.keepUnion(variable, arc) : this.seekSupports(variable, arc);
      if (!ok) {
        this.failed = [variable, arc.to];
        return false;
      }
    }
    return true;
  }

  /** Whether the values of a complete assignment go with that of one variable. */
  accept(variable: number, solution: Solution): boolean {
    const value = solution[variable]!;
    for (const arc of this.arcs[variable]!) {
      if (arc.selector >= 0 && this.on[arc.selector] === 0) continue;
      const other = solution[arc.to]!;
      const row = arc.forward + value * this.store.length[arc.to]!;
      if (((this.rows[row + (other >>> 5)]! >>> (other & 31)) & 1) === 0) return false;
    }
    return true;
  }

  /** Both directions of every table, one after the other. */
  both(): Arc[] {
    const out: Arc[] = [];
    for (const arcs of this.arcs) for (const arc of arcs) if (arc.from < arc.to) out.push(arc, this.arc(arc.to, arc.from, arc.selector));
    return out;
  }

  /** Whether the two variables as they stand still have some pair of values ruled out. */
  binds(arc: Arc): boolean {
    if (arc.selector >= 0 && this.on[arc.selector] === 0) return false;
    const variable = arc.from;
    const { rows } = this;
    const { cells, start, length } = this.store;
    const width = length[arc.to]!;
    const base = start[arc.to]!;
    for (let w = 0; w < length[variable]!; w++) {
      for (let word = cells[start[variable]! + w]!; word !== 0; word &= word - 1) {
        const row = arc.forward + ((w << 5) + 31 - Math.clz32(word & -word)) * width;
        for (let i = 0; i < width; i++) if ((cells[base + i]! & ~rows[row + i]!) !== 0) return true;
      }
    }
    return false;
  }

  private keepUnion(variable: number, arc: Arc): boolean {
    const { cells, start, length } = this.store;
    const width = length[arc.to]!;
    const { union, rows } = this;
    for (let i = 0; i < width; i++) union[i] = 0;
    for (let w = 0; w < length[variable]!; w++) {
      for (let word = cells[start[variable]! + w]!; word !== 0; word &= word - 1) {
        const row = arc.forward + ((w << 5) + 31 - Math.clz32(word & -word)) * width;
        for (let i = 0; i < width; i++) union[i]! |= rows[row + i]!;
      }
    }
    return this.store.keepAll(arc.to, union);
  }

  private seekSupports(variable: number, arc: Arc): boolean {
    const { rows } = this;
    const { cells, start, length } = this.store;
    const width = length[variable]!;
    const base = start[variable]!;
    for (let w = 0; w < length[arc.to]!; w++) {
      let gone = 0;
      for (let word = cells[start[arc.to]! + w]!; word !== 0; word &= word - 1) {
        const bit = word & -word;
        const value = (w << 5) + 31 - Math.clz32(bit);
        const row = arc.backward + value * width;
        const last = rows[arc.residues + value]!;
        if ((rows[row + last]! & cells[base + last]!) !== 0) continue;
        let i = 0;
        while (i < width && (rows[row + i]! & cells[base + i]!) === 0) i++;
        if (i < width) rows[arc.residues + value] = i;
        else gone |= bit;
      }
      if (gone !== 0 && !this.store.keep(arc.to, w, ~gone)) return false;
    }
    return true;
  }
}
