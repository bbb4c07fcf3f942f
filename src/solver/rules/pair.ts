// A pair table: which value of one variable goes with which of another, as a bit matrix both ways.
// All rules on one pair are merged into one such table before the search; separate tables on one pair each see less than their
// conjunction does, and searches ran away. Filtering is AC3-bit with residues (Lecoutre and Vion, "Enforcing Arc Consistency using
// Bitwise Operations", 2008): a value stays while its row has a bit in common with the other domain, and the word that had it last
// time is looked at first.
import type { Propagator } from "../propagator.js";
import type { Store } from "../store.js";

export class PairTable implements Propagator {
  readonly variables: readonly number[];
  readonly priority = 0;
  /** For each value of one side the allowed values of the other, one after another. */
  private readonly rows: readonly [Int32Array, Int32Array];
  private readonly residues: readonly [Int32Array, Int32Array];

  constructor(
    readonly x: number,
    readonly y: number,
    private readonly sizeX: number,
    private readonly sizeY: number,
  ) {
    this.variables = [x, y];
    const wordsX = Math.max(1, (sizeX + 31) >>> 5);
    const wordsY = Math.max(1, (sizeY + 31) >>> 5);
    this.rows = [new Int32Array(sizeX * wordsY).fill(-1), new Int32Array(sizeY * wordsX).fill(-1)];
    this.residues = [new Int32Array(sizeX), new Int32Array(sizeY)];
  }

  forbid(a: number, b: number): void {
    this.rows[0][a * Math.max(1, (this.sizeY + 31) >>> 5) + (b >>> 5)]! &= ~(1 << (b & 31));
    this.rows[1][b * Math.max(1, (this.sizeX + 31) >>> 5) + (a >>> 5)]! &= ~(1 << (a & 31));
  }

  propagate(store: Store): boolean {
    return this.revise(store, 0, this.x, this.y) && this.revise(store, 1, this.y, this.x);
  }

  /** Removes the values of `at` that no value left of `other` goes with. */
  private revise(store: Store, side: 0 | 1, at: number, other: number): boolean {
    const rows = this.rows[side];
    const residues = this.residues[side];
    const width = store.length[other]!;
    const base = store.start[other]!;
    const start = store.start[at]!;
    for (let w = 0; w < store.length[at]!; w++) {
      let gone = 0;
      for (let word = store.cells[start + w]!; word !== 0; word &= word - 1) {
        const bit = 31 - Math.clz32(word & -word);
        const value = (w << 5) + bit;
        const row = value * width;
        const last = residues[value]!;
        if ((rows[row + last]! & store.cells[base + last]!) !== 0) continue;
        let i = 0;
        while (i < width && (rows[row + i]! & store.cells[base + i]!) === 0) i++;
        if (i < width) residues[value] = i;
        else gone |= 1 << bit;
      }
      if (gone !== 0 && !store.keep(at, w, ~gone)) return false;
    }
    return true;
  }
}
