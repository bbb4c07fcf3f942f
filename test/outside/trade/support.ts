// A plain machine to hold published figures against: one bus, one board without resources of its own, cards that say only what is asked.
import { type Catalogue, gather } from "../../../src/catalogue/index.js";
import { type Answer, plan } from "../../../src/planning/index.js";
import type { Board, Build, Bus, Card, Firmware } from "../../../src/records/index.js";
import { spellOutBoard, spellOutCard } from "../../support/spell-out.js";
import { isa } from "./isa/catalogue.js";

export function plainBoard(more: Partial<Board> = {}): Board {
  return {
    id: "board",
    name: "Plain board",
    maker: "none",
    model: "plain",
    bus: isa.id,
    revisions: [{ id: "1", tell: "There is one." }],
    clock_MHz: 8,
    slots: ["A", "B", "C", "D", "E", "F"].map((id, i) => ({ id, edge: "16-bit", position: i + 1 })),
    fixed: [{ name: "nothing" }],
    rails: [{ rail: "+5", limit_A: 20 }],
    firmware: ["plain"],
    firmware_sockets: [
      { id: "U1", pins: 28, data_width: 8, window: { base: 0xf0000, size: 0x10000 }, wired_for: "27C512", slowest_ns: 200 },
    ],
    ...more,
  };
}

export function plainCard(id: string, more: Partial<Card> = {}): Card {
  return {
    id,
    name: id,
    maker: "none",
    model: id,
    does: ["test"],
    bus: isa.id,
    edge: "16-bit",
    room: { length_mm: 150, height_mm: 100 },
    power: [{ rail: "+5", worst_A: 0 }],
    ...more,
  };
}

export function firmwareFor(boards: readonly string[]): Firmware {
  return {
    id: "plain",
    name: "Plain firmware",
    maker: "none",
    boards: boards.map((board) => ({ board })),
    versions: [{ id: "1", image: { size: 65536, crc32: "unknown" } }],
  };
}

export function clubOf(board: Board, cards: readonly Card[], bus: Bus = isa): Catalogue {
  return gather([
    { kind: "bus", record: bus, file: "buses/bus.yaml" },
    { kind: "board", record: spellOutBoard(board), file: "boards/board.yaml" },
    { kind: "firmware", record: firmwareFor([board.id]), file: "firmware/plain.yaml" },
    ...cards.map((record) => ({ kind: "card" as const, record: spellOutCard(record), file: `cards/${record.id}.yaml` })),
  ]);
}

export function answerOf(board: Board, cards: readonly Card[], more: Partial<Build> = {}, bus: Bus = isa): Answer {
  const build: Build = { id: "q", name: "q", board: board.id, cards: cards.map((c) => ({ card: c.id })), ...more };
  const answer = plan(clubOf(board, cards, bus), build);
  if (answer.kind !== "answer") throw new Error(answer.faults[0]!.says);
  return answer;
}
