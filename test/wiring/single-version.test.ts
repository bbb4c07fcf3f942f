// One version in the device that really stands there: every byte of it told, every pin with a level, and a refusal where that cannot be.
import { describe, expect, it } from "vitest";
import { type BurnPlan, joinLanes, laneText, layOut, sameBytes } from "../../src/images/index.js";
import { planSingleVersion } from "../../src/wiring/index.js";
import { stream } from "../images/world.js";
import { combination, m27c010, m27c020, m27c040, m27c080, memory, socket32, world } from "./support/world.js";

const K64 = 0x10000;
const upper = socket32.upper_pins ?? [];
/** Pin list of a 16-bit device of 40 pins, from memory of the JEDEC layout of the 27C1024. */
const wide = memory(
  "27C1024",
  "VPP /CE D15 D14 D13 D12 D11 D10 D9 D8 GND D7 D6 D5 D4 D3 D2 D1 D0 /OE A0 A1 A2 A3 A4 A5 A6 A7 A8 GND2 A9 A10 A11 A12 A13 A14 A15 NC /PGM VCC"
    .split(" ")
    .map((name) => (name === "GND2" ? "NC" : name)),
  128,
  16,
);
const socket40 = (id: string, lane: "whole" | "even" | "odd", size: number) => ({
  ...socket32,
  id,
  pins: 40,
  data_width: 16,
  window: { base: 0xe0000, size },
  wired_for: "27C1024",
  lane,
  upper_pins: [{ pin: 1, carries: "supply" as const }],
});
const parts = [m27c010, m27c020, m27c040, wide];
const always = combination([{ firmware: "R6" }, { firmware: "R6", on: [] }], []);

function single(input: Partial<Parameters<typeof world>[0]> = {}, device?: string) {
  return planSingleVersion(world({ parts, versions: { R6: K64 }, ...input }), always, device === undefined ? {} : { switch: { device } });
}

function planned(...given: Parameters<typeof single>) {
  const plan = single(...given);
  if (plan.kind !== "single-version") throw new Error(plan.reasons[0]?.says);
  return plan;
}

function refusal(...given: Parameters<typeof single>): string {
  const plan = single(...given);
  if (plan.kind !== "refused") throw new Error("it was not refused");
  return plan.reasons.map((r) => r.says).join(" ");
}

