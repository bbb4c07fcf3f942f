// One machine as large as the solver's large builds, in the shapes of the records: a board with 20 slots, 18 cards in it and more to add,
// 30 versions of the firmware, 200 known problems. What the planner's page is measured on.
import type { Board, Build, Bus, Card, Conflict, Firmware, Loaded } from "../../src/records/index.js";
import { Random, range } from "../support/solver/random.js";

export const machineSize = { slots: 20, cards: 18, versions: 30, conflicts: 200, spare: 8 } as const;

/** Records, and the build that is put up from them. */
export interface LargeMachine {
  readonly records: readonly Loaded[];
  readonly build: Build;
}

const lines = range(11).map((i) => `I${i + 1}`);
const kinds = ["short", "middle", "long", "wide"] as const;

const bus: Bus = {
  id: "bus",
  name: "Backplane bus",
  memory_address_bits: 20,
  io_address_bits: 12,
  edges: kinds.map((id, i) => ({ id, name: id, fits: kinds.slice(i), ...(i === 0 ? { interrupts: lines } : {}) })),
  interrupts: lines.map((id, i) => ({ id, trigger: i === 10 ? "level" : "edge", share: i === 10 ? "if-shareable" : "never" })),
  rails: [
    { id: "+5", volts: 5 },
    { id: "+12", volts: 12 },
  ],
};

export function largeMachine(seed = 1): LargeMachine {
  const random = new Random(seed * 7919);
  const chance = (p: number) => random.next() < p;
  const versions = range(machineSize.versions).map((i) => `V${i + 1}`);
  const revisions = ["A", "B", "C"];
  const board: Board = {
    id: "backplane",
    name: "Backplane 20",
    maker: "m",
    model: "backplane",
    summary: "Twenty slots.",
    bus: "bus",
    revisions: revisions.map((id) => ({ id, tell: `The letter ${id} is printed beside S1.` })),
    clock_MHz: 8,
    slots: range(machineSize.slots).map((s) => ({
      id: `S${s + 1}`,
      edge: kinds[Math.floor((s * kinds.length) / machineSize.slots)]!,
      position: s + 1,
      longest_mm: s % 5 === 4 ? 180 : 330,
      highest_mm: "any" as const,
    })),
    fixed: [{ name: "serial port", io: [{ base: 0x3f8, size: 8 }], interrupts: [{ line: "I4" }], memory: "none", dma: "none" }],
    rails: [
      { rail: "+5", limit_A: 30, board_A: 3, per_slot_A: "any" },
      { rail: "+12", limit_A: 6, board_A: 0, per_slot_A: "any" },
    ],
    total_W: "any",
    memory: { options: ["256K", "512K", "1M"] },
    firmware: ["line"],
    firmware_sockets: [{ id: "U1", pins: 28, data_width: 8, window: { base: 0xf0000, size: "64K" }, wired_for: "27C512", slowest_ns: 200 }],
  };
  const firmware: Firmware = {
    id: "line",
    name: "Line",
    maker: "m",
    boards: [{ board: "backplane" }],
    versions: versions.map((id) => ({ id, image: { size: "64K", crc32: "unknown" } })),
  };
  const span = (from: number, upTo: number) => ({ family: "line", from: versions[from]!, upTo: versions[upTo]! });
  const total = machineSize.cards + machineSize.spare;
  const does = ["disk", "network", "clock", "memory", "printer", "sound"] as const;
  const cards = range(total).map((i): Card => {
    // The first position is the card's own; the others meet those of other cards.
    const bases = [0x100 + 0x10 * i, ...range(random.int(2, 4)).map(() => 0x100 + 0x10 * random.int(0, total - 1))];
    const levels = random.shuffle(lines).slice(0, random.int(3, 5));
    if (!levels.includes("I11")) levels.push("I11");
    return {
      id: `card-${i + 1}`,
      name: `Card ${i + 1} ${does[i % does.length]}`,
      maker: "m",
      model: `C${i + 1}`,
      does: ["other"],
      summary: `For tests, ${does[i % does.length]}.`,
      bus: "bus",
      edge: kinds[i % 5 === 0 ? 1 : 0],
      room: { length_mm: random.pick([120, 160, 200]), height_mm: 100 },
      revisions: ["A", "B"].map((id) => ({ id, tell: `The letter ${id} stands at the edge.` })),
      power: [{ rail: "+5", worst_A: i >= machineSize.cards && chance(0.3) ? "unknown" : random.pick([0.3, 0.8, 1.2]) }],
      claims: [{ io: "settings", memory: "none", interrupts: "settings", dma: "none" }],
      settings: [
        {
          id: "J1",
          name: "ports",
          by: "jumper",
          default: "P1",
          positions: [...new Set(bases)].map((base, p) => ({ id: `P${p + 1}`, io: [{ base, size: 16 }] })),
        },
        {
          id: "J2",
          name: "interrupt",
          by: "jumper",
          positions: levels.map((line) => ({ id: line, interrupts: [{ line, shareable: line === "I11" }] })),
        },
      ],
      needs: chance(0.4) ? { firmware: [span(random.int(0, 8), random.int(20, 29))] } : undefined,
      sources: [{ id: "manual", kind: "manual", says: "Manual." }],
    } as Card;
  });
  const conflicts = range(machineSize.conflicts).map((i): Conflict => {
    const [one, other] = random.shuffle(cards);
    const narrow = random.int(0, 24);
    return {
      id: `problem-${i + 1}`,
      name: `Problem ${i + 1}`,
      class: "timing",
      when: {
        cards: [
          { card: one!.id, ...(chance(0.6) ? { revisions: [random.pick(["A", "B"])] } : { settings: { J1: "P2" } }) },
          ...(chance(0.6) ? [{ card: other!.id, settings: { J2: "I11" } }] : []),
        ],
        firmware: [span(narrow, narrow + random.int(0, 4))],
      },
      effect: random.pick(["blocks", "blocks", "degrades", "cosmetic"]),
      symptoms: ["It hangs."],
      cause: "The bus is held too long.",
      status: random.pick(["confirmed", "confirmed", "confirmed", "suspected", "disproved"]),
      evidence: [{ grade: "reported", says: "Told." }],
    } as Conflict;
  });
  const builds = range(12).map((i): Build => {
    const some = random.shuffle(cards).slice(0, 3);
    return {
      id: `build-${i + 1}`,
      name: `Build ${i + 1}`,
      board: "backplane",
      revision: random.pick(revisions),
      memory: "512K",
      firmware: "line",
      cards: some.map((c, s) => ({ card: c.id, revision: "A", slot: `S${s + 6}`, settings: { J1: "P1", J2: "I11" } })),
      modes: [{ id: "always", firmware: random.pick(versions) }],
      result: { by: `Tester ${random.int(1, 9)}`, date: "2020-01-01", outcome: random.pick(["worked", "worked", "failed"]) },
    };
  });
  const all = { bus: [bus], board: [board], firmware: [firmware], card: cards, conflict: conflicts, build: builds };
  const records = Object.entries(all).flatMap(([kind, list]) =>
    (list as { id: string }[]).map((record) => ({ kind, record, file: "" }) as Loaded),
  );
  const build: Build = {
    id: "my-build",
    name: "My build",
    board: "backplane",
    cards: cards.slice(0, machineSize.cards).map(({ id }) => ({ card: id })),
  };
  return { records: JSON.parse(JSON.stringify(records)) as Loaded[], build };
}
