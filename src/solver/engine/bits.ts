// Sets of small numbers as bitsets, so that "is inside" and "meets" are a few word operations. All sets compared have the same length.

export type Bits = Int32Array;

export const noBits = (count: number): Bits => new Int32Array(Math.max(1, (count + 31) >>> 5));

export function bitsOf(count: number, members: readonly number[]): Bits {
  const bits = noBits(count);
  for (const member of members) put(bits, member);
  return bits;
}

export function membersOf(bits: Bits): number[] {
  const out: number[] = [];
  for (let w = 0; w < bits.length; w++) {
    for (let word = bits[w]!; word !== 0; word &= word - 1) out.push((w << 5) + 31 - Math.clz32(word & -word));
  }
  return out;
}

export function put(bits: Bits, member: number): void {
  bits[member >>> 5]! |= 1 << (member & 31);
}

export function drop(bits: Bits, member: number): void {
  bits[member >>> 5]! &= ~(1 << (member & 31));
}

export const has = (bits: Bits, member: number): boolean => ((bits[member >>> 5]! >>> (member & 31)) & 1) === 1;

export function within(inner: Bits, outer: Bits): boolean {
  for (let w = 0; w < inner.length; w++) if ((inner[w]! & ~outer[w]!) !== 0) return false;
  return true;
}

export function meets(one: Bits, two: Bits): boolean {
  for (let w = 0; w < one.length; w++) if ((one[w]! & two[w]!) !== 0) return true;
  return false;
}
