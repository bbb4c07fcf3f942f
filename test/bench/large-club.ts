// A seeded club of any size, in the shapes of the records: boards with revisions, one long firmware line, cards with settings and needs,
// conflicts and tested builds in proportion to the cards. The stand-in for a catalogue that has grown for years.
import { type Catalogue, gather } from "../../src/catalogue/index.js";
import type { Board, Build, Bus, Card, Conflict, Firmware, Loaded } from "../../src/records/index.js";
import { Random, range } from "../support/solver/random.js";

export interface ClubSize {
  readonly boards: number;
  readonly revisions: number;
  readonly cards: number;
  readonly versions: number;
  /** Names as long as people give them, for what must be read; short ones otherwise. */
  readonly wordy?: boolean;
}

const birds = ["Gannet", "Turnstone", "Oystercatcher", "Kittiwake", "Black-tailed Godwit"];
const things = ["fixed-disk controller", "network card", "four-channel serial and parallel board", "memory board", "clock"];

const letters = ["A", "B", "C", "D", "E", "F"];

const bus: Bus = {
  id: "bus",
  name: "Bus",
  memory_address_bits: 20,
  io_address_bits: 12,
  edges: [
    { id: "short", name: "short", fits: ["short", "long"], interrupts: ["I1", "I2", "I3"] },
    { id: "long", name: "long", fits: ["long"] },
  ],
  interrupts: range(8).map((i) => ({ id: `I${i + 1}`, trigger: "edge", share: "never" })),
  rails: [
    { id: "+5", volts: 5 },
    { id: "+12", volts: 12 },
  ],
};

export function largeClub(size: ClubSize, seed = 1): Catalogue {
  const random = new Random(seed);
  const chance = (p: number) => random.next() < p;
  const versions = range(size.versions).map((i) => (size.wordy ? `R${3 + Math.floor(i / 3)}${["", ".1", "A"][i % 3]}` : `V${i + 1}`));
  const revisions = letters.slice(0, size.revisions);
  const boardIds = range(size.boards).map((i) => `board-${i + 1}`);
  const firmware: Firmware = {
    id: "line",
    name: "Line",
    maker: "m",
    boards: boardIds.map((board) => ({ board })),
    versions: versions.map((id, i) => ({
      id,
      image: { size: "64K", crc32: "unknown" },
      ...(i % 20 === 0 ? { adds: [`f${i / 20}`] } : {}),
    })),
  };
  const boards = boardIds.map(
    (id): Board => ({
      id,
      name: id,
      maker: "m",
      model: id,
      bus: "bus",
      revisions: revisions.map((r) => ({ id: r, tell: "t" })),
      clock_MHz: random.pick([6, 8, 10]),
      slots: range(6).map((s) => ({
        id: `S${s + 1}`,
        edge: s < 2 ? "short" : "long",
        position: s + 1,
        longest_mm: random.pick([180, 330]),
        highest_mm: "any" as const,
      })),
      fixed: [{ name: "serial port", io: [{ base: 0x3f8, size: 8 }], interrupts: [{ line: "I4" }], memory: "none", dma: "none" }],
      rails: [
        { rail: "+5", limit_A: 12, board_A: 3, per_slot_A: "any" },
        { rail: "+12", limit_A: 2, board_A: 0, per_slot_A: "any" },
      ],
      total_W: "any",
      memory: { options: ["256K", "512K"] },
      firmware: ["line"],
      firmware_sockets: [
        { id: "U1", pins: 28, data_width: 8, window: { base: 0xf0000, size: "64K" }, wired_for: "27C512", slowest_ns: 200 },
      ],
    }),
  );
  const span = () => {
    const from = random.int(0, size.versions - 1);
    return { family: "line", from: versions[from]!, upTo: versions[random.int(from, size.versions - 1)]! };
  };
  const cards = range(size.cards).map(
    (i): Card => ({
      id: `card-${i + 1}`,
      name: size.wordy ? `${birds[i % birds.length]} ${things[Math.floor(i / birds.length) % things.length]} ${i + 1}` : `Card ${i + 1}`,
      maker: "m",
      model: `C${i + 1}`,
      does: size.wordy ? [random.pick(["disk", "network", "memory", "clock"] as const)] : ["tool"],
      bus: "bus",
      edge: random.pick(["short", "long"]),
      room: { length_mm: random.pick([120, 200, 330]), height_mm: 100 },
      power: [{ rail: "+5", worst_A: chance(0.1) ? "unknown" : random.pick([0.3, 0.8, 1.5]) }],
      claims: [{ io: "settings", memory: "none", interrupts: "settings", dma: "none" }],
      settings: [
        {
          id: "J1",
          name: "ports",
          by: "jumper",
          default: "300",
          positions: [0x300, 0x320, 0x340].map((base) => ({ id: base.toString(16), io: [{ base, size: 16, decoded_bits: 10 }] })),
        },
        { id: "J2", name: "interrupt", by: "jumper", positions: [1, 2, 3].map((n) => ({ id: `${n}`, interrupts: [{ line: `I${n}` }] })) },
      ],
      needs: {
        ...(chance(0.5) ? { firmware: [span()] } : {}),
        ...(chance(0.2) ? { features: [`f${random.int(0, Math.floor((size.versions - 1) / 20))}`] } : {}),
      },
      sources: [{ id: "manual", kind: "manual", says: "Manual." }],
    }),
  );
  const conflicts = range(Math.floor(size.cards / 2)).map(
    (i): Conflict => ({
      id: `conflict-${i + 1}`,
      name: `Conflict ${i + 1}`,
      class: "timing",
      // Some name no card: a fault of one board with some versions.
      when: chance(0.2)
        ? { boards: [{ board: random.pick(boardIds), revisions: [random.pick(revisions)] }], firmware: [span()] }
        : { cards: [{ card: random.pick(cards).id, settings: { J1: "320" } }], ...(chance(0.5) ? { firmware: [span()] } : {}) },
      effect: random.pick(["blocks", "degrades", "cosmetic"]),
      symptoms: ["s"],
      cause: "c",
      status: random.pick(["confirmed", "confirmed", "suspected", "disproved"]),
      evidence: [{ grade: "reported", says: "r" }],
    }),
  );
  const builds = range(Math.floor(size.cards / 2)).map((i): Build => {
    const card = random.pick(cards).id;
    return {
      id: `build-${i + 1}`,
      name: `Build ${i + 1}`,
      board: random.pick(boardIds),
      revision: random.pick(revisions),
      memory: "512K",
      firmware: "line",
      cards: [{ card, slot: "S3", settings: { J1: "300", J2: "1" } }],
      modes: [{ id: "always", firmware: random.pick(versions) }],
      result: { by: `Tester ${random.int(1, 40)}`, date: "2020-01-01", outcome: random.pick(["worked", "worked", "failed"]) },
    };
  });
  const all = { bus: [bus], board: boards, firmware: [firmware], card: cards, conflict: conflicts, build: builds };
  return gather(
    Object.entries(all).flatMap(([kind, records]) => (records as { id: string }[]).map((record) => ({ kind, record, file: "" }) as Loaded)),
  );
}
