import { describe, expect, it } from "vitest";
import {
  type BurnPlan,
  crc32,
  joinLanes,
  type Layout,
  labelText,
  layOut,
  repeatTo,
  sameBytes,
  swapBytes,
  verify,
} from "../../src/images/index.js";
import type { Bank } from "../../src/wiring/index.js";
import { one, three, two } from "./world.js";

const bank = (index: number, offset: number, size: number, version: string, repeats = 1): Bank => ({
  index,
  offset,
  size,
  version,
  repeats,
  use: "mode",
  modes: [],
});
const K64 = 65536;
const whole = [{ socket: "IC7", lane: "whole" as const }];
const halves = [
  { socket: "IC7", lane: "even" as const },
  { socket: "IC8", lane: "odd" as const },
];
const images = new Map([
  ["V1", one],
  ["V2", two],
  ["V3", three],
]);
const plain: BurnPlan = {
  device: { family: "27C020", capacity: 4 * K64, width: 8, sockets: whole },
  banks: [bank(0, 0, K64, "V1", 2), bank(1, K64, K64, "V2"), bank(3, 3 * K64, K64, "V3")],
};

function laid(plan: BurnPlan, options = {}): Extract<Layout, { kind: "layout" }> {
  const layout = layOut(plan, images, options);
  if (layout.kind !== "layout") throw new Error(JSON.stringify(layout.problems));
  return layout;
}

describe("laying out", () => {
  it("repeats a small image, keeps the rest in its bank and fills what is left", () => {
    const { bytes, regions, crc32: crc } = laid(plain).devices[0]!;
    expect(bytes.length).toBe(4 * K64);
    expect(sameBytes(bytes.subarray(0, K64), repeatTo(one, K64))).toBe(true);
    expect(sameBytes(bytes.subarray(K64, 2 * K64), two)).toBe(true);
    expect(bytes.subarray(2 * K64, 3 * K64).every((b) => b === 0xff)).toBe(true);
    expect(sameBytes(bytes.subarray(3 * K64), three)).toBe(true);
    expect(crc).toBe(crc32(bytes));
    expect(regions.map((r) => [r.bank, r.version, r.imageCrc32])).toEqual([
      [0, "V1", crc32(one)],
      [1, "V2", crc32(two)],
      [3, "V3", crc32(three)],
    ]);
    expect(laid(plain, { fill: 0 }).devices[0]!.bytes[2 * K64]).toBe(0);
  });

  it("splits over two sockets so that both together give every image", () => {
    const plan: BurnPlan = {
      device: { family: "27C010", capacity: 2 * K64, width: 8, sockets: halves },
      banks: [
        bank(0, 0, K64 / 2, "V2"),
        bank(1, K64 / 2, K64 / 2, "V3"),
        bank(2, K64, K64 / 2, "V1", 2),
        bank(3, (3 * K64) / 2, K64 / 2, "V2"),
      ],
    };
    const [even, odd] = laid(plan).devices;
    const joined = joinLanes(even!.bytes, odd!.bytes);
    expect(sameBytes(joined.subarray(0, K64), two)).toBe(true);
    expect(sameBytes(joined.subarray(K64, 2 * K64), three)).toBe(true);
    expect(sameBytes(joined.subarray(2 * K64, 3 * K64), repeatTo(one, K64))).toBe(true);
  });

  it("exchanges the bytes of a 16-bit device only when asked", () => {
    const plan: BurnPlan = { device: { family: "27C1024", capacity: 2 * K64, width: 16, sockets: whole }, banks: [bank(0, 0, K64, "V2")] };
    const low = laid(plan).devices[0]!.bytes;
    expect(sameBytes(low.subarray(0, K64), two)).toBe(true);
    expect(sameBytes(laid(plan, { highByteFirst: true }).devices[0]!.bytes, swapBytes(low))).toBe(true);
  });

  it.each([
    ["a missing image", { ...plain, banks: [bank(0, 0, K64, "V9")] }, {}, "There is no image of V9; bank 0 needs it."],
    [
      "an image of another size",
      { ...plain, banks: [bank(0, 0, K64, "V1")] },
      {},
      "Bank 0 has 64K for 1 times V1; the image gives 32K each.",
    ],
    ["a bank past the end", { ...plain, banks: [bank(4, 4 * K64, K64, "V2")] }, {}, "past the 256K of the 27C020"],
    ["banks that overlap", { ...plain, banks: [bank(0, 0, K64, "V2"), bank(1, 100, K64, "V3")] }, {}, "Banks 0 and 1 overlap."],
    ["a fill that is no byte", plain, { fill: 256 }, "it must be one byte"],
  ])("refuses %s", (_, plan, options, says) => {
    const layout = layOut(plan, images, options);
    expect(layout.kind).toBe("refused");
    if (layout.kind === "refused") expect(layout.problems.map((p) => p.says).join(" ")).toContain(says);
  });
});

