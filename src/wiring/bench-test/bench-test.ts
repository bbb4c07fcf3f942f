// The bench test: steps in the order that hurts nobody and nothing. Power off and continuity first, then power without device and
// cards, then the device, then the cards, with what must be seen at every position.
import { itemAt, type Switch } from "../../records/index.js";
import type { Called } from "../../switching/index.js";
import type { Harness } from "../harness/loom.js";
import type { BuiltModel } from "../simulate/build-model.js";
import { solvedAt } from "../simulate/model.js";
import { groundNode, together } from "../simulate/netlist.js";
import type { BenchStep, ContactRow, ContinuityRow, PinWork, SwitchPlan } from "../types.js";
import { continuityRows } from "./continuity.js";

export interface BenchInput {
  readonly loom: Harness;
  /** What a meter shows of the finished loom. */
  readonly built: BuiltModel;
  /** The contacts of the switch as its record has them. */
  readonly closes: Switch["closes"];
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

/** Terminals that a meter finds joined, in the order of the switch; those that are not named are apart from all others. */
function joinedAt({ built }: BenchInput, position: string): string {
  const { group } = solvedAt(built.model, built.good, built.model.positions.indexOf(position));
  const sets = new Map<number, string[]>();
  for (const [terminal, node] of built.terminal) sets.set(itemAt(group, node), [...(sets.get(itemAt(group, node)) ?? []), terminal]);
  const found = [...sets.values()].filter((set) => set.length > 1).map((set) => set.join(" with "));
  return found.length === 0 ? "no two terminals joined" : `${found.join("; ")}; no others`;
}

/** What the meter shows at the card's end of its enable wires. */
function enableAt({ built }: BenchInput, position: string): string {
  const solved = solvedAt(built.model, built.good, built.model.positions.indexOf(position));
  const word = (a: number, b: number) => (together(solved, a, b) ? "joined" : "apart");
  return built.model.cards
    .map(({ name, kind, nodes, points }) => {
      const [a, b, c] = nodes as [number, number, number];
      if (kind === "ground") return `${name} ${points[0]} and ground ${word(a, groundNode)}`;
      if (kind === "pair") return `${name} ${points.join(" and ")} ${word(a, b)}`;
      return `${name} ${points[0]} and ${points[1]} ${word(a, b)}, ${points[0]} and ${points[2]} ${word(a, c)}`;
    })
    .join("; ");
}

/** Neighbours at the plug that beep, and what beeps with ground; anything else that does is a bridge, or a bare place. */
function strayAt({ loom }: BenchInput, measured: readonly ContinuityRow[], position: string): string {
  const beeping = (kind: ContinuityRow["kind"]) => measured.filter((r) => r.kind === kind && r.position === position && r.must === "beep");
  const contacts = beeping("contacts").map((r) => `${r.from} with ${r.to}`);
  const grounded = beeping("ground").map((r) => r.from);
  const own = loom.paths.flatMap(({ net }) => (net.kind === "ground" ? [net.label] : []));
  const withGround = [...own, ...grounded];
  return [
    ...(measured.some((r) => r.kind === "contacts")
      ? [contacts.length === 0 ? "no neighbours joined" : `${contacts.join("; ")} joined`]
      : []),
    `with ground ${withGround.length === 0 ? "none" : withGround.join(", ")}; with +5 V none`,
  ].join("; ");
}

function continuity(input: BenchInput): Draft[] {
  const { loom, contacts, closes, switchPlan, cards } = input;
  const wires = loom.wires.map((w) => ({ see: `Wire ${w.number} (${w.label}): ${w.fromText} to ${w.toText}, below 1 ohm.` }));
  const measured = continuityRows(loom, input.built);
  const plugged = measured.some((r) => r.kind === "contacts");
  const bare = ({ position }: ContactRow) => (closes[position] ?? []).map(([a, b]) => `${a} to ${b}`).join(", ");
  const rows = (see: (row: ContactRow) => string) => contacts.map((row) => ({ position: row.position, see: see(row) }));
  return [
    off(
      "continuity",
      `Before a wire goes on it, measure the bare switch (${switchPlan.name}) at every position.`,
      rows((row) => (bare(row) === "" ? "no contact made" : `${bare(row)} made, no other`)),
    ),
    off("continuity", "With a meter on continuity, go along every wire from end to end.", wires, ["power-off-to-switch"]),
    off(
      "continuity",
      "With the loom on and plugged in, device and switched cards out, measure every two terminals of the switch at every position.",
      rows((row) => joinedAt(input, row.position)),
    ),
    ...(cards.length === 0
      ? []
      : [
          off(
            "continuity",
            "The same, at the ends of the enable wires that go to the cards.",
            rows((row) => enableAt(input, row.position)),
          ),
        ]),
    off(
      "continuity",
      `${plugged ? "Measure each contact of J1 against its neighbours, then each" : "Measure each"} wire of the loom against ground and against +5 V, at every position.`,
      rows((row) => strayAt(input, measured, row.position)),
    ),
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
