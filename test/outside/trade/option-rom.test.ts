// Option ROMs: header, length and zero sum; windows that meet or do not; the 2K steps of the scan.
// Facts: public descriptions of the option-ROM header (55 AA, blocks of 512, sum 0, scan in 2 KiB steps); cases worked by hand.
import { describe, expect, it } from "vitest";
import { link } from "../../../src/catalogue/index.js";
import { optionRom } from "../../../src/images/option-rom.js";
import type { Loaded } from "../../../src/records/index.js";
import { answerOf, plainBoard, plainCard } from "./support.js";

/** A file of `size` bytes of `fill`, with some bytes set. */
function file(size: number, fill: number, set: Readonly<Record<number, number>>): Uint8Array {
  const bytes = new Uint8Array(size).fill(fill);
  for (const [at, value] of Object.entries(set)) bytes[Number(at)] = value;
  return bytes;
}

const header = { 0: 0x55, 1: 0xaa, 2: 0x10 };

describe("the header", () => {
  it("of 8 KiB filled with FF, the last byte set so that the sum is 0, is valid", () => {
    expect(optionRom(file(8192, 0xff, { ...header, 8191: 0xed }))).toEqual({
      signature: true,
      declared: 8192,
      longEnough: true,
      sum: 0,
      valid: true,
      says: "",
    });
  });
  it("with one bit changed adds up to 255", () => {
    expect(optionRom(file(8192, 0xff, { ...header, 100: 0xfe, 8191: 0xed }))).toMatchObject({ signature: true, sum: 255, valid: false });
  });
  it("with the signature swapped is not found, though the bytes add up to 0, and the cause is named", () => {
    const bytes = file(8192, 0, { 0: 0xaa, 1: 0x55, 2: 0x10, 8191: 0xf1 });
    expect(bytes.reduce((a, b) => (a + b) & 0xff, 0)).toBe(0);
    const rom = optionRom(bytes);
    expect(rom).toMatchObject({ signature: false, valid: false });
    expect(rom.says).toMatch(/byte-swapped, or odd and even halves/);
  });
  it("that declares 16 KiB in a file of 8 KiB is cut short", () => {
    const rom = optionRom(file(8192, 0, { ...header, 2: 0x20 }));
    expect(rom).toMatchObject({ signature: true, declared: 16384, longEnough: false, valid: false });
    expect(rom.sum).toBeUndefined();
  });
  it("sums only the bytes it declares: what lies behind them does not matter", () => {
    const bytes = file(8192, 0x33, { ...header, 2: 1 });
    bytes[511] = 0;
    bytes[511] = 256 - (bytes.subarray(0, 512).reduce((a, b) => a + b, 0) & 0xff);
    expect(optionRom(bytes)).toMatchObject({ declared: 512, valid: true });
  });
  it.each([
    ["nothing", new Uint8Array(0)],
    ["two bytes", Uint8Array.of(0x55, 0xaa)],
    ["a length of 0", file(512, 0, { 0: 0x55, 1: 0xaa })],
    ["an erased device", file(8192, 0xff, {})],
  ])("of %s is not valid and says why", (_, bytes) => {
    const rom = optionRom(bytes);
    expect(rom.valid).toBe(false);
    expect(rom.says).not.toBe("");
  });
});

const rom = (id: string, base: number, size: number) => plainCard(id, { claims: [{ memory: [{ base, size, is: "option-rom" }] }] });

describe("windows", () => {
  it.each([
    { a: [0xc8000, 16384], b: [0xcc000, 8192], meets: undefined },
    { a: [0xc8000, 16384], b: [0xca000, 8192], meets: "0xCA000–0xCBFFF" },
    { a: [0xd0000, 65536], b: [0xdc000, 2048], meets: "0xDC000–0xDC7FF" },
    { a: [0xc0000, 32768], b: [0xc8000, 8192], meets: undefined },
  ] as const)("$a and $b meet at $meets", ({ a, b, meets }) => {
    const answer = answerOf(plainBoard(), [rom("a", a[0], a[1]), rom("b", b[0], b[1])]);
    expect(answer.verdict).toBe(meets ? "ruled-out" : "workable");
    const facts = answer.reasons.flatMap((r) => r.facts).map((f) => f.says);
    if (meets) expect(facts).toEqual([expect.stringContaining(meets)]);
  });
});

describe("the scan", () => {
  it.each([
    { base: 0xc8000, found: true },
    { base: 0xc8400, found: false },
    { base: 0xd1800, found: true },
  ])("finds a ROM at $base: $found", ({ base, found }) => {
    const card: Loaded = { kind: "card", record: rom("rom", base, 8192), file: "cards/rom.yaml" };
    const told = link([card]).findings.filter((f) => f.code === "rule-option-rom-step");
    expect(told).toHaveLength(found ? 0 : 1);
  });
});
