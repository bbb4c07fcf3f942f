// Every drawing on made-up data that is awkward on purpose: long names, unknown lengths, overlaps, many nets.
import {
  addressMap,
  bankMap,
  cardFace,
  connectorFace,
  devicePins,
  evidenceTime,
  layOutPanel,
  panelTemplate,
  railBars,
  type SlotPlan,
  type SwitchWiringInput,
  slotPlan,
  switchWiring,
} from "../../src/drawing/index.js";
import type { Face, WiringPlan } from "../../src/wiring/index.js";

export const slots: SlotPlan = {
  board: "Test board B",
  slots: [
    { id: "S1", edge: "short", position: 1, longest_mm: 180, opening: "R1" },
    { id: "S2", edge: "short", position: 2, longest_mm: 180, opening: "R2" },
    { id: "S3", edge: "long", position: 3, longest_mm: 320, opening: "R3" },
    { id: "S4", edge: "long", position: 4, longest_mm: 320, opening: "R3" },
    { id: "S5", edge: "long", position: 5, longest_mm: "unknown" },
  ],
  cards: [
    {
      name: "A fixed-disk controller with a long name of many words, revision C",
      slot: "S3",
      takes: 1,
      length_mm: 290,
      usesOpening: true,
      freedom: "any of 3 long slots",
    },
    { name: "Tape interface", slot: "S1", takes: 1, length_mm: 120, usesOpening: false, off: true },
    { name: "Bus tracer", slot: "S4", takes: 2, length_mm: "unknown", usesOpening: false },
  ],
};

/** Terminals as on a rotary switch; poles and positions as asked for, nets in turn. */
export function switchSample(poles: number, positions: number, nets: number): SwitchWiringInput {
  const ids = Array.from({ length: nets }, (_, i) => (i % 3 === 2 ? `a-card-of-some-length:J${i}-1` : `A${14 + i}`));
  const names = Array.from({ length: positions }, (_, k) => String(k + 1));
  const sections = Array.from({ length: poles }, (_, p) => ({
    pole: p + 1,
    hub: `${p + 1}C`,
    hubNet: p % 4 === 3 ? ids[p % nets]! : "GND",
    throws: names.map((position, k) => ({
      terminal: `${p + 1}.${k + 1}`,
      ...((p + k) % 3 === 0 ? {} : { net: ids[(p * 2 + k) % nets]! }),
      positions: [position],
    })),
  }));
  const wires = ids.flatMap((net, i): WiringPlan["wires"][number][] => [
    {
      number: i + 1,
      net,
      label: net,
      from: { at: "socket", socket: "IC7", pin: i + 1 },
      to: { at: "switch", terminal: "1.1" },
      fromText: `IC7 socket pin ${i + 1}, beside the crystal`,
      toText: "switch 1.1",
      run: "board",
      current_mA: 0.5,
    },
  ]);
  return {
    switch: {
      part: "x",
      name: `Rotary switch, ${poles} poles ${positions} positions`,
      form: "rotary",
      poles,
      polesUsed: poles,
      positions: names,
      transit: "break-before-make",
      atHand: false,
      sections,
      spareTerminals: [],
    },
    contacts: [{ position: "1", mode: "m", joined: [], levels: [], version: "", cards: [] }],
    wires,
    pullUps: ids
      .filter((id) => id.startsWith("A"))
      .map((net, i) => ({
        id: `R${i + 1}`,
        net,
        label: net,
        ohms: i % 2 ? 4700 : 10000,
        from: { at: "resistor", resistor: `R${i + 1}` },
        to: { at: "supply", says: "+5 V" },
        current_mA: 0.5,
        openVolts: 5,
        says: "",
      })),
    nets: [
      { id: "GND", label: "GND", kind: "ground" },
      ...ids.map((id) => ({ id, label: id.replace(":", " "), kind: id.startsWith("A") ? ("bank-line" as const) : ("enable" as const) })),
    ],
  };
}

/** A coded switch: several contacts close at once, ground lies on a figure, and nothing is wired to the common. */
export function codedSample(): SwitchWiringInput {
  const sample = switchSample(1, 10, 3);
  const throws = [1, 2, 4, 8].map((figure, i) => ({
    terminal: `${figure}`,
    ...([{ net: "A14" }, { net: "GND" }, {}, { net: "A15" }][i] ?? {}),
    positions: Array.from({ length: 10 }, (_, p) => p)
      .filter((p) => (p & figure) !== 0)
      .map((p) => `${p}`),
  }));
  const positions = Array.from({ length: 10 }, (_, p) => `${p}`);
  return {
    ...sample,
    switch: { ...sample.switch, name: "Coded rotary switch", form: "coded-rotary", positions, sections: [{ pole: 1, hub: "C", throws }] },
    contacts: [{ position: "7", mode: "m", joined: [], levels: [], version: "", cards: [] }],
  };
}

