// A tiny world to plan wirings in: one board, one firmware family, parts and cards in a line or two each.
import { type Catalogue, gather } from "../../../src/catalogue/index.js";
import type { Combination } from "../../../src/planning/index.js";
import type { Board, Cable, Card, Connector, Firmware, Loaded, MemoryDevice, Part, Resistor, Switch } from "../../../src/records/index.js";
import { spellOutBoard, spellOutCard } from "../../support/spell-out.js";

type Enable = NonNullable<Card["enable"]>;
type Socket = Board["firmware_sockets"][number];

/** Pin lists of the 27C010, 27C020 and 27C040, from memory of the JEDEC 32-pin layout; they differ in pins 30 and 31. */
const low32 = "VPP A16 A15 A12 A7 A6 A5 A4 A3 A2 A1 A0 D0 D1 D2 GND D3 D4 D5 D6 D7 /CE A10 /OE A11 A9 A8 A13 A14".split(" ");

export function memory(
  family: string,
  pins: readonly string[],
  kilobytes: number,
  width = 8,
  more: Partial<MemoryDevice> = {},
): MemoryDevice {
  return {
    id: family.toLowerCase(),
    name: family,
    type: "memory",
    family,
    technology: "uv-eprom",
    capacity: kilobytes * 1024,
    organisations: [{ words: (kilobytes * 1024 * 8) / width, width }],
    package: `DIP${pins.length}`,
    pins: pins.map((name, i) => ({ pin: i + 1, name })),
    grades_ns: [
      { marking: "-10", access_ns: 100 },
      { marking: "-15", access_ns: 150 },
      { marking: "-20", access_ns: 200 },
    ],
    ...more,
  };
}

export const m27c010 = memory("27C010", [...low32, "NC", "/PGM", "VCC"], 128);
export const m27c020 = memory("27C020", [...low32, "A17", "/PGM", "VCC"], 256);
/** Twice as large again: the ninth and tenth version need its fourth bank line. */
export const m27c080 = memory("27C080", ["A19", ...low32.slice(1), "A17", "A18", "VCC"], 1024);
export const m27c040 = memory("27C040", [...low32, "A17", "A18", "VCC"], 512);

/** A switch whose hub of every pole meets one throw a position. */
export function rotary(
  poles: number,
  ways: number,
  form: Switch["form"] = "rotary",
  transit: Switch["transit"] = "break-before-make",
): Switch {
  const positions = Array.from({ length: ways }, (_, i) => `${i + 1}`);
  const pole = Array.from({ length: poles }, (_, i) => i + 1);
  return {
    id: `${form}-${poles}x${ways}${transit === "make-before-break" ? "-shorting" : ""}`,
    name: `${form} ${poles} x ${ways}`,
    type: "switch",
    form,
    poles,
    positions,
    terminals: pole.flatMap((p) => [`${p}C`, ...positions.map((w) => `${p}.${w}`)]),
    closes: Object.fromEntries(positions.map((w) => [w, pole.map((p): [string, string] => [`${p}C`, `${p}.${w}`])])),
    transit,
    hole_mm: 9.5,
    rating_A: 0.15,
  };
}

export function switchOf(id: string, form: Switch["form"], poles: number, closes: Record<string, [string, string][]>): Switch {
  const terminals = [...new Set(Object.values(closes).flat(2))];
  return {
    id,
    name: id,
    type: "switch",
    form,
    poles,
    positions: Object.keys(closes),
    terminals,
    closes,
    transit: "break-before-make",
    hole_mm: 6.35,
  };
}

export const dpst = switchOf("dpst", "toggle", 2, {
  open: [],
  closed: [
    ["1", "2"],
    ["3", "4"],
  ],
});
export const spst = switchOf("spst", "toggle", 1, { open: [], closed: [["1", "2"]] });
export const centreOff = (poles: number) => {
  const pole = Array.from({ length: poles }, (_, i) => i + 1);
  return switchOf(`centre-off-${poles}`, "toggle", poles, {
    "1": pole.map((p) => [`${p}C`, `${p}A`]),
    "0": [],
    "2": pole.map((p) => [`${p}C`, `${p}B`]),
  });
};
export function coded(positions: number): Switch {
  const closes = Object.fromEntries(
    Array.from({ length: positions }, (_, i) => [
      i.toString(16).toUpperCase(),
      [1, 2, 4, 8].filter((b) => i & b).map((b): [string, string] => ["C", `${b}`]),
    ]),
  );
  return { ...switchOf(`coded-${positions}`, "coded-rotary", 1, closes), terminals: ["C", "1", "2", "4", "8"] };
}