describe("one version in one socket", () => {
  it("fills the device of the socket's own family, and of any larger one", () => {
    expect(planned().banks).toMatchObject([{ offset: 0, size: 2 * K64, repeats: 2, modes: ["m1", "m2"] }]);
    expect(planned({}, "27c040").banks).toMatchObject([{ offset: 0, size: 8 * K64, repeats: 8 }]);
  });

  it("ties each address pin that meets nothing, and no other", () => {
    // The socket leaves pins 2 and 30 open and ties 31 high: A16 floats in each device, A17 in the two larger ones.
    expect(planned().pinWork.map((w) => [w.pin, w.signal, w.does])).toEqual([[2, "A16", "tie"]]);
    const both = planned({}, "27c040").pinWork;
    expect(both.map((w) => [w.pin, w.signal, w.does])).toEqual([
      [2, "A16", "tie"],
      [30, "A17", "tie"],
    ]);
    const driven = { ...socket32, upper_pins: [...upper.slice(0, 1), { pin: 2, carries: "driven" as const, line: "A16" }] };
    expect(planned({ sockets: [driven] }).pinWork).toEqual([]);
  });

  it("lifts a pin over a socket pin that no record speaks of", () => {
    const silent = { ...socket32, upper_pins: upper.filter((p) => p.pin !== 30) };
    expect(planned({ sockets: [silent] }, "27c020").pinWork.find((w) => w.pin === 30)).toMatchObject({
      does: "lift-and-tie",
      to: "ground",
    });
  });

  it("takes no line above the window for one that the board drives, where nobody said so", () => {
    const silent = { ...socket32, upper_pins: upper.filter((p) => p.pin !== 2) };
    expect(planned({ sockets: [silent] }).pinWork.find((w) => w.pin === 2)).toMatchObject({ does: "lift-and-tie", to: "ground" });
  });

  it("is refused where a line within the window is another line of the board", () => {
    const carries = (line: string) => ({
      ...socket32,
      window: { base: 0xe0000, size: 2 * K64 },
      upper_pins: [...upper.filter((p) => p.pin !== 2), { pin: 2, carries: "driven" as const, line }],
    });
    expect(planned({ sockets: [carries("A16")] }).pinWork).toEqual([]);
    expect(refusal({ sockets: [carries("A17")] })).toContain("pin 2 (A16) finds no signal A16 in IC7");
  });

  it("lifts what stands over another supply than +5 V, and never takes that for a level", () => {
    const rail = { ...socket32, upper_pins: [{ pin: 1, carries: "rail" as const, line: "+12" }, ...upper.slice(1)] };
    expect(planned({ sockets: [rail] }, "27c010").pinWork).toContainEqual(
      expect.objectContaining({ pin: 1, signal: "VPP", does: "lift-and-wire", to: "socket pin 32 (+5 V)" }),
    );
    const wider = planned({ parts: [...parts, m27c080], sockets: [rail] }, "27c080").pinWork;
    expect(wider.find((w) => w.pin === 1)).toMatchObject({ signal: "A19", does: "lift-and-tie", to: "ground" });
  });

  it("of an old device with three supplies knows that VDD beside VCC is none of +5 V", () => {
    const low24 = "A7 A6 A5 A4 A3 A2 A1 A0 D0 D1 D2 GND D3 D4 D5 D6 D7 /CE";
    const three = memory("27X08", `${low24} VDD /OE VBB A9 A8 VCC`.split(" "), 1);
    const one = memory("27X16", `${low24} A10 /OE VPP A9 A8 VCC`.split(" "), 2);
    const { upper_pins: _, ...bare } = socket32;
    const socket24 = { ...bare, pins: 24, window: { base: 0xf0000, size: "1K" }, wired_for: "27X08" };
    const old = { parts: [three, one], sockets: [socket24], versions: { R6: 1024 } };
    expect(planned(old).pinWork).toEqual([]);
    expect(planned(old, "27x16").pinWork.map((w) => [w.pin, w.signal, w.does])).toEqual([
      [21, "VPP", "lift-and-wire"],
      [19, "A10", "lift-and-tie"],
    ]);
    const modern = { ...socket24, wired_for: "27X16", window: { base: 0xf0000, size: "1K" } };
    expect(refusal({ ...old, sockets: [modern] }, "27x08")).toContain("VDD");
  });

  it("needs nothing for an output, which only must meet nothing that drives it", () => {
    const ready = memory(
      "29X010",
      m27c010.pins.map((p) => (p.pin === 1 ? "RY//BY" : p.name)),
      128,
    );
    const with1 = (carries: "open" | "supply") => ({ ...socket32, upper_pins: [{ pin: 1, carries }, ...upper.slice(1)] });
    const works = (carries: "open" | "supply") => planned({ parts: [...parts, ready], sockets: [with1(carries)] }, "29x010").pinWork;
    expect(works("open").map((w) => w.pin)).toEqual([2]);
    expect(works("supply").find((w) => w.pin === 1)).toMatchObject({ does: "lift", signal: "RY//BY" });
  });

  it("is refused where the socket's device is in no record, with the name of the device", () => {
    expect(refusal({ parts: [m27c040] })).toContain("27C010");
    expect(refusal({ parts }, "27c999")).toBe("The parts records hold no memory device 27c999.");
  });

  it("is refused where the image is made for another width, is too large, or of a length nobody knows", () => {
    expect(refusal({ versions: { R6: 2 * K64 } })).toContain("the window");
    expect(refusal({ versions: { R6: "unknown" } })).toContain("unknown");
    expect(refusal({ versions: { R6: 0xc000 } })).toContain("evenly");
  });
});