export function face(contacts: readonly { contact: string; x_mm: number; y_mm: number }[], used: number): Face {
  return {
    half: "panel",
    shape: "socket",
    view: "solder",
    seen: "solder side: the view while soldering",
    says: "socket in the panel, solder side: the view while soldering",
    contacts: contacts.map((c, i) => (i < used ? { ...c, net: `n${i}`, label: i === 1 ? "a-card-with-a-long-name J12-3" : `A${i}` } : c)),
  };
}

/** Two rows as on a 9-way shell; a circle with one in the middle as on a DIN connector; two rows of a header. */
const shell = Array.from({ length: 9 }, (_, i) =>
  i < 5
    ? { contact: String(i + 1), x_mm: 2.77 * (2 - i), y_mm: 1.42 }
    : { contact: String(i + 1), x_mm: 2.77 * (1.5 - (i - 5)), y_mm: -1.42 },
);
const circle = Array.from({ length: 8 }, (_, i) =>
  i === 7
    ? { contact: "8", x_mm: 0, y_mm: 0 }
    : {
        contact: String(i + 1),
        x_mm: 3.5 * Math.cos((Math.PI * (i * 45 - 45)) / 180),
        y_mm: 3.5 * Math.sin((Math.PI * (i * 45 - 45)) / 180),
      },
);
const header = Array.from({ length: 16 }, (_, i) => ({
  contact: String(i + 1),
  x_mm: 2.54 * (Math.floor(i / 2) - 3.5),
  y_mm: i % 2 ? 1.27 : -1.27,
}));

const device: WiringPlan["device"] = {
  part: "27c040",
  name: "27C040 EPROM",
  family: "27C040",
  capacity: 524288,
  words: 524288,
  width: 8,
  package: "DIP32",
  sockets: [{ socket: "IC7", lane: "whole" }],
  grade: "unknown",
  slowest_ns: "unknown",
  says: "",
  atHand: true,
};
const banks: WiringPlan["banks"] = [
  { index: 0, offset: 0, size: 131072, version: "R4A", repeats: 4, use: "mode", modes: ["trace"] },
  { index: 1, offset: 131072, size: 131072, version: "R5.1", repeats: 1, use: "mode", modes: ["tape"] },
  { index: 2, offset: 262144, size: 131072, version: "R5.1", repeats: 1, use: "safe", modes: [] },
  { index: 3, offset: 393216, size: 131072, version: "R6", repeats: 1, use: "copy", modes: ["daily"] },
];
const modes: WiringPlan["modes"] = ["trace", "tape", "daily"].map((id, i) => ({
  id,
  name: `A mode with a name of some length, ${id}`,
  firmware: "R6",
  enabled: [],
  safest: i === 2,
  positions: [String(i + 1)],
}));
const bankLine = (line: string, bit: number, pin: number): WiringPlan["lines"][number] => ({
  line,
  bit,
  pin,
  carries: "driven",
  role: "switched",
  says: "",
});

export const panel = layOutPanel([
  {
    id: "SW1",
    name: "Rotary",
    hole: { kind: "round", diameter: 9.5 },
    body: { width: 30, height: 30 },
    positions: ["1 trace", "2 daily", "3 tape"],
    form: "rotary",
  },
  { id: "J1", name: "9-way", hole: { kind: "cut-out", width: 20.5, height: 11.4 }, screws: { apart: 24.99, diameter: 3.05 } },
  { id: "J2", name: "round", hole: { kind: "round", diameter: 15 }, screws: { apart: 22.2, diameter: 3.2 } },
  { id: "SW2", name: "Toggle", hole: { kind: "round", diameter: 6.35 }, positions: ["on", "off"], form: "lever" },
]);

