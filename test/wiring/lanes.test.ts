// A board with a socket for even and one for odd bytes: both devices follow the same lines.
import { describe, expect, it } from "vitest";
import { planWiring } from "../../src/wiring/index.js";
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