describe("one version in several sockets", () => {
  const row = (base: number, id: string) => ({ ...socket32, id, window: { base, size: "64K" } });

  it("in a row gets one part after the other, lowest addresses first, whatever their order in the record", () => {
    const image = stream(9, 2 * K64);
    const sockets = [row(0xf0000, "IC8"), row(0xe0000, "IC7")];
    const { device, banks, pinWork } = planned({ sockets, versions: { R6: 2 * K64 } });
    expect(device.sockets).toEqual([
      { socket: "IC7", lane: "whole", part: { place: 1, of: 2, size: K64 } },
      { socket: "IC8", lane: "whole", part: { place: 2, of: 2, size: K64 } },
    ]);
    expect(pinWork.map((w) => [w.socket, w.pin])).toEqual([
      ["IC7", 2],
      ["IC8", 2],
    ]);
    const layout = layOut({ device, banks } satisfies BurnPlan, new Map([["R6", image]]));
    if (layout.kind !== "layout") throw new Error(layout.problems.map((p) => p.says).join(" "));
    // Each device of 128K holds its 64K twice over.
    for (const [i, { bytes }] of layout.devices.entries())
      for (const at of [0, K64]) expect(sameBytes(bytes.subarray(at, at + K64), image.subarray(i * K64, (i + 1) * K64))).toBe(true);
    expect(layout.devices.map(laneText)).toEqual(["part 1 of 2", "part 2 of 2"]);
  });

  it("in a row gets the whole of an image that is no longer than one part, in each", () => {
    const image = stream(9, K64);
    const { device, banks } = planned({ sockets: [row(0xe0000, "IC7"), row(0xf0000, "IC8")] });
    const layout = layOut({ device, banks } satisfies BurnPlan, new Map([["R6", image]]));
    if (layout.kind !== "layout") throw new Error(layout.problems.map((p) => p.says).join(" "));
    for (const { bytes, regions } of layout.devices) {
      expect(sameBytes(bytes.subarray(0, K64), image)).toBe(true);
      expect(regions.map((r) => r.repeats)).toEqual([2]);
    }
  });

  it("in a row of pairs gets its lane of its part", () => {
    const image = stream(9, 4 * K64);
    const pairOf = (base: number, ids: readonly [string, string]) => [
      { ...row(base, ids[0]), lane: "even" as const, window: { base, size: "128K" } },
      { ...row(base, ids[1]), lane: "odd" as const, window: { base, size: "128K" } },
    ];
    const sockets = [...pairOf(0xe0000, ["IC3", "IC4"]), ...pairOf(0xc0000, ["IC1", "IC2"])];
    const { device, banks } = planned({ sockets, versions: { R6: 4 * K64 } });
    const layout = layOut({ device, banks } satisfies BurnPlan, new Map([["R6", image]]));
    if (layout.kind !== "layout") throw new Error(layout.problems.map((p) => p.says).join(" "));
    expect(layout.devices.map((d) => d.socket)).toEqual(["IC1", "IC2", "IC3", "IC4"]);
    for (const [d, { bytes }] of layout.devices.entries())
      for (let at = 0; at < K64; at += 997) expect(bytes[at]).toBe(image[Math.floor(d / 2) * 2 * K64 + 2 * at + (d % 2)]);
  });

  it("is refused where the windows do not follow one another, or where a place lacks a lane", () => {
    expect(refusal({ sockets: [row(0xc0000, "IC7"), row(0xf0000, "IC8")] })).toContain("do not follow one another");
    const three = [row(0xd0000, "IC7"), row(0xe0000, "IC8"), row(0xf0000, "IC9")];
    expect(refusal({ sockets: three })).toContain("not a power of two");
    const lame = [{ ...row(0xe0000, "IC7"), lane: "even" as const }, row(0xf0000, "IC8")];
    expect(refusal({ sockets: lame })).toContain("IC7 (even), IC8 (whole)");
    const four = ["even", "odd", "even", "odd"].map((lane, i) => ({ ...row(0xf0000, `IC${i}`), lane: lane as "even" | "odd" }));
    expect(refusal({ sockets: four })).toContain("make no window together");
  });

  it("is refused where they are wired for different devices and none was named", () => {
    const lanes = [
      { ...socket32, lane: "even" as const },
      { ...socket32, id: "IC8", lane: "odd" as const, wired_for: "27C020" },
    ];
    expect(refusal({ sockets: lanes })).toBe("IC7 and IC8 are wired for different devices: 27C010 and 27C020.");
    expect(planned({ sockets: lanes }, "27c020").device.sockets).toHaveLength(2);
  });

  it("of 16 bits each gets every second word, not every second byte", () => {
    const image = stream(5, 4 * K64);
    const lanes = [socket40("IC1", "even", 4 * K64), socket40("IC2", "odd", 4 * K64)];
    const { device, banks } = planned({ sockets: lanes, versions: { R6: 4 * K64 } });
    const layout = layOut({ device, banks } satisfies BurnPlan, new Map([["R6", image]]));
    if (layout.kind !== "layout") throw new Error(layout.problems.map((p) => p.says).join(" "));
    const [even, odd] = layout.devices.map((d) => d.bytes);
    if (!even || !odd) throw new Error("two devices");
    for (let at = 0; at < image.length; at += 4) {
      expect([...even.subarray(at / 2, at / 2 + 2), ...odd.subarray(at / 2, at / 2 + 2)]).toEqual([...image.subarray(at, at + 4)]);
      if (at > 4000) break;
    }
    expect(sameBytes(joinLanes(even, odd, 2), image)).toBe(true);
  });
});
