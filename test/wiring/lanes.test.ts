// A board with a socket for even and one for odd bytes: both devices follow the same lines.
import { describe, expect, it } from "vitest";
import { layOut, sameBytes } from "../../src/images/index.js";
import { buildSheet } from "../../src/sheet/index.js";
import { planWiring } from "../../src/wiring/index.js";
import { stream } from "../images/world.js";
import { cable, combination, header, memory, resistor, rotary, socket32, world } from "./support/world.js";

// Pin lists of the 27C256 and 27C512 from memory of the JEDEC 28-pin layout; they differ in pin 1.
const rest = "A12 A7 A6 A5 A4 A3 A2 A1 A0 D0 D1 D2 GND D3 D4 D5 D6 D7 /CE A10 /OE A11 A9 A8 A13 A14 VCC".split(" ");
const m27c256 = memory("27C256", ["VPP", ...rest], 32);
const m27c512 = memory("27C512", ["A15", ...rest], 64);
const lane = (id: string, which: "even" | "odd", pin1: "supply" | "open") => ({
  ...socket32,
  id,
  pins: 28,
  wired_for: "27C256",
  lane: which,
  upper_pins: [{ pin: 1, carries: pin1 }],
});
const plan = (pins: readonly ["supply" | "open", "supply" | "open"]) => {
  const catalogue = world({
    parts: [m27c256, m27c512, rotary(1, 2, "toggle"), ...header(10), cable(4), resistor],
    versions: { R5: 0x10000, R6: 0x10000 },
    sockets: [lane("IC22", "odd", pins[1]), lane("IC21", "even", pins[0])],
  });
  const wiring = planWiring(catalogue, combination([{ firmware: "R5" }, { firmware: "R6" }], []), { safest: "m2" });
  if (wiring.kind !== "wiring") throw new Error(wiring.says);
  return wiring.plan;
};

describe("even and odd sockets of 32K each in a window of 64K", () => {
  const both = plan(["supply", "supply"]);
  it("take two devices, each with banks of half the window", () => {
    expect(both.device?.sockets).toEqual([
      { socket: "IC21", lane: "even" },
      { socket: "IC22", lane: "odd" },
    ]);
    expect(both.banks.map((b) => [b.offset, b.size, b.version])).toEqual([
      [0, 0x8000, "R5"],
      [0x8000, 0x8000, "R6"],
    ]);
    expect(both.parts.find((p) => p.part === "27c512")?.count).toBe(2);
  });
  it("have pin 1 lifted in both sockets, joined by a link, with one pull-up", () => {
    expect(both.pinWork.map((w) => [w.socket, w.pin, w.does])).toEqual([
      ["IC21", 1, "lift-and-switch"],
      ["IC22", 1, "lift-and-switch"],
    ]);
    expect(both.wires.filter((w) => w.run === "jumper").map((w) => [w.fromText, w.toText])).toEqual([
      ["IC21 device pin 1 (lifted)", "IC22 device pin 1 (lifted)"],
    ]);
    expect(both.pullUps).toHaveLength(1);
    expect(both.pullUps[0]!.openVolts).toBeCloseTo(4.8, 6);
  });
  it("do not start when the link is open or the devices are exchanged, and the table says so", () => {
    const text = both.faults.groups.flatMap((g) => g.faults.map((f) => `${f.kind}: ${g.says}`));
    expect(text).toContainEqual(expect.stringMatching(/^lanes-exchanged: .*does not start/));
    const link = both.wires.find((w) => w.run === "jumper")!.number;
    const open = both.faults.groups.find((g) => g.faults.some((f) => f.id === `wire-open:${link}`))!;
    expect(open.says).toContain("not certain which firmware");
  });
  it("are lifted only where the socket carries something", () => {
    const one = plan(["supply", "open"]);
    expect(one.pinWork.map((w) => [w.socket, w.does])).toEqual([
      ["IC21", "lift-and-switch"],
      ["IC22", "wire-in-place"],
    ]);
  });
});

// Pin lists of the 27C1024 and 27C4096 from memory of the JEDEC 40-pin layout; they differ in pins 38 and 39.
const low40 =
  "VPP /CE D15 D14 D13 D12 D11 D10 D9 D8 GND D7 D6 D5 D4 D3 D2 D1 D0 /OE A0 A1 A2 A3 A4 A5 A6 A7 A8 GND A9 A10 A11 A12 A13 A14 A15";
const m27c1024 = memory("27C1024", `${low40} NC /PGM VCC`.split(" "), 128, 16);
const m27c4096 = memory("27C4096", `${low40} A16 A17 VCC`.split(" "), 512, 16);

