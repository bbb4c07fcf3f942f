// A small firmware family with images by recipe, for the tests of dumps and burns.

import { checksums, crc32, swapBytes, takeLane } from "../../src/images/index.js";
import { definedFields, type Firmware } from "../../src/records/index.js";

/** 32-bit xorshift stream, low byte first. */
export function stream(seed: number, length: number): Uint8Array {
  const out = new Uint8Array(length);
  let x = seed >>> 0;
  for (let i = 0; i < length; i++) {
    if (i % 4 === 0) {
      x = (x ^ (x << 13)) >>> 0;
      x = (x ^ (x >>> 17)) >>> 0;
      x = (x ^ (x << 5)) >>> 0;
    }
    out[i] = (x >>> (8 * (i % 4))) & 255;
  }
  return out;
}

export const one = stream(7, 32768);
export const two = stream(1007, 65536);
export const three = stream(2007, 65536);
/** A dump of version 3 with its last 64 bytes lost. */
export const damaged = (() => {
  const bytes = three.slice();
  bytes.fill(0, bytes.length - 64);
  return bytes;
})();

const sumsOf = async (bytes: Uint8Array) => {
  const { crc32: crc, sha1, sha256 } = await checksums(bytes);
  return definedFields({ size: bytes.length, crc32: crc, sha1, sha256 });
};

export async function family(): Promise<Firmware> {
  return {
    id: "test-monitor",
    name: "Test Monitor",
    maker: "Testers",
    boards: [{ board: "test-board" }],
    versions: [
      { id: "V1", image: { ...(await sumsOf(one)), size: "32K" } },
      { id: "V2", image: { size: two.length, width: 16, crc32: crc32(two) } },
      {
        id: "V3",
        image: { ...(await sumsOf(three)), sha1: "unknown" },
        circulating: [
          { as: "even-half", size: 32768, crc32: crc32(takeLane(three, "even")) },
          { as: "byte-swapped", size: 65536, crc32: crc32(swapBytes(three)), note: "Met on old disks." },
          { as: "bad-dump", size: 65536, crc32: crc32(damaged), note: "Its end was not read." },
        ],
      },
      { id: "V4", image: { size: "128K", crc32: "unknown" } },
    ],
  };
}
