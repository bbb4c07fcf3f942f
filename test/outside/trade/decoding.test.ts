// What answers where: images repeated to fill a window, and ports that answer again at aliases. Banks and devices in other
// sockets stand in banking.test.ts and substitution.test.ts.
import { describe, expect, it } from "vitest";
import { meetIo } from "../../../src/catalogue/index.js";
import { layOut } from "../../../src/images/index.js";
import type { FirmwareSocket } from "../../../src/records/index.js";
import type { Sockets } from "../../../src/switching/demand/sockets.js";
import { imageRepeats } from "../../../src/wiring/harness/banks.js";
import { answerOf, firmwareFor, plainBoard, plainCard } from "./support.js";

const KiB = 1024;
/** A socket that shows a window of this size. */
function socket(window: number): Sockets {
  const record: FirmwareSocket = {
    id: "U1",
    pins: 32,
    data_width: 8,
    window: { base: 0x100000 - window, size: window },
    wired_for: "27C040",
    slowest_ns: 200,
  };
  return {
    sockets: [{ socket: record, lane: "whole" }],
    base: 0x100000 - window,
    window,
    share: window,
    width: 8,
    rows: 1,
    totalWidth: 8,
    slowest_ns: 200,
  };
}

// Arithmetic: window / image copies, when both are powers of two and the line between them is not decoded.
describe("an image repeated to fill its window", () => {
  it.each([
    { image: 256, window: 512, copies: 2 },
    { image: 512, window: 512, copies: 1 },
    { image: 8, window: 64, copies: 8 },
    { image: 512, window: 256, copies: 0 },
  ])("$image KiB in $window KiB: $copies", ({ image, window, copies }) => {
    const family = { ...firmwareFor(["board"]), versions: [{ id: "1", image: { size: image * KiB, crc32: "unknown" as const } }] };
    const { repeats, reasons } = imageRepeats(family, ["1"], socket(window * KiB));
    expect(repeats.get("1") ?? 0).toBe(copies);
    expect(reasons.map((r) => r.code)).toEqual(copies === 0 ? ["image-too-large"] : []);
  });
  it.each([
    { image: 262144, address: 0x5a1b2, as: 0x1a1b2, window: 524288 },
    { image: 8192, address: 0xf123, as: 0x1123, window: 65536 },
  ])("shows at $address what lies at $as", ({ image, address, as, window }) => {
    // Every byte differs from what lies near it, so that an offset by any power of two is seen.
    const bytes = Uint8Array.from({ length: image }, (_, i) => (i * 167 + (i >> 8) * 59 + (i >> 16) * 83) & 0xff);
    const made = layOut(
      {
        device: { family: "x", capacity: window, width: 8, sockets: [{ socket: "U1", lane: "whole" }] as never },
        banks: [{ index: 0, offset: 0, size: window, version: "1", repeats: window / image }],
      },
      new Map([["1", bytes]]),
    );
    if (made.kind !== "layout") throw new Error(made.problems[0]!.says);
    expect(made.devices[0]!.bytes[address]).toBe(bytes[as]);
    expect(made.devices[0]!.bytes.subarray(window - image)).toEqual(bytes);
  });
});

// Published: port-address notes on cards that look at ten address lines; arithmetic.
describe("ports of a card that looks at ten address lines", () => {
  const card = { base: 0x300, size: 1, decoded_bits: 10 };
  it("answer 64 times in 65536 ports, 400h apart", () => {
    const all = Array.from({ length: 65536 }, (_, base) => base).filter((base) => meetIo(card, { base, size: 1 }, 16));
    expect(all).toHaveLength(64);
    expect(all.slice(0, 5)).toEqual([0x300, 0x700, 0xb00, 0xf00, 0x1300]);
  });
  it("at 3E0 answer at 7E5, and the planner says why", () => {
    const old = plainCard("old", { claims: [{ io: [{ base: 0x3e0, size: 16, decoded_bits: 10 }] }] });
    const at = (base: number) => answerOf(plainBoard(), [old, plainCard("far", { claims: [{ io: [{ base, size: 1 }] }] })]);
    expect(at(0x7e5).reasons[0]!.facts[0]!.says).toMatch(/0x7E5|0x3E5/);
    expect([at(0x7e5).verdict, at(0x7f5).verdict]).toEqual(["ruled-out", "workable"]);
  });
  it("of which nobody knows how many it looks at, is not called workable where it may answer", () => {
    const old = plainCard("old", { claims: [{ io: [{ base: 0x3e0, size: 16, decoded_bits: "unknown" }] }] });
    const at = (base: number, size = 1) => answerOf(plainBoard(), [old, plainCard("far", { claims: [{ io: [{ base, size }] }] })]);
    // 3E0 to 3EF take ten lines at the least; so 7E5 may be answered, 7F5 cannot, and 3E5 is for sure.
    expect([at(0x7e5).verdict, at(0x7f5).verdict, at(0x3e5).verdict]).toEqual(["unknown", "workable", "ruled-out"]);
    expect(at(0x7e5).unknowns[0]).toMatchObject({
      says: "How many address lines old looks at is not known; with few of them old and far answer at one port.",
      how: expect.stringContaining("read a port of the card at addresses 0x400"),
    });
  });
});
