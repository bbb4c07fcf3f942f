// A club small enough to see whole: one board with two revisions, three firmware versions, three cards. Tests add what they ask about.

import { type Catalogue, gather } from "../../../src/catalogue/index.js";
import { type Answer, plan } from "../../../src/planning/index.js";
import type { Board, Build, Bus, Card, Conflict, Firmware, Kind, Loaded, Part } from "../../../src/records/index.js";
import { type Loose, tidy } from "../../support/loose.js";
import { spellOutBoard, spellOutCard } from "../../support/spell-out.js";

export const bus: Bus = {
  id: "bus",
  name: "Bus",
  memory_address_bits: 20,
  io_address_bits: 12,
  edges: [{ id: "edge", name: "edge", fits: ["edge"] }],
  interrupts: [{ id: "I1", trigger: "edge", share: "never" }],
  rails: [{ id: "+5", volts: 5 }],
};

export const board: Board = {
  id: "board",
  name: "Board",
  maker: "m",
  model: "b",
  bus: "bus",
  revisions: [
    { id: "C", tell: "t" },
    { id: "D1", tell: "t" },
  ],
  clock_MHz: 8,
  slots: [1, 2, 3, 4].map((n) => ({ id: `S${n}`, edge: "edge", position: n })),
  fixed: [{ name: "nothing" }],
  rails: [{ rail: "+5", limit_A: 10 }],
  firmware: ["line"],
  firmware_sockets: [{ id: "U1", pins: 28, data_width: 8, window: { base: 0xf0000, size: "64K" }, wired_for: "27C512", slowest_ns: 200 }],
};

export const firmware: Firmware = {
  id: "line",
  name: "Line",
  maker: "m",
  boards: [{ board: "board" }],
  versions: ["V1", "V2", "V3"].map((id) => ({ id, image: { size: "64K", crc32: "unknown" } })),
};

export function card(id: string, more: Partial<Loose<Card>> = {}): Card {
  return tidy<Card>({
    id,
    name: `Card ${id.toUpperCase()}`,
    maker: "m",
    model: id,
    does: ["tool"],
    bus: "bus",
    edge: "edge",
    room: { length_mm: 100, height_mm: 100 },
    power: [{ rail: "+5", worst_A: 1 }],
    settings: [{ id: "J1", name: "n", by: "jumper", positions: [{ id: "x" }, { id: "y" }] }],
    ...more,
  });
}

type Cards = readonly { readonly card: string; readonly slot: string; readonly as?: string; readonly revision?: string }[];

/** A tested build on revision D1 with V2, every J1 at x. */
export function tested(id: string, cards: Cards, more: Partial<Build> = {}): Build {
  return {
    id,
    name: id,
    board: "board",
    revision: "D1",
    firmware: "line",
    cards: cards.map((c) => ({ settings: { J1: "x" }, ...c })),
    modes: [{ id: "always", firmware: "V2" }],
    result: { by: "Ada", date: "2019-05", outcome: "worked" },
    ...more,
  };
}

export interface Records {
  readonly bus?: Partial<Bus>;
  readonly board?: Partial<Board>;
  readonly firmware?: Partial<Firmware>;
  /** Families beside the first. */
  readonly otherFirmware?: readonly Firmware[];
  readonly cards?: readonly Card[];
  readonly builds?: readonly Build[];
  readonly conflicts?: readonly Conflict[];
  readonly parts?: readonly Part[];
  /** Keep what the records of board and cards leave out; else it is written as none. */
  readonly asWritten?: true;
}

export function smallClub(records: Records = {}): Catalogue {
  const of = (kind: Kind, list: readonly { readonly id: string }[]) =>
    list.map((record) => ({ kind, record, file: "" }) as unknown as Loaded);
  const spelt = <T>(out: (record: T) => T, record: T) => (records.asWritten ? record : out(record));
  return gather([
    ...of("bus", [{ ...bus, ...records.bus }]),
    ...of("board", [spelt(spellOutBoard, { ...board, ...records.board })]),
    ...of("firmware", [{ ...firmware, ...records.firmware }]),
    ...of("firmware", records.otherFirmware ?? []),
    ...of(
      "card",
      (records.cards ?? [card("a"), card("b"), card("c")]).map((c) => spelt(spellOutCard, c)),
    ),
    ...of("build", records.builds ?? []),
    ...of("conflict", records.conflicts ?? []),
    ...of("part", records.parts ?? []),
  ]);
}

/** The answer to a build on D1 with V2, every J1 at x unless told otherwise. */
export function asked(catalogue: Catalogue, cards: Cards, more: Partial<Build> = {}): Answer {
  const { result: _, ...question } = tested("question", cards, more);
  const answer = plan(catalogue, question);
  if (answer.kind !== "answer") throw new Error(answer.faults[0]!.says);
  return answer;
}
