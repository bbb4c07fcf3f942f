// CRC-32 as zip and Ethernet use it (CRC-32/ISO-HDLC): polynomial 04C11DB7 reflected, start and end FFFFFFFF. A dump is held against every
// known image in every order, so it is worked out four bytes at a time (Kounavis and Berry, "A Systematic Approach to Building High
// Performance Software-based CRC Generators", 2005).

/** Row k: what a byte comes to with k bytes of zeros after it. */
const tables = new Uint32Array(4 * 256);
for (let n = 0; n < 256; n++) {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1;
  tables[n] = c;
}
for (let n = 256; n < tables.length; n++) tables[n] = at(tables, at(tables, n - 256) & 0xff) ^ (at(tables, n - 256) >>> 8);

/** The caller knows that the place is there: no check is made, for one a byte is what costs. */
function at(numbers: Uint8Array | Uint32Array, place: number): number {
  return numbers[place] as number;
}

/** Eight lower-case hex digits, as firmware records write it. */
export function crc32(bytes: Uint8Array): string {
  let c = 0xffffffff;
  const fours = bytes.length - (bytes.length % 4);
  for (let i = 0; i < fours; i += 4) {
    c ^= at(bytes, i) | (at(bytes, i + 1) << 8) | (at(bytes, i + 2) << 16) | (at(bytes, i + 3) << 24);
    c = at(tables, 768 + (c & 0xff)) ^ at(tables, 512 + ((c >>> 8) & 0xff)) ^ at(tables, 256 + ((c >>> 16) & 0xff)) ^ at(tables, c >>> 24);
  }
  for (let i = fours; i < bytes.length; i++) c = at(tables, (c ^ at(bytes, i)) & 0xff) ^ (c >>> 8);
  return ((c ^ 0xffffffff) >>> 0).toString(16).padStart(8, "0");
}