/** Name and drawing, at a width for a desk and for a phone. */
export function everyDrawing(width: number): readonly (readonly [string, string])[] {
  const p = (name: string) => `${name}-${width}`;
  return [
    ["slots", slotPlan(slots, p("slots"), width)],
    [
      "memory",
      addressMap(
        {
          title: "Memory addresses",
          space: "memory",
          from: 0,
          to: 0x100000,
          windows: [
            { base: 0, size: 0xa0000, owner: "Main memory" },
            { base: 0xc8000, size: 0x4000, owner: "Fixed-disk controller", what: "option ROM", change: "new" },
            { base: 0xca000, size: 0x4000, owner: "Bus tracer", what: "registers" },
            { base: 0xcb000, size: 0x800, owner: "A third one", what: "registers", change: "gone" },
            { base: 0xd0000, size: 0x2000, owner: "Tape interface with a long name", off: true },
            { base: 0xf0000, size: 0x10000, owner: "Firmware" },
          ],
        },
        p("memory"),
        width,
      ),
    ],
    [
      "rails",
      railBars(
        [
          { rail: "+5", used_A: 3.2, limit_A: 6 },
          { rail: "+12", used_A: 1.7, limit_A: 1.5 },
          {
            rail: "-12",
            used_A: "unknown",
            atLeast_A: 0.12,
            limit_A: 0.5,
            unknownFrom: ["Bus tracer", "Tape interface", "the board itself"],
          },
          { rail: "-5", used_A: "unknown", limit_A: "unknown" },
          { rail: "+24", used_A: 0.1, limit_A: "unknown" },
          { rail: "-24", used_A: 0, limit_A: 0 },
        ],
        p("rails"),
        width,
      ),
    ],
    ["switch 4x3", switchWiring(switchSample(4, 3, 5), p("sw1"), width)],
    ["switch 1x12", switchWiring(switchSample(1, 12, 2), p("sw2"), width)],
    ["switch 6x2", switchWiring(switchSample(6, 2, 8), p("sw3"), width)],
    ["switch coded", switchWiring(codedSample(), p("sw4"), width)],
    ["shell", connectorFace({ id: "J1", name: "9-way shell", key: "Wide row on top." }, face(shell, 6), p("f1"), width)],
    ["circle", connectorFace({ id: "J2", name: "8-way circle" }, face(circle, 8), p("f2"), width)],
    ["header", connectorFace({ id: "J3", name: "16-way header" }, face(header, 3), p("f3"), width)],
    ["part, shell", connectorFace({ name: "9-way shell" }, face(shell, 0), p("f4"), width)],
    ["part, circle", connectorFace({ name: "8-way circle", key: "Gap below." }, face(circle, 0), p("f5"), width)],
    ["banks", bankMap({ device: device!, banks, modes, lines: [bankLine("A17", 0, 30), bankLine("A18", 1, 31)] }, p("banks"), width)],
    [
      "pins",
      devicePins(
        {
          family: "27C040",
          package: "DIP32",
          pins: Array.from({ length: 32 }, (_, i) => ({ pin: i + 1, name: i === 0 ? "VPP" : i === 15 ? "GND" : `A${i}` })),
          lines: [bankLine("A17", 0, 30), bankLine("A18", 1, 31)],
          work: [
            { pin: 30, does: "lift-and-switch", to: "A17", signal: "A17" },
            { pin: 31, does: "wire-in-place", to: "A18", signal: "A18" },
            { pin: 1, does: "lift-and-tie", to: "+5 V", signal: "VPP" },
          ],
        },
        p("pins"),
        width,
      ),
    ],
    [
      "card",
      cardFace(
        {
          name: "A fixed-disk controller",
          length: 206,
          height: 107,
          edge: "long edge, 16 data bits",
          plate: true,
          blocks: [
            { id: "SW1", positions: ["C8000", "CC000", "E0000"].map((id, i) => ({ id, factory: i === 0 })) },
            { id: "J1", positions: ["320", "170"].map((id, i) => ({ id, factory: i === 1 })) },
            { id: "W2", positions: ["closed", "open"].map((id, i) => ({ id, factory: i === 0 })) },
            ...Array.from({ length: 5 }, (_, n) => ({
              id: `J${n + 2}`,
              positions: ["3", "5", "10", "11", "none"].map((id, i) => ({ id, factory: i === n })),
            })),
          ],
        },
        p("card"),
        width,
      ),
    ],
    ["card, not measured", cardFace({ name: "A card", edge: "short", plate: false, blocks: [] }, p("card0"), width)],
    [
      "evidence",
      evidenceTime(
        [
          { date: "1991-04", outcome: "worked", label: "Test board B with disk and tracer, R5, and a label that is too long for one line" },
          { date: "1991-05", outcome: "worked", label: "Test board C" },
          { date: "1991-05-20", outcome: "worked", label: "Test board C again" },
          { date: "1994", outcome: "failed", label: "Tracer does not answer" },
          { date: "2019-11-02", outcome: "partly", label: "Tape alone" },
        ],
        p("ev"),
        width,
      ),
    ],
    ["evidence, none", evidenceTime([], p("ev0"), width)],
    ["panel", panel.kind === "panel" ? panelTemplate(panel, p("panel")) : ""],
  ];
}
