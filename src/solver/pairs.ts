// Pair tables: which value of one variable goes with which of another, as bit matrices both ways.
// All rules on one pair are merged into one table before the search: two tables on one pair each see less than their conjunction does,
// and searches ran away on it. A dirty variable revises its neighbours, bits at a time (after Lecoutre and Vion, "Enforcing Arc
// Consistency using Bitwise Operations", 2008), by whichever is shortest:
// - the dirty variable still has more values than any neighbour's value forbids: nothing can have lost its support;
// - it has fewer values than the neighbour: the neighbour keeps the union of what goes with them;
// - otherwise each value of the neighbour looks for a support, in the word that had it last time first.
import type { Store } from "./store.js";

/** One direction of a table: from the variable that changed to the one to be revised. */
interface Arc {
  readonly to: number;
  /** For each value of the changed variable, the bitset of the other's values that go with it. */
  readonly forward: Int32Array;
  /** For each value of the other, the bitset of the changed variable's values. */
  readonly backward: Int32Array;
  readonly residues: Int32Array;
  /** The most values of the changed variable that one value of the other forbids. */
  slack: number;
  readonly guard: number;
}

const wordsFor = (size: number): number => Math.max(1, (size + 31) >>> 5);

export class PairTables {
  /** The pair that failed last. */
  failed: readonly number[] = [];
  readonly arcs: Arc[][];
  private readonly tables = new Map<string, readonly [Arc, Arc]>();
  private readonly union: Int32Array;

  constructor(
    private readonly store: Store,
    private readonly on: Uint8Array,
  ) {
    this.arcs = store.sizes.map(() => []);
    this.union = new Int32Array(Math.max(1, ...store.length));
  }

  /** The value a of x does not go with the value b of y. */
  forbid(x: number, a: number, y: number, b: number, guard: number): void {
    if (x > y) this.forbid(y, b, x, a, guard);
    else {
      const [arc, back] = this.table(x, y, guard);
      arc.forward[a * this.store.length[y]! + (b >>> 5)]! &= ~(1 << (b & 31));
      back.forward[b * this.store.length[x]! + (a >>> 5)]! &= ~(1 << (a & 31));
    }
  }

  private table(x: number, y: number, guard: number): readonly [Arc, Arc] {
    const key = `${guard}:${x}:${y}`;
    const known = this.tables.get(key);
    if (known) return known;
    const [m, n] = [this.store.sizes[x]!, this.store.sizes[y]!];
    const fromX = new Int32Array(m * wordsFor(n)).fill(-1);
    const fromY = new Int32Array(n * wordsFor(m)).fill(-1);
    const arc: Arc = { to: y, forward: fromX, backward: fromY, residues: new Int32Array(n), slack: 0, guard };
    const back: Arc = { to: x, forward: fromY, backward: fromX, residues: new Int32Array(m), slack: 0, guard };
    this.arcs[x]!.push(arc);
    this.arcs[y]!.push(back);
    this.tables.set(key, [arc, back]);
    return [arc, back];
  }

  /** To be called once all rules are in. */
  finish(): void {
    for (const [x, arcs] of this.arcs.entries()) {
      for (const arc of arcs) {
        for (let b = 0; b < this.store.sizes[arc.to]!; b++) {
          let forbidden = 0;
          for (let a = 0; a < this.store.sizes[x]!; a++) {
            if (((arc.backward[b * this.store.length[x]! + (a >>> 5)]! >>> (a & 31)) & 1) === 0) forbidden++;
          }
          arc.slack = Math.max(arc.slack, forbidden);
        }
      }
    }
  }

  /** Revises all neighbours of a variable that changed. */
  propagate(variable: number): boolean {
    const { store } = this;
    for (const arc of this.arcs[variable]!) {
      if (arc.guard >= 0 && this.on[arc.guard] === 0) continue;
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

  private keepUnion(variable: number, arc: Arc): boolean {
    const { cells, start, length } = this.store;
    const width = length[arc.to]!;
    const { union } = this;
    for (let i = 0; i < width; i++) union[i] = 0;
    for (let w = 0; w < length[variable]!; w++) {
      for (let word = cells[start[variable]! + w]!; word !== 0; word &= word - 1) {
        const row = ((w << 5) + 31 - Math.clz32(word & -word)) * width;
        for (let i = 0; i < width; i++) union[i]! |= arc.forward[row + i]!;
      }
    }
    return this.store.keepAll(arc.to, union);
  }

  private seekSupports(variable: number, arc: Arc): boolean {
    const { cells, start, length } = this.store;
    const width = length[variable]!;
    const base = start[variable]!;
    for (let w = 0; w < length[arc.to]!; w++) {
      let gone = 0;
      for (let word = cells[start[arc.to]! + w]!; word !== 0; word &= word - 1) {
        const bit = word & -word;
        const value = (w << 5) + 31 - Math.clz32(bit);
        const row = value * width;
        const last = arc.residues[value]!;
        if ((arc.backward[row + last]! & cells[base + last]!) !== 0) continue;
        let i = 0;
        while (i < width && (arc.backward[row + i]! & cells[base + i]!) === 0) i++;
        if (i < width) arc.residues[value] = i;
        else gone |= bit;
      }
      if (gone !== 0 && !this.store.keep(arc.to, w, ~gone)) return false;
    }
    return true;
  }
}
