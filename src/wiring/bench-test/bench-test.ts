// The bench test: steps in the order that hurts nobody and nothing. Power off and continuity first, then power without device and
// cards, then the device, then the cards, with what must be seen at every position.
import type { Called } from "../../switching/index.js";
import type { Loom } from "../harness/loom.js";
import type { BenchStep, ContactRow, PinWork, SwitchPlan } from "../types.js";

export interface BenchInput {
  readonly loom: Loom;
  readonly switchPlan: SwitchPlan;
  readonly contacts: readonly ContactRow[];
  readonly pinWork: readonly PinWork[];
  /** What the switched cards are called. */
  readonly cards: readonly string[];
  readonly called: Called;
  readonly device: string | undefined;
  /** It has a window that light gets in at. */
  readonly windowed: boolean;
  readonly stop: boolean;
  readonly supply_V: number;
}

type Draft = Omit<BenchStep, "number">;

export function benchTest(input: BenchInput): BenchStep[] {
  const steps: Draft[] = [
    ...powerOff(input),
    ...continuity(input),
    ...noCards(input),
    ...withDevice(input),
    ...withCards(input),
    soak(input),
  ];
  return steps.map((step, i) => ({ number: i + 1, ...step }));
}

function off(stage: BenchStep["stage"], does: string, expect: BenchStep["expect"], cautions: readonly string[] = []): Draft {
  return { stage, power: "off", does, expect, cautions };
}

function powerOff({ cards, contacts, device, pinWork, switchPlan, stop }: BenchInput): Draft[] {
  const out = [...(device ? [device] : []), ...cards].join(", ");
  const steps = [
    off(
      "power-off",
      "Pull the mains plug. Look at the board for leaked cells, cracked filter capacitors and loose wires.",
      [{ see: "Nothing leaking, nothing loose, nothing bare." }],
      ["mains-inside", "crt", "battery", "x-capacitor"],
    ),
    off(
      "power-off",
      `With wrist strap and mat, take out ${out}.`,
      [{ see: "Socket empty; slots of the switched cards empty." }],
      ["esd", "power-off-to-switch"],
    ),
  ];
  if (pinWork.length > 0) {
    steps.push(
      off(
        "power-off",
        "Compare the work on the device's pins with the plan, pin by pin.",
        pinWork.map((w) => ({ see: w.says })),
        ["esd", "solder"],
      ),
    );
  }
  if (stop && contacts.length < switchPlan.positions.length) {
    steps.push(off("power-off", "Turn the knob from end to end.", [{ see: "It stops at the first and at the last labelled position." }]));
  }
  return steps;
}

function continuity({ loom, contacts, switchPlan }: BenchInput): Draft[] {
  const wires = loom.wires.map((w) => ({ see: `Wire ${w.number} (${w.label}): ${w.fromText} to ${w.toText}, below 1 ohm.` }));
  const rows = contacts.map((row) => ({
    position: row.position,
    see: row.joined.length === 0 ? "no wired contact is made" : `${row.joined.map(([a, b]) => `${a} to ${b}`).join(", ")} made, no other`,
  }));
  return [
    off("continuity", "With a meter on continuity, go along every wire from end to end.", wires, ["power-off-to-switch"]),
    off("continuity", `At the switch (${switchPlan.name}), measure each hub against its terminals at every position.`, rows),
    off(
      "continuity",
      "Measure from +5 V of the socket to ground, at every position.",
      contacts.map((row) => ({ position: row.position, see: "no short" })),
    ),
  ];
}

function noCards({ contacts, supply_V, device }: BenchInput): Draft[] {
  if (!device) {
    return [
      {
        stage: "no-cards",
        power: "on",
        does: "Without the switched cards, start at every position. Power off before each turn of the switch.",
        expect: contacts.map((row) => ({ position: row.position, see: `${row.version} shown` })),
        cautions: ["polarity-first", "tantalum", "x-capacitor", "power-off-to-switch"],
      },
    ];
  }
  const levels = contacts.map((row) => ({
    position: row.position,
    see:
      row.levels.length === 0
        ? "nothing to measure"
        : row.levels.map((l) => `${l.line} ${l.level === "low" ? "below 0.4 V" : `above ${(supply_V * 0.9).toFixed(1)} V`}`).join(", "),
  }));
  return [
    {
      stage: "no-cards",
      power: "on",
      does: "Without the device and without the switched cards, power on; measure +5 V at the socket, then each bank line at its wire. Power off between positions.",
      expect: [
        { see: `${(supply_V * 0.95).toFixed(2)} to ${(supply_V * 1.05).toFixed(2)} V between supply and ground of the socket` },
        ...levels,
      ],
      cautions: ["polarity-first", "tantalum", "x-capacitor", "power-off-to-switch"],
    },
  ];
}

function withDevice({ contacts, device, cards, windowed }: BenchInput): Draft[] {
  if (!device) return [];
  return [
    off(
      "device",
      `Fit ${device}, notch as marked${windowed ? ", window covered" : ""}.`,
      [{ see: "No pin bent; lifted pins touch nothing." }],
      ["esd", "vpp", ...(windowed ? ["opaque-label"] : [])],
    ),
    {
      stage: "device",
      power: "on",
      does: `${cards.length > 0 ? "Without the switched cards, s" : "S"}tart at every position. Power off before each turn of the switch.`,
      expect: contacts.map((row) => ({ position: row.position, see: `${row.version} shown` })),
      cautions: ["power-off-to-switch"],
    },
  ];
}

function withCards({ contacts, cards, called }: BenchInput): Draft[] {
  if (cards.length === 0) return [];
  return [
    off(
      "cards",
      `Fit ${cards.join(", ")} in the slots and with the settings of the plan; connect the enable wires.`,
      [{ see: "Every enable wire on its point." }],
      ["esd", "power-off-to-switch"],
    ),
    {
      stage: "cards",
      power: "on",
      does: "Start at every position. Power off before each turn of the switch.",
      expect: contacts.map((row) => ({ position: row.position, see: rowText(row, called) })),
      cautions: ["power-off-to-switch", "tantalum"],
    },
  ];
}

function soak({ contacts, called }: BenchInput): Draft {
  return {
    stage: "soak",
    power: "on",
    does: "Run each mode for at least an hour with the case closed, then write down date, revision, what worked and what did not.",
    expect: contacts.map((row) => ({ position: row.position, see: `${row.mode}: ${rowText(row, called)}, unchanged after the hour` })),
    cautions: ["power-off-to-switch"],
  };
}

function rowText(row: ContactRow, called: Called): string {
  const on = row.cards.filter((c) => c.state === "on").map((c) => called(c.card));
  const silent = row.cards.filter((c) => c.state === "off").map((c) => called(c.card));
  const parts = [`${row.version} shown`];
  if (on.length > 0) parts.push(`${on.join(", ")} answer${on.length === 1 ? "s" : ""}`);
  if (silent.length > 0) parts.push(`${silent.join(", ")} silent`);
  return parts.join("; ");
}
