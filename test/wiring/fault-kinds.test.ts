// Faults that the table must hold, each against what it does by hand: knobs and stops, devices of a pair, images a bank too high, corners.
import { describe, expect, it } from "vitest";
import { type FaultTable, planWiring, type WiringPlan } from "../../src/wiring/index.js";
import { type Model, rawState, type Variant } from "../../src/wiring/simulate/model.js";
import {
  cable,
  coded,
  combination,
  header,
  m27c010,
  m27c020,
  m27c040,
  memory,
  resistor,
  rotary,
  socket32,
  world,
} from "./support/world.js";

const versions = { R2: 0x10000, R4: 0x10000, R5: 0x10000, R6: 0x10000 };

function planOf(modes: readonly string[], parts: Parameters<typeof world>[0]["parts"], more: Partial<Parameters<typeof world>[0]> = {}) {
  const catalogue = world({ parts: [m27c010, ...parts, ...header(10), cable(10), resistor], versions, ...more });
  const wiring = planWiring(
    catalogue,
    combination(
      modes.map((firmware) => ({ firmware })),
      [],
    ),
  );
  if (wiring.kind !== "wiring") throw new Error(wiring.says);
  return wiring.plan;
}

/** What is seen of a fault, position by position; the firmware of the plan where it is silent. */
function shown({ faults, contacts }: WiringPlan, id: string): string[] {
  const group = groupOf(faults, id);
  if (group) return group.seen.map((o) => o.shows);
  expect(faults.silent.map((f) => f.id)).toContain(id);
  return contacts.map((row) => row.version);
}

function groupOf({ groups }: FaultTable, id: string) {
  return groups.find((g) => g.faults.some((f) => f.id === id));
}

describe("a knob one position off", () => {
  it("of a rotary stops one short at one end, and never passes the stop", () => {
    const plan = planOf(["R4", "R5", "R6"], [m27c040, rotary(2, 6)]);
    expect(shown(plan, "knob-offset:+1")).toEqual(["R5", "R6", "the knob does not turn so far"]);
    expect(shown(plan, "knob-offset:-1")).toEqual(["the knob does not turn so far", "R4", "R5"]);
    expect(groupOf(plan.faults, "knob-offset:+1")!.says).toContain("the knob does not turn so far");
  });

  it("of a coded rotary goes round", () => {
    const plan = planOf(["R2", "R4", "R5", "R6", "R2", "R4", "R5", "R6", "R2", "R4"], [m27c040, coded(10)]);
    const order = plan.contacts.map((row) => row.version);
    expect(shown(plan, "knob-offset:+1")).toEqual([...order.slice(1), order[0]]);
  });
});

describe("images in the wrong bank", () => {
  it("are seen shifted by one, up and down", () => {
    const plan = planOf(["R2", "R4", "R5", "R6"], [m27c020, rotary(2, 4)]);
    const holds = (bank: number) => plan.banks[(bank + 4) % 4]!.version;
    const at = (by: number) => plan.contacts.map((row) => holds(row.bank! + by));
    // What lies one bank too high is read from the bank below it.
    expect(shown(plan, "banks-shifted:+1")).toEqual(at(-1));
    expect(shown(plan, "banks-shifted:-1")).toEqual(at(1));
  });

  it("of two are the same in whatever order they were exchanged, and told once", () => {
    const plan = planOf(["R5", "R6"], [rotary(1, 2, "toggle")]);
    const ids = [...plan.faults.groups.flatMap((g) => g.faults), ...plan.faults.silent].map((f) => f.id);
    expect(ids.filter((id) => id.startsWith("banks-"))).toEqual(["banks-reversed", "banks-exchanged:R6~R5"]);
  });
});

describe("one device of a pair", () => {
  const rest = "A12 A7 A6 A5 A4 A3 A2 A1 A0 D0 D1 D2 GND D3 D4 D5 D6 D7 /CE A10 /OE A11 A9 A8 A13 A14 VCC".split(" ");
  const m27c256 = memory("27C256", ["VPP", ...rest], 32);
  const m27c512 = memory("27C512", ["A15", ...rest], 64);
  const { upper_pins: _, ...bare } = socket32;
  const lane = (id: string, which: "even" | "odd") => ({
    ...bare,
    id,
    pins: 28,
    wired_for: "27C256",
    lane: which,
  });
  const plan = planOf(["R5", "R6"], [m27c256, m27c512, rotary(1, 2, "toggle")], { sockets: [lane("IC1", "even"), lane("IC2", "odd")] });

  it("with its banks reversed makes halves of two versions, which do not run", () => {
    for (const socket of ["IC1", "IC2"]) expect(shown(plan, `banks-reversed@${socket}`)).toEqual(["does not start", "does not start"]);
  });

  it("with what the other holds does not run either", () => {
    for (const socket of ["IC1", "IC2"]) expect(shown(plan, `lane-twice:${socket}`)).toEqual(["does not start", "does not start"]);
  });

  it("is never told of where one socket holds all", () => {
    const whole = planOf(["R5", "R6"], [rotary(1, 2, "toggle")]);
    const ids = [...whole.faults.groups.flatMap((g) => g.faults), ...whole.faults.silent].map((f) => f.id);
    expect(ids.filter((id) => id.includes("@") || id.startsWith("lane"))).toEqual([]);
  });
});

