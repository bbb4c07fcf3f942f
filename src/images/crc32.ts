// CRC-32 as zip and Ethernet use it (CRC-32/ISO-HDLC): polynomial 04C11DB7 reflected, start and end FFFFFFFF.
import { itemAt } from "../records/index.js";

const table = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1;
  return c >>> 0;
});

/** Eight lower-case hex digits, as firmware records write it. */
export function crc32(bytes: Uint8Array): string {
  let c = 0xffffffff;
  for (let i = 0; i < bytes.length; i++) c = itemAt(table, (c ^ itemAt(bytes, i)) & 0xff) ^ (c >>> 8);
  return ((c ^ 0xffffffff) >>> 0).toString(16).padStart(8, "0");
}