describe("even and odd sockets of 16 bits", () => {
  const { upper_pins: _, ...bare } = socket32;
  const socket = (id: string, which: "even" | "odd") => ({
    ...bare,
    id,
    pins: 40,
    data_width: 16,
    window: { base: 0xc0000, size: 0x40000 },
    wired_for: "27C1024",
    lane: which,
  });
  const catalogue = world({
    parts: [m27c1024, m27c4096, rotary(1, 2, "toggle"), ...header(10), cable(4), resistor],
    versions: { R5: 0x40000, R6: 0x40000 },
    sockets: [socket("IC1", "even"), socket("IC2", "odd")],
  });
  const modes = combination([{ firmware: "R5" }, { firmware: "R6" }], []);
  const wiring = planWiring(catalogue, modes);
  if (wiring.kind !== "wiring") throw new Error(wiring.says);
  it("hold words, and the sheet says so", () => {
    expect(buildSheet(catalogue, modes, wiring.plan, "Skiff").burn?.sockets).toEqual(["IC1: even words", "IC2: odd words"]);
  });
});

describe("the ground of the loom", () => {
  it("is taken where the socket has it, though the device has its own elsewhere", () => {
    const names = m27c512.pins.map((p) => (p.pin === 14 ? "/OE" : p.pin === 22 ? "GND" : p.name));
    const other = memory("27X512", names, 64);
    const catalogue = world({
      parts: [m27c256, other, rotary(1, 2, "toggle"), ...header(10), cable(4), resistor],
      versions: { R5: 0x8000, R6: 0x8000 },
      sockets: [{ ...lane("IC21", "even", "supply"), lane: "whole", window: { base: 0xf8000, size: "32K" } }],
    });
    const wiring = planWiring(catalogue, combination([{ firmware: "R5" }, { firmware: "R6" }], []));
    if (wiring.kind !== "wiring") throw new Error(wiring.says);
    expect(wiring.plan.wires.filter((w) => w.net === "GND")[0]?.from).toEqual({ at: "socket", socket: "IC21", pin: 14 });
  });
});

describe("sockets in a row, each with 32K of a window of 64K", () => {
  const row = (id: string, base: number) => ({
    ...lane(id, "even", "supply"),
    lane: "whole" as const,
    window: { base, size: "32K" },
  });
  const catalogue = world({
    parts: [m27c256, m27c512, rotary(1, 2, "toggle"), ...header(10), cable(4), resistor],
    versions: { R4: 0x8000, R6: 0x10000 },
    sockets: [row("IC2", 0xf8000), row("IC1", 0xf0000)],
  });
  const wiring = planWiring(catalogue, combination([{ firmware: "R4" }, { firmware: "R6" }], []), { safest: "m2" });
  if (wiring.kind !== "wiring") throw new Error(wiring.says);
  const { plan } = wiring;
  const seen = (id: string) => plan.faults.groups.find((g) => g.faults.some((f) => f.id === id))?.seen.map((o) => o.shows);

  it("take two devices switched together, each with its part of every image", () => {
    expect(plan.device?.sockets.map((s) => [s.socket, s.part?.place, s.part?.of])).toEqual([
      ["IC1", 1, 2],
      ["IC2", 2, 2],
    ]);
    expect(plan.banks.map((b) => [b.version, b.size, b.repeats])).toEqual([
      ["R4", 0x8000, 2],
      ["R6", 0x8000, 1],
    ]);
    expect(plan.pinWork.map((w) => [w.socket, w.pin, w.does])).toEqual([
      ["IC1", 1, "lift-and-switch"],
      ["IC2", 1, "lift-and-switch"],
    ]);
    const images = new Map([
      ["R4", stream(4, 0x8000)],
      ["R6", stream(6, 0x10000)],
    ]);
    const layout = layOut({ device: plan.device!, banks: plan.banks }, images);
    if (layout.kind !== "layout") throw new Error(layout.problems[0]?.says);
    for (const [i, { bytes }] of layout.devices.entries()) {
      expect(sameBytes(bytes.subarray(0, 0x8000), images.get("R4")!)).toBe(true);
      expect(sameBytes(bytes.subarray(0x8000), images.get("R6")!.subarray(i * 0x8000, (i + 1) * 0x8000))).toBe(true);
    }
  });

  it("exchanged change nothing of an image that each holds whole, and nobody can say what the other one does", () => {
    expect(seen("lanes-exchanged:IC1~IC2")).toEqual(["R4", "not certain which firmware"]);
    expect(seen("banks-reversed@IC2")).toEqual(["not certain which firmware", "not certain which firmware"]);
  });
});
