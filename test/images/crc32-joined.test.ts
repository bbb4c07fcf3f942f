// The check of parts laid one behind another, from their own checks alone, against that of the bytes.
import { expect, it } from "vitest";
import { crc32, crc32Joined } from "../../src/images/index.js";

it("is the check of the bytes, for parts of any size", () => {
  let seed = 7;
  const next = () => {
    seed = (seed * 1103515245 + 12345) % 2147483648;
    return seed;
  };
  for (let round = 0; round < 60; round += 1) {
    const parts = Array.from({ length: 1 + (next() % 5) }, () => Uint8Array.from({ length: next() % 3000 }, () => next() % 251));
    const whole = Uint8Array.from(parts.flatMap((p) => [...p]));
    expect(crc32Joined(parts.map((p) => ({ crc32: crc32(p), size: p.length })))).toBe(crc32(whole));
  }
  expect(crc32Joined([])).toBe("00000000");
});
