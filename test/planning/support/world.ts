// Random small worlds: a bus, a board, a firmware line, a few cards and conflicts, and a build over them, in the shapes of the
// records. Small enough that every machine can be judged one by one; rich enough that every rule of the trade occurs.

import { type Catalogue, gather } from "../../../src/catalogue/index.js";
import type { Board, Build, Bus, Card, Conflict, Firmware } from "../../../src/records/index.js";
import { tidy } from "../../support/loose.js";
import { Random } from "../../support/solver/random.js";
import { spellOutBoard, spellOutCard } from "../../support/spell-out.js";
import type { World } from "./checker/index.js";
import { withGaps, withGapsOnBoard } from "./gaps.js";
import { claimsIn } from "./random-claims.js";

export interface Setup {
  readonly world: World;
  readonly catalogue: Catalogue;
  readonly build: Build;
}

/** Amounts of main memory, in bytes: in a space of 256 addresses, room is left for cards. */
const little = 48;
const much = 96;

/** Small worlds can be judged machine by machine; large ones only by samples. */
export function randomSetup(seed: number, size: "small" | "large" = "small"): Setup {
  const r = new Random(seed);
  const large = size === "large";
  // How much of what can stand in the way does: most worlds are easy, so that what works is judged as often as what does not.
  const tight = r.pick(large ? [0.05, 0.1, 0.2] : [0.15, 0.3, 0.5, 1]);
  const chance = (p: number) => r.next() < p;
  const maybe = <T>(p: number, make: () => T): T | undefined => (chance(p * tight) ? make() : undefined);
  // A fact is written plainly, or with the way to find it out beside it.
  const factOf = <T>(v: T): T | { readonly is: T; readonly find: string } => (chance(0.15) ? { is: v, find: "Measure it." } : v);
  const unknownOr = <T>(p: number, v: T) => factOf<T | "unknown">(chance(p * tight) ? "unknown" : v);

  const inSpaces = chance(0.15);
  const space = () => (inSpaces && !chance(0.06 * tight) ? r.pick(["LOW", "LOW", "HIGH"]) : undefined);
  const bus = tidy<Bus>({
    id: "bus",
    name: "Bus",
    memory_address_bits: 8,
    io_address_bits: 6,
    spaces: inSpaces
      ? [
          { id: "LOW", name: "low", bits: 8 },
          { id: "HIGH", name: "high", bits: 9 },
        ]
      : undefined,
    overlay_lines: [
      { id: "O1", says: "s" },
      { id: "O2", says: "s" },
    ],
    edges: [
      { id: "short", name: "short", fits: ["short", "long"], interrupts: ["I1", "I2"], dma: ["D1"] },
      { id: "long", name: "long", fits: ["long"], interrupts: ["I1", "I2", "I3"], dma: ["D1", "D2"] },
    ],
    interrupts: [
      {
        id: "I1",
        also: ["L1"],
        trigger: unknownOr(0.2, r.pick(["edge", "level"] as const)),
        share: unknownOr(0.1, r.pick(["never", "if-shareable"] as const)),
      },
      { id: "I2", trigger: "edge", share: "never" },
      { id: "I3", trigger: "level", share: "if-shareable" },
    ],
    dma: [{ id: "D1" }, { id: "D2" }],
    rails: [
      { id: "+5", volts: 5 },
      { id: "-12", volts: -12 },
    ],
    chains: maybe(0.7, () => [
      { id: "G", name: "grant", most: maybe(0.3, () => 1) },
      ...(chance(0.3) ? [{ id: "K", name: "acknowledge" }] : []),
    ]),
  });
  const revisions = r.pick([["A"], ["A", "B"]]);
  const someRevisions = (p: number) => maybe(revisions.length > 1 ? p : 0, () => [r.pick(revisions)]);
  const slotCount = large ? r.int(6, 9) : tight < 0.5 ? r.int(3, 4) : r.int(2, 3);
  const slots = Array.from({ length: slotCount }, (_, i) => ({
    id: `S${i + 1}`,
    edge: r.pick(["short", "long", "long", "long"]),
    position: i + 1,
    longest_mm: maybe(0.5, () => unknownOr(0.15, r.pick([100, 300, 300, 300]))),
    highest_mm: maybe(0.3, () => unknownOr(0.15, r.pick([95, 120]))),
    number: r.next() < 0.9 ? unknownOr(0.1, i) : undefined,
    opening: maybe(0.6, () => r.pick(["o1", "o2", "o3"])),
    interrupts: maybe(0.15, () => ["I1"]),
    dma: maybe(0.15, () => ["D1"]),
    bus_master: r.next() < 0.6 ? unknownOr(0.2, r.next() < 0.8) : undefined,
    revisions: someRevisions(0.15),
  }));
  const memories = r.pick([undefined, [little], [little, much]]);
  const board = tidy<Board>({
    id: "board",
    name: "Board",
    maker: "m",
    model: "b",
    bus: "bus",
    revisions: revisions.map((id) => ({ id, tell: "t" })),
    clock_MHz: unknownOr(0.1, 8),
    slots,
    chains: maybe(bus.chains ? 0.7 : 0, () =>
      bus.chains!.slice(0, chance(0.8) ? 2 : 1).map(({ id }) => ({
        chain: id,
        slots: r.shuffle(slots.map((s) => s.id)).slice(0, r.int(1, slotCount)),
        empty: r.next() < 0.95 ? unknownOr(0.1, r.pick(["breaks", "breaks", "passes", "jumper", "plug"] as const)) : undefined,
      })),
    ),
    fixed: [
      {
        name: "port",
        io: [{ base: r.int(0, 60), size: 2 }],
        interrupts: maybe(0.4, () => [{ line: r.pick(["I1", "I2"]) }]),
        revisions: someRevisions(0.3),
        when_memory: maybe(memories ? 0.3 : 0, () => [r.pick(memories!)]),
      },
    ],
    rails: [
      {
        rail: "+5",
        limit_A: unknownOr(0.08, r.pick(tight < 0.5 ? [2, 3, 4] : [1, 2, 3])),
        board_A: maybe(0.5, () => unknownOr(0.05, 0.5)),
        per_slot_A: maybe(0.3, () => unknownOr(0.1, r.pick([0.8, 1.5]))),
        derate: maybe(0.3, () => 0.8),
        revisions: someRevisions(0.1),
      },
      ...(chance(0.6) ? [{ rail: "-12", limit_A: 0.5, revisions: someRevisions(0.2) }] : []),
    ],
    total_W: maybe(0.3, () => unknownOr(0.1, r.pick([8, 15]))),
    total_derate: maybe(0.3, () => 0.8),
    memory: memories ? { options: memories, base: r.pick([0, 0, 16, 64, 128, 200]), space: space() } : "none",
    firmware: ["fw", "other"],
    firmware_sockets: [
      {
        id: "IC1",
        pins: 28,
        data_width: 8,
        window: { base: r.pick([240, 240, 96]), size: 16, space: space() },
        wired_for: "27C64",
        slowest_ns: 200,
        revisions: someRevisions(0.3),
      },
    ],
  });
  const versionIds = ["F9", "F10", "F10A"].slice(0, r.int(1, 3));
  const family = tidy<Firmware>({
    id: "fw",
    name: "Firmware",
    maker: "m",
    boards: [{ board: "board" }],
    versions: versionIds.map((id) => ({
      id,
      image: { size: 16, crc32: "unknown" },
      adds: maybe(0.4, () => ["scan"]),
      removes: maybe(0.15, () => ["scan"]),
      boards: maybe(0.2, () => [{ board: "board", revisions: [r.pick(revisions)] }]),
      memory_at_least: maybe(0.1, () => much),
    })),
  });
  const other: Firmware = {
    ...family,
    id: "other",
    name: "Other firmware",
    versions: [{ id: "F9", image: { size: 16, crc32: "unknown" } }],
  };
  const span = () => (chance(0.1) ? { family: "other", from: "F9" } : ofFamily());
  const ofFamily = () =>
    tidy({
      family: "fw",
      ...r.pick([
        { from: r.pick(versionIds) },
        { upTo: r.pick(versionIds) },
        { only: [r.pick(versionIds)] },
        { before: r.pick(versionIds) },
        { except: [r.pick(versionIds)] },
      ]),
    });

  const claim = claimsIn({ r, tight, space });
  const cardCount = large ? r.int(3, 5) : r.int(1, 3);
  const cards: Card[] = Array.from({ length: cardCount }, (_, i) => randomCard(i));
  function randomCard(i: number): Card {
    const revs = maybe(0.3, () => [
      { id: "1", tell: "t" },
      { id: "2", tell: "t" },
    ]);
    const ofRevs = (p: number) => (revs && chance(p) ? [r.pick(["1", "2"])] : undefined);
    const settings = Array.from({ length: r.pick([0, 1, 1, 2]) }, (_, s) => ({
      id: `J${s + 1}`,
      name: "n",
      by: r.pick(["jumper", "software"] as const),
      revisions: ofRevs(0.3),
      positions: Array.from({ length: 2 }, (_, p) => ({ id: `p${p}`, ...claim() })),
    }));
    return tidy({
      id: `card${i}`,
      name: `Card ${i}`,
      maker: "m",
      model: "c",
      does: ["tool"],
      bus: chance(0.03) ? "other" : "bus",
      edge: r.pick(["short", "short", "long"]),
      revisions: revs,
      room: {
        length_mm: unknownOr(0.05, r.pick([90, 200])),
        height_mm: unknownOr(0.05, r.pick([90, 90, 110])),
        slots: chance(0.2) ? 2 : undefined,
        opening: maybe(0.4, () => true),
      },
      power: [
        { rail: "+5", worst_A: unknownOr(0.07, r.pick(tight < 0.5 ? [0.2, 0.3, 0.6] : [0.2, 0.6, 1, 1.2])), revisions: ofRevs(0.3) },
        ...(chance(0.2) ? [{ rail: "+5", worst_A: 0.4, revisions: ofRevs(0.5) }] : []),
        ...(chance(0.1) ? [{ rail: "-12", worst_A: 0.1 }] : []),
      ],
      claims: maybe(0.5, () => [
        {
          ...claim(),
          when: settings.length > 0 && chance(0.5) ? { J1: r.pick(["p0", "p1", ["p0", "p1"]]) } : undefined,
          revisions: ofRevs(0.2),
        },
      ]),
      settings: settings.length > 0 ? settings : undefined,
      impossible: settings.length > 1 && chance(0.3) ? [{ when: { J1: "p0", J2: "p1" }, why: "w" }] : undefined,
      needs: {
        firmware: maybe(0.35, () => [span(), ...(chance(0.2) ? [span()] : [])]),
        features: maybe(0.12, () => ["scan"]),
        boards: maybe(0.1, () => [{ board: "board", revisions: chance(0.5) ? [r.pick(revisions)] : undefined }]),
        memory_at_least: maybe(0.12, () => much),
        memory_at_most: maybe(0.12, () => little),
        clock_at_most_MHz: maybe(0.15, () => unknownOr(0.3, r.pick([6, 8, 10]))),
        cards: cardCount > 1 && chance(0.12) ? [{ any_of: [`card${(i + 1) % cardCount}`], why: "w" }] : undefined,
        bus_master: maybe(0.12, () => true),
        rails: maybe(0.08, () => ["-12"]),
      },
      chain: maybe(bus.chains ? 0.5 : 0, () =>
        chance(0.6)
          ? r.pick(["uses", "passes", "breaks"] as const)
          : { G: r.pick(["uses", "passes", "unknown"] as const), K: r.pick(["uses", "passes", "breaks"] as const) },
      ),
      enable: maybe(0.5, () => ({
        ...(settings.length > 0 && chance(0.3) ? { by: "setting" as const, setting: "J1", off: "p0" } : { by: "contacts" as const }),
        revisions: ofRevs(0.3),
        releases: r
          .some(["io", "memory", "interrupts", "dma", "firmware", "features", "memory-size", "cards", "clock", "chain"] as const, 0.7)
          .concat(["io"])
          .filter((x, n, all) => all.indexOf(x) === n),
      })),
    }) as Card;
  }

  const conflicts: Conflict[] = Array.from({ length: r.int(0, 4) }, (_, i) =>
    tidy({
      id: `k${i}`,
      name: `Conflict ${i}`,
      class: "timing" as const,
      when: {
        boards: maybe(0.2, () => [{ board: "board", revisions: chance(0.6) ? [r.pick(revisions)] : undefined }]),
        firmware: maybe(0.4, () => [span()]),
        cards: r
          .shuffle(chance(0.15) ? [...cards, ...cards] : cards)
          .slice(0, r.int(0, 2))
          .map((c) => ({
            card: c.id,
            even_disabled: maybe(0.2, () => true),
            revisions: c.revisions && chance(0.3) ? [r.pick(["1", "2"])] : undefined,
            settings: c.settings && chance(0.5) ? { J1: r.pick(["p0", ["p0", "p1"]]) } : undefined,
            slots: maybe(0.2, () => [r.pick(slots).id]),
            edge: maybe(0.1, () => "long"),
          })),
        adjacent: maybe(0.3, () => true),
        memory_at_least: maybe(memories ? 0.1 : 0.02, () => much),
        memory_at_most: maybe(memories ? 0.15 : 0.02, () => little),
        modes_at_least: maybe(0.1, () => 2),
      },
      effect: r.pick(["blocks", "blocks", "degrades", "cosmetic"] as const),
      loss: "l",
      symptoms: ["s"],
      cause: "c",
      remedies: r.next() < 0.5 ? [{ says: "Do it.", leaves: "nothing" as const, costs: "jumper" as const }] : undefined,
      status: r.pick(["confirmed", "confirmed", "suspected", "disproved"] as const),
      evidence: [{ grade: "reported" as const, says: "e" }],
    }),
  ).map((k) => (k.when.cards && k.when.cards.length === 0 ? { ...k, when: { ...k.when, cards: undefined } } : k)) as Conflict[];

  // Some machines have a card twice.
  const again = large ? r.int(0, 2) : cardCount < 3 && chance(0.2) ? 1 : 0;
  const copies = [...cards, ...Array.from({ length: again }, () => r.pick(cards))];
  const build = tidy<Build>({
    id: "build",
    name: "Build",
    board: "board",
    firmware: "fw",
    revision: maybe(0.2, () => r.pick(revisions)),
    memory: maybe(memories ? 0.2 : 0.3, () => r.pick(memories ?? [little, much])),
    cards: copies.map((c, i) => ({
      card: c.id,
      as: i < cards.length ? undefined : `${c.id}-again-${i}`,
      slot: maybe(0.1, () => r.pick(slots).id),
      revision: c.revisions && chance(0.15) ? r.pick(["1", "2"]) : undefined,
      settings: c.settings && chance(0.15) ? { J1: r.pick(["p0", "p1"]) } : undefined,
    })),
    modes: chance(0.5)
      ? undefined
      : Array.from({ length: large ? r.int(1, 3) : r.pick([1, 1, 2, 2, 2, 3]) }, (_, m) => ({
          id: `m${m}`,
          firmware: maybe(0.3, () => r.pick(versionIds)),
          cards: maybe(0.7, () =>
            r.some(
              copies.map((c, i) => (i < cards.length ? c.id : `${c.id}-again-${i}`)),
              0.6,
            ),
          ),
        })),
  });
  for (const [i, card] of cards.entries()) cards[i] = withGaps(r, tight, spellOutCard(card));
  const whole = withGapsOnBoard(r, tight, spellOutBoard(board));
  const loaded = [
    { kind: "bus" as const, record: bus, file: "" },
    { kind: "board" as const, record: whole, file: "" },
    { kind: "firmware" as const, record: family, file: "" },
    { kind: "firmware" as const, record: other, file: "" },
    ...cards.map((record) => ({ kind: "card" as const, record, file: "" })),
    ...conflicts.map((record) => ({ kind: "conflict" as const, record, file: "" })),
  ];
  return { world: { bus, board: whole, family, cards: new Map(cards.map((c) => [c.id, c])), conflicts }, catalogue: gather(loaded), build };
}
