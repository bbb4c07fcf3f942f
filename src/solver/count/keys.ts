// Keys: a hash table from short lists of whole numbers to a number, lists compared exactly.

export class Keys {
  private pool = new Int32Array(1 << 12);
  private used = 0;
  private starts: number[] = [];
  private values: number[] = [];
  private table = new Int32Array(1 << 10).fill(-1);

  /** The slot of the first `length` numbers of a list, made when there is none. */
  slot(key: readonly number[], length: number): number {
    if (this.starts.length * 2 > this.table.length) this.grow();
    const mask = this.table.length - 1;
    for (let at = hash(key, length) & mask; ; at = (at + 1) & mask) {
      const slot = this.table[at]!;
      if (slot >= 0) {
        if (this.equals(slot, key, length)) return slot;
        continue;
      }
      const next = this.starts.length;
      this.table[at] = next;
      this.append(key, length);
      return next;
    }
  }

  /** -1 while nothing was set. */
  get(slot: number): number {
    return this.values[slot]!;
  }

  set(slot: number, value: number): void {
    this.values[slot] = value;
  }

  private append(key: readonly number[], length: number): void {
    while (this.used + length + 1 > this.pool.length) {
      const larger = new Int32Array(this.pool.length * 2);
      larger.set(this.pool);
      this.pool = larger;
    }
    this.starts.push(this.used);
    this.values.push(-1);
    this.pool[this.used++] = length;
    for (let i = 0; i < length; i++) this.pool[this.used++] = key[i]!;
  }

  private equals(slot: number, key: readonly number[], length: number): boolean {
    const start = this.starts[slot]!;
    if (this.pool[start] !== length) return false;
    for (let i = 0; i < length; i++) if (this.pool[start + 1 + i] !== (key[i]! | 0)) return false;
    return true;
  }

  private grow(): void {
    this.table = new Int32Array(this.table.length * 4).fill(-1);
    const mask = this.table.length - 1;
    for (const [slot, start] of this.starts.entries()) {
      const length = this.pool[start]!;
      let at = hash(this.pool.subarray(start + 1, start + 1 + length), length) & mask;
      while (this.table[at]! >= 0) at = (at + 1) & mask;
      this.table[at] = slot;
    }
  }
}

function hash(key: ArrayLike<number>, length: number): number {
  let h = length | 0;
  for (let i = 0; i < length; i++) {
    h = Math.imul(h ^ (key[i]! | 0), 0x9e3779b1);
    h ^= h >>> 15;
  }
  return h >>> 0;
}
