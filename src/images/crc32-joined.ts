// The CRC-32 of parts laid one behind another, from the CRC-32 and the size of each, without a byte of them. To append n bytes is to
// multiply the check by x to the power 8n in the field of the polynomial; then the two checks are added (exclusive or).
export interface Summed {
  /** Eight hex digits. */
  readonly crc32: string;
  /** Bytes. */
  readonly size: number;
}

const polynomial = 0xedb88320;

/** Product of two polynomials in the reflected order of CRC-32: the highest bit is the constant term. */
function times(a: number, b: number): number {
  let product = 0;
  let shifted = b;
  for (let bit = 31; bit >= 0; bit -= 1) {
    if ((a >>> bit) & 1) product ^= shifted;
    shifted = shifted & 1 ? (shifted >>> 1) ^ polynomial : shifted >>> 1;
  }
  return product >>> 0;
}

/** x to the power 8 times `bytes`. */
function shiftBy(bytes: number): number {
  let power = 0x00800000;
  let result = 0x80000000;
  for (let left = bytes; left > 0; left = Math.floor(left / 2)) {
    if (left % 2 === 1) result = times(result, power);
    power = times(power, power);
  }
  return result;
}

/** Eight lower-case hex digits; of no part at all, those of nothing. */
export function crc32Joined(parts: readonly Summed[]): string {
  const sum = parts.reduce((crc, part) => (times(shiftBy(part.size), crc) ^ Number.parseInt(part.crc32, 16)) >>> 0, 0);
  return sum.toString(16).padStart(8, "0");
}