describe("a blob of solder at the connector", () => {
  it("joins contacts across the corner too", () => {
    const plan = planOf(["R4", "R5", "R6"], [m27c040, rotary(2, 6)]);
    const pairs = [...plan.faults.groups.flatMap((g) => g.faults), ...plan.faults.silent].flatMap(
      (f) => /^contacts-bridged:(.*)$/.exec(f.id)?.[1] ?? [],
    );
    // Two rows: 1 stands over 2, 3 over 4.
    expect(pairs).toEqual(expect.arrayContaining(["1~2", "1~3", "2~3"]));
    expect(pairs).not.toContain("1~5");
  });
});

describe("a card enabled by one contact to ground", () => {
  const model: Model = {
    nodes: ["ground", "supply", "point"],
    lines: [],
    lanes: 0,
    rows: 1,
    fixedBits: 0,
    cards: [{ card: "c", name: "c", kind: "ground", closedIs: "on", nodes: [2], points: ["J1-1"] }],
    versions: ["R6"],
    modes: [],
    positions: ["1"],
    modeAt: [0],
  };
  const state = (more: Partial<Variant>) =>
    rawState(model, { joins: [], pullUps: [], strong: [], closed: [[]], content: [], ...more }, []).cards[0];

  it("is on at ground, off where only a resistor or nothing holds it, and uncertain where anything drives it", () => {
    expect(state({ joins: [[0, 2]] })).toBe("on");
    expect(state({})).toBe("off");
    expect(state({ pullUps: [2] })).toBe("off");
    expect(state({ joins: [[1, 2]] })).toBe("undefined");
    expect(state({ strong: [{ node: 2, level: "low" }] })).toBe("on");
    for (const level of ["high", "driven"] as const) expect(state({ strong: [{ node: 2, level }] })).toBe("undefined");
  });
});

describe("a pin that is not lifted over another supply", () => {
  it("leaves nothing certain, and says that the device may be gone", () => {
    const upper_pins = (socket32.upper_pins ?? []).map((p) => (p.pin === 2 ? { pin: 2, carries: "rail" as const, line: "+12" } : p));
    const plan = planOf(["R5", "R6"], [rotary(1, 2, "toggle")], { sockets: [{ ...socket32, upper_pins }] });
    expect(new Set(shown(plan, "pin-not-lifted:IC7:2"))).not.toContain("R6");
    const fault = plan.faults.groups.flatMap((g) => g.faults).find((f) => f.id === "pin-not-lifted:IC7:2");
    expect(fault?.fix).toContain("another supply than +5 V");
  });
});

describe("wires of one pin and of resistors", () => {
  // Pin 31 of the socket is open, and /PGM must be high for reading.
  const upper_pins = (socket32.upper_pins ?? []).map((p) => (p.pin === 31 ? { pin: 31, carries: "open" as const } : p));
  const plan = planOf(["R5", "R6"], [rotary(1, 2, "toggle")], { sockets: [{ ...socket32, upper_pins }] });
  const named = (label: string) => plan.wires.filter((w) => w.label === label);

  it("are numbered on from those of the switch, and measured with them", () => {
    expect(plan.wires.map((w) => w.number)).toEqual(plan.wires.map((_, i) => i + 1));
    expect(named("IC7 /PGM").map((w) => [w.fromText, w.toText])).toEqual([["IC7 device pin 31 (lifted)", "IC7 socket pin 32"]]);
    expect(named("R1").map((w) => [w.from.at, w.to.at])).toEqual([
      ["device", "resistor"],
      ["resistor", "supply"],
    ]);
    const measured = plan.benchTest.flatMap((s) => s.expect.map((e) => /^Wire (\d+) /.exec(e.see)?.[1])).filter((n) => n !== undefined);
    expect(measured.map(Number)).toEqual(plan.wires.map((w) => w.number));
  });

  it("are in the table when they break: nobody can say what a device without a level at one pin gives", () => {
    const [pin] = named("IC7 /PGM");
    expect(shown(plan, `wire-open:${pin?.number}`)).toEqual(["not certain which firmware", "not certain which firmware"]);
    for (const { number } of named("R1")) expect(shown(plan, `wire-open:${number}`)).toEqual(shown(plan, "pull-up-missing:R1"));
  });
});