describe("reading back", () => {
  const layout = laid(plain);
  const device = layout.devices[0]!;
  const changed = (change: (bytes: Uint8Array) => void) => {
    const bytes = device.bytes.slice();
    change(bytes);
    return verify(bytes, device, layout.devices);
  };

  it("agrees with itself and with nothing else", () => {
    expect(verify(device.bytes.slice(), device)).toMatchObject({ same: true, differ: 0, because: [] });
    expect(changed((b) => b.set([b[70000]! ^ 1], 70000))).toMatchObject({
      same: false,
      differ: 1,
      first: { at: 70000 },
      banks: [
        { bank: 0, same: true },
        { bank: 1, same: false },
        { bank: 3, same: true },
      ],
    });
  });

  it.each([
    ["blank", (b: Uint8Array) => void b.fill(0xff), "blank"],
    ["bytes exchanged", (b: Uint8Array) => b.set(swapBytes(b)), "bytes of each 16-bit word are exchanged"],
    [
      "banks reversed",
      (b: Uint8Array) => {
        const was = b.slice();
        for (let i = 0; i < 4; i++) b.set(was.subarray(i * K64, (i + 1) * K64), (3 - i) * K64);
      },
      "reverse order",
    ],
    ["programming stopped early", (b: Uint8Array) => void b.fill(0xff, 3 * K64), "still 1"],
    ["not erased before", (b: Uint8Array) => b.set(b.map((v, i) => (i < 4000 ? v & 0x0f : v))), "already 0"],
  ])("says what fits: %s", (_, change, says) => {
    const found = changed(change);
    expect(found.same).toBe(false);
    expect(found.because.join(" ")).toContain(says);
  });

  it("notices a larger device and a short read", () => {
    expect(verify(repeatTo(device.bytes, 8 * K64), device).because.join(" ")).toContain("2 times over");
    expect(verify(device.bytes.subarray(0, 1000), device).because.join(" ")).toContain("cut short");
  });

  it("notices exchanged halves", () => {
    const two = laid({ device: { family: "27C512", capacity: K64, width: 8, sockets: halves }, banks: [bank(0, 0, K64 / 2, "V2")] });
    const [even, odd] = two.devices;
    expect(verify(odd!.bytes, even!, two.devices).because).toEqual(["It is the device of socket IC8: the two are exchanged."]);
  });
});

describe("the label", () => {
  it("names socket, banks with checksums and positions, device checksum and date", () => {
    const device = laid(plain).devices[0]!;
    const lines = labelText(device, { family: "27C020", firmware: "Test Monitor", date: "1992-03-04", positions: { 1: ["2"] } }).split(
      "\n",
    );
    expect(lines[0]).toBe("IC7  27C020  256K");
    expect(lines[2]).toBe(`bank 0  0x0000  V1 x2  ${crc32(one)}`);
    expect(lines[3]).toBe(`bank 1  0x10000  V2  ${crc32(two)}  position 2`);
    expect(lines).toContain(`device CRC-32 ${device.crc32}`);
    expect(lines).toContain("burned 1992-03-04");
  });
});
