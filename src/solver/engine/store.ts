// The store: every variable's domain as a multi-word bitset, and the trail that undoes changes when the search steps back.
// All reversible state lives in one array of 32-bit cells, propagators' own state too; what the rules mean is left to them.

/** The number of set bits of a 32-bit word. */
export function bitCount(word: number): number {
  let n = word - ((word >>> 1) & 0x55555555);
  n = (n & 0x33333333) + ((n >>> 2) & 0x33333333);
  return Math.imul((n + (n >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}

export class Store {
  /** Cells 0..n-1 hold the domain sizes, then come the domains, then what propagators keep. */
  cells: Int32Array;
  /** First domain cell of each variable, and the number of cells it takes. */
  readonly start: Int32Array;
  readonly length: Int32Array;
  /** Told of every variable whose domain shrank. */
  onChange: (variable: number) => void = () => {};
  private used: number;
  private stamps: Int32Array;
  private stamp = 1;
  private trail = new Int32Array(1024);
  private trailTop = 0;

  constructor(readonly sizes: readonly number[]) {
    const count = sizes.length;
    this.start = new Int32Array(count);
    this.length = new Int32Array(count);
    let next = count;
    for (let v = 0; v < count; v++) {
      this.start[v] = next;
      this.length[v] = Math.max(1, (sizes[v]! + 31) >>> 5);
      next += this.length[v]!;
    }
    this.used = next;
    this.cells = new Int32Array(next);
    this.stamps = new Int32Array(next);
    for (let v = 0; v < count; v++) {
      this.cells[v] = sizes[v]!;
      for (let value = 0; value < sizes[v]!; value++) this.cells[this.start[v]! + (value >>> 5)]! |= 1 << (value & 31);
    }
  }

  /** Reserves reversible cells for a propagator, all zero. Only before the search starts. */
  reserve(count: number): number {
    const at = this.used;
    this.used += count;
    if (this.used > this.cells.length) {
      const cells = new Int32Array(this.used * 2);
      cells.set(this.cells);
      this.cells = cells;
      this.stamps = new Int32Array(this.used * 2);
    }
    return at;
  }

  size(variable: number): number {
    return this.cells[variable]!;
  }

  has(variable: number, value: number): boolean {
    return ((this.cells[this.start[variable]! + (value >>> 5)]! >>> (value & 31)) & 1) === 1;
  }

  /** The smallest value left. */
  first(variable: number): number {
    const start = this.start[variable]!;
    for (let w = 0; ; w++) {
      const word = this.cells[start + w]!;
      if (word !== 0) return (w << 5) + 31 - Math.clz32(word & -word);
    }
  }

  values(variable: number): number[] {
    const out: number[] = [];
    const start = this.start[variable]!;
    for (let w = 0; w < this.length[variable]!; w++) {
      for (let word = this.cells[start + w]!; word !== 0; word &= word - 1) out.push((w << 5) + 31 - Math.clz32(word & -word));
    }
    return out;
  }

  /** Writes a reversible cell. */
  set(cell: number, value: number): void {
    if (this.stamps[cell] !== this.stamp) {
      this.stamps[cell] = this.stamp;
      if (this.trailTop + 2 > this.trail.length) {
        const longer = new Int32Array(this.trail.length * 2);
        longer.set(this.trail);
        this.trail = longer;
      }
      this.trail[this.trailTop++] = cell;
      this.trail[this.trailTop++] = this.cells[cell]!;
    }
    this.cells[cell] = value;
  }

  /** Keeps only the values of `mask` in one word of a domain; false when the domain is empty afterwards. */
  keep(variable: number, word: number, mask: number): boolean {
    const cell = this.start[variable]! + word;
    const old = this.cells[cell]!;
    const next = old & mask;
    if (next === old) return true;
    this.set(cell, next);
    const size = this.cells[variable]! - bitCount(old & ~mask);
    this.set(variable, size);
    if (size === 0) return false;
    this.onChange(variable);
    return true;
  }

  /** Keeps only the values of a whole bitset. */
  keepAll(variable: number, masks: Int32Array, offset = 0): boolean {
    for (let w = 0; w < this.length[variable]!; w++) if (!this.keep(variable, w, masks[offset + w]!)) return false;
    return true;
  }

  remove(variable: number, value: number): boolean {
    return this.keep(variable, value >>> 5, ~(1 << (value & 31)));
  }

  assign(variable: number, value: number): boolean {
    for (let w = 0; w < this.length[variable]!; w++) {
      if (!this.keep(variable, w, w === value >>> 5 ? 1 << (value & 31) : 0)) return false;
    }
    return true;
  }

  /** A point to come back to. */
  mark(): number {
    this.stamp++;
    return this.trailTop;
  }

  undo(mark: number): void {
    while (this.trailTop > mark) {
      this.trailTop -= 2;
      this.cells[this.trail[this.trailTop]!] = this.trail[this.trailTop + 1]!;
    }
    this.stamp++;
  }
}