export function header(contacts: number): readonly [Connector, Connector] {
  const face = Array.from({ length: contacts }, (_, i) => ({
    contact: `${i + 1}`,
    x_mm: 2.54 * Math.floor(i / 2),
    y_mm: i % 2 ? 1.27 : -1.27,
  }));
  const middle = face.reduce((sum, c) => sum + c.x_mm, 0) / contacts;
  const centred = face.map((c) => ({ ...c, x_mm: c.x_mm - middle }));
  const make = (half: "plug" | "socket", mates: string, sign: number): Connector => ({
    id: `header-${contacts}-${half}`,
    name: `Header ${contacts} ${half}`,
    type: "connector",
    family: "Header 2.54 mm",
    contacts,
    half,
    mates,
    face: centred.map((c) => ({ ...c, x_mm: sign * c.x_mm })),
    panel: false,
    rating_A: 1,
  });
  return [make("plug", `header-${contacts}-socket`, 1), make("socket", `header-${contacts}-plug`, -1)];
}

export const cable = (conductors: number): Cable => ({
  id: `cable-${conductors}`,
  name: `Cable ${conductors}`,
  type: "cable",
  conductors,
  awg: 26,
  stranded: true,
});
export const resistor: Resistor = { id: "resistor-10k", name: "Resistor 10k", type: "resistor", ohms: 10_000 };

export const pair = (closedEnables: boolean): Enable => ({
  by: "contacts",
  sense: closedEnables ? "closed-enables" : "open-enables",
  points: [
    { id: "J1-1", role: "a", current_mA: 1 },
    { id: "J1-2", role: "b" },
  ],
  releases: ["io"],
});
export const grounding = (closedEnables: boolean): Enable => ({
  by: "contacts",
  sense: closedEnables ? "closed-enables" : "open-enables",
  points: [
    { id: "J1-1", role: "a", current_mA: 1 },
    { id: "J1-2", role: "ground" },
  ],
  releases: ["io"],
});
export const changeOver: Enable = {
  by: "contacts",
  sense: "change-over",
  points: [
    { id: "J1-C", role: "common", current_mA: 1 },
    { id: "J1-ON", role: "on" },
    { id: "J1-OFF", role: "off" },
  ],
  releases: ["io"],
};

export const socket32: Socket = {
  id: "IC7",
  pins: 32,
  data_width: 8,
  window: { base: 0xf0000, size: "64K" },
  wired_for: "27C010",
  lane: "whole",
  upper_pins: [
    { pin: 1, carries: "supply" },
    { pin: 2, carries: "open" },
    { pin: 30, carries: "open" },
    { pin: 31, carries: "high" },
  ],
  slowest_ns: 150,
};

export interface WorldInput {
  readonly parts: readonly Part[];
  readonly cards?: Readonly<Record<string, Enable | undefined>> | undefined;
  /** Version: size in bytes. */
  readonly versions?: Readonly<Record<string, number | "unknown">>;
  readonly sockets?: readonly Socket[];
}

export function world({ parts, cards = {}, versions = {}, sockets = [socket32] }: WorldInput): Catalogue {
  const board: Board = {
    id: "skiff",
    name: "Skiff",
    maker: "Vellgate Electronics",
    model: "Skiff",
    bus: "skb",
    revisions: [{ id: "B", tell: "etched" }],
    clock_MHz: 8,
    slots: [{ id: "S1", edge: "short", position: 1 }],
    fixed: [{ name: "timer" }],
    rails: [{ rail: "+5", limit_A: 5 }],
    firmware: ["monitor"],
    firmware_sockets: [...sockets],
  };
  const firmware: Firmware = {
    id: "monitor",
    name: "Monitor",
    maker: "Vellgate Electronics",
    boards: [{ board: "skiff" }],
    versions: Object.entries(versions).map(([id, size]) => ({ id, image: { size, crc32: "unknown" } })),
  };
  const loaded: Loaded[] = [
    { kind: "board", record: spellOutBoard(board), file: "boards/skiff.yaml" },
    { kind: "firmware", record: firmware, file: "firmware/monitor.yaml" },
    ...parts.map((record): Loaded => ({ kind: "part", record, file: `parts/${record.id}.yaml` })),
    ...Object.entries(cards).map(
      ([id, enable]): Loaded => ({
        kind: "card",
        record: spellOutCard({
          id,
          name: id,
          maker: "m",
          model: id,
          does: ["tool"],
          bus: "skb",
          edge: "short",
          room: { length_mm: 100, height_mm: 100 },
          power: [],
          enable,
        } as Card),
        file: `cards/${id}.yaml`,
      }),
    ),
  ];
  return gather(loaded);
}

export function combination(
  modes: readonly { readonly firmware: string; readonly on?: readonly string[] }[],
  cards: readonly string[],
): Combination {
  return {
    verdict: "workable",
    evidence: "inferred",
    board: "skiff",
    revision: "B",
    firmwareFamily: "monitor",
    modes: modes.map((m, i) => ({ id: `m${i + 1}`, name: `mode ${i + 1}`, firmware: m.firmware, enabled: m.on ?? [] })),
    cards: cards.map((card) => ({ as: card, card, revision: "1", slot: "S1", settings: {}, slots: ["S1"], freedom: "only S1" })),
    conditions: [],
    unknowns: [],
    alsoNeeded: [],
    rests: [],
    nearMatches: [],
    changes: [],
    headroom: [],
    spareSlots: 0,
    switched: true,
  };
}
