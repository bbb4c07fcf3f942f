// What single fields of a record mean to the planner, one small machine a field: both sides of each, since a rule that never lets
// anything through would pass the other half.
import { describe, expect, it } from "vitest";
import type { Card, Conflict } from "../../src/records/index.js";
import { asked, bus, card, type Records, smallClub } from "./support/small-club.js";

const twelve = { rails: [...bus.rails, { id: "-12", volts: -12 }] };
const twoRevisions = {
  revisions: [
    { id: "1", tell: "t" },
    { id: "2", tell: "t" },
  ],
};
const verdictOf = (records: Records, ...[cards, more]: [Parameters<typeof asked>[1], Parameters<typeof asked>[2]?]) =>
  asked(smallClub(records), cards, more).verdict;
const blocking = (when: Conflict["when"]): Conflict => ({
  id: "k",
  name: "K",
  class: "timing",
  when,
  effect: "blocks",
  symptoms: ["s"],
  cause: "c",
  status: "confirmed",
  evidence: [{ grade: "reported", says: "e" }],
});
const contacts = (...releases: NonNullable<Card["enable"]>["releases"]): Pick<Card, "enable"> => ({ enable: { by: "contacts", releases } });

describe("main memory", () => {
  const window = card("a", { claims: [{ memory: [{ base: 0x60000, size: "16K" }] }] });
  const fitted = (memory: string, more: Partial<NonNullable<Records["board"]>> = {}) =>
    verdictOf({ board: { memory: { options: ["256K", "512K"] }, ...more }, cards: [window] }, [{ card: "a", slot: "S1" }], { memory });

  it("takes its addresses: a card has no window where memory is fitted", () => {
    expect(fitted("512K")).toBe("ruled-out");
    expect(fitted("256K")).toBe("workable");
  });

  it("begins at its base", () => {
    const board = { memory: { base: 0x40000, options: ["128K", "256K"] } };
    expect(fitted("256K", board)).toBe("ruled-out");
    expect(fitted("128K", board)).toBe("workable");
    expect(fitted("128K", { memory: { base: 0x64000, options: ["128K"] } })).toBe("workable");
  });

  it("ends at the first window of the board in its way", () => {
    expect(fitted("512K", { fixed: [{ name: "picture", memory: [{ base: 0x50000, size: "16K" }] }] })).toBe("workable");
    expect(fitted("512K", { fixed: [{ name: "picture", memory: [{ base: 0x50000, size: "16K" }], revisions: ["C"] }] })).toBe("ruled-out");
  });
});

describe("what one slot gives", () => {
  const twice = (first: object, second: object) =>
    card("a", {
      ...twoRevisions,
      power: [
        { rail: "+5", worst_A: 0.6, ...first },
        { rail: "+5", worst_A: 0.6, ...second },
      ],
    });
  const board = { rails: [{ rail: "+5", limit_A: 10, per_slot_A: 1 }] };

  it("is held against all that a card takes from the rail together", () => {
    expect(verdictOf({ board, cards: [twice({}, {})] }, [{ card: "a", slot: "S1", revision: "1" }])).toBe("ruled-out");
  });

  it("is held against one revision of the card at a time", () => {
    const cards = [twice({ revisions: ["1"] }, { revisions: ["2"] })];
    expect(verdictOf({ board, cards }, [{ card: "a", slot: "S1", revision: "1" }])).toBe("workable");
  });
});

describe("a wide card", () => {
  const cards = [card("a", { room: { length_mm: 100, height_mm: 100, slots: 2 } }), card("b")];
  const slots = [1, 2, 3, 4].map((n) => ({ id: `S${n}`, edge: "edge", position: n, ...(n === 2 ? { revisions: ["C"] } : {}) }));

  it("does not stand over a slot that this revision of the board lacks", () => {
    expect(verdictOf({ board: { slots }, cards }, [{ card: "a", slot: "S1" }])).toBe("ruled-out");
    expect(verdictOf({ board: { slots }, cards }, [{ card: "a", slot: "S1" }], { revision: "C" })).toBe("workable");
  });

  it("is a neighbour of the card next to any slot it takes", () => {
    const conflicts = [blocking({ cards: [{ card: "a" }, { card: "b" }], adjacent: true })];
    const beside = (slot: string, first = "S1") =>
      verdictOf({ cards, conflicts }, [
        { card: "a", slot: first },
        { card: "b", slot },
      ]);
    expect([beside("S3"), beside("S4"), beside("S1", "S2"), beside("S4", "S2")]).toEqual([
      "ruled-out",
      "workable",
      "ruled-out",
      "ruled-out",
    ]);
  });
});

describe("what the board itself takes", () => {
  const rails = (board_A: number | "unknown") => [
    { rail: "+5", limit_A: 10 },
    { rail: "-12", limit_A: 1, board_A },
  ];

  it("counts in the power in all, also on a rail that no card uses", () => {
    const on = (board_A: number | "unknown", total_W = 100) =>
      verdictOf({ bus: twelve, board: { rails: rails(board_A), total_W } }, [{ card: "a", slot: "S1" }]);
    expect([on("unknown"), on(0.1), on(0.1, 6)]).toEqual(["unknown", "workable", "ruled-out"]);
    expect(on("unknown", 4), "the card alone takes 5 W").toBe("ruled-out");
  });

  it("is no way out when the cards alone take more than the rail gives", () => {
    const board = { rails: [{ rail: "+5", limit_A: 1.5, board_A: "unknown" as const }] };
    expect(verdictOf({ board }, [{ card: "a", slot: "S1" }])).toBe("unknown");
    expect(
      verdictOf({ board }, [
        { card: "a", slot: "S1" },
        { card: "b", slot: "S2" },
      ]),
    ).toBe("ruled-out");
  });
});

describe("an overload of a hair", () => {
  const taking = (...currents: readonly number[]) => currents.map((worst_A, i) => card("abcd"[i]!, { power: [{ rail: "+5", worst_A }] }));
  const allIn = (records: Records, count: number) =>
    verdictOf(
      records,
      Array.from({ length: count }, (_, i) => ({ card: "abcd"[i]!, slot: `S${i + 1}` })),
    );

  it("is one, in all, on a rail and in one slot", () => {
    const supply = (total_W: number) => allIn({ board: { total_W }, cards: taking(0.00009, 0.00009, 0.00009) }, 3);
    expect([supply(0.00134), supply(0.00135)]).toEqual(["ruled-out", "workable"]);
    const rail = (limit_A: number) => allIn({ board: { rails: [{ rail: "+5", limit_A }] }, cards: taking(0.5004, 0.5004) }, 2);
    expect([rail(1.0007), rail(1.0008)]).toEqual(["ruled-out", "workable"]);
    const slot = (per_slot_A: number) => allIn({ board: { rails: [{ rail: "+5", limit_A: 10, per_slot_A }] }, cards: taking(0.2504) }, 1);
    expect([slot(0.2503), slot(0.2504)]).toEqual(["ruled-out", "workable"]);
  });

  it("is none where the decimals come out even, however they lie in binary", () => {
    const rail = (derate: number, ...currents: readonly number[]) =>
      allIn({ board: { rails: [{ rail: "+5", limit_A: 0.7, derate, board_A: 0.1 }] }, cards: taking(...currents) }, currents.length);
    expect([rail(1, 0.1, 0.2, 0.3), rail(0.9, 0.1, 0.2, 0.23), rail(0.9, 0.1, 0.2, 0.2300000001)]).toEqual([
      "workable",
      "workable",
      "ruled-out",
    ]);
  });

  it("is told to the last place that counts", () => {
    const answer = asked(smallClub({ board: { total_W: 10 }, cards: taking(2.00001) }), [{ card: "a", slot: "S1" }]);
    const says = answer.reasons.flatMap((r) => r.facts).map((f) => f.says);
    expect(says).toContain("In all the cards take up to 10.00005 W; the supply of Board leaves 10 W.");
  });

  it("stays a finding where somebody writes more than any supply gives", () => {
    const board = { rails: [{ rail: "+5", limit_A: 1e12 }], total_W: 1e14 };
    expect(allIn({ board, cards: taking(1e15) }, 1)).toBe("ruled-out");
    expect(allIn({ board, cards: taking(1e3) }, 1)).toBe("workable");
  });
});

describe("a rail that one revision of a card uses", () => {
  const cards = [
    card("a", {
      ...twoRevisions,
      power: [
        { rail: "+5", worst_A: 1 },
        { rail: "-12", worst_A: 0.1, revisions: ["1"] },
      ],
    }),
  ];

  it("is missed by that revision alone", () => {
    const of = (revision: string) => verdictOf({ bus: twelve, cards }, [{ card: "a", slot: "S1", revision }]);
    expect([of("1"), of("2")]).toEqual(["ruled-out", "workable"]);
  });
});

describe("a card that another needs", () => {
  it("helps in a mode that leaves it out when nothing can switch it off", () => {
    const a = card("a", { needs: { cards: [{ any_of: ["b"], why: "w" }] } });
    const beside = (b: Card) =>
      verdictOf(
        { cards: [a, b] },
        [
          { card: "a", slot: "S1" },
          { card: "b", slot: "S2" },
        ],
        { modes: [{ id: "always", firmware: "V2", cards: ["a"] }] },
      );
    expect([beside(card("b")), beside(card("b", contacts("io")))]).toEqual(["workable", "ruled-out"]);
  });
});

describe("a setting that a revision of the card lacks", () => {
  const j1 = { id: "J1", name: "n", by: "jumper" as const, positions: [{ id: "x" }, { id: "y" }], revisions: ["1"] };
  const j2 = { id: "J2", name: "n", by: "jumper" as const, positions: [{ id: "x" }, { id: "y" }] };
  const of = (revision: string, more: Partial<Card>, conflicts: readonly Conflict[] = []) =>
    asked(smallClub({ cards: [card("a", { ...twoRevisions, settings: [j1, j2], ...more })], conflicts }), [
      { card: "a", slot: "S1", revision, ...{ settings: { J1: "x", J2: "x" } } },
    ]).verdict;

  it("brings no claim that is made under it", () => {
    const more = { claims: [{ when: { J1: "x" }, memory: [{ base: 0xf0000, size: 16 }] }] };
    expect([of("1", more), of("2", more)]).toEqual(["ruled-out", "workable"]);
  });

  it("excludes no position of another", () => {
    const more = { impossible: [{ when: { J1: "x", J2: "x" }, why: "w" }] };
    expect([of("1", more), of("2", more)]).toEqual(["ruled-out", "workable"]);
  });

  it("fulfils no condition of a conflict", () => {
    const conflicts = [blocking({ cards: [{ card: "a", settings: { J1: "x" } }] })];
    expect([of("1", {}, conflicts), of("2", {}, conflicts)]).toEqual(["ruled-out", "workable"]);
  });
});

describe("what a card lets go of when off", () => {
  it("can be the priority chain, which it then passes on", () => {
    const of = (on: readonly string[], ...releases: NonNullable<Card["enable"]>["releases"]) =>
      verdictOf(
        {
          bus: { chains: [{ id: "G", name: "grant" }] },
          board: { chains: [{ chain: "G", slots: ["S1", "S2"], empty: "breaks" }] },
          cards: [card("a", { chain: "breaks", ...contacts(...releases) }), card("b", { chain: "uses" })],
        },
        [
          { card: "a", slot: "S1" },
          { card: "b", slot: "S2" },
        ],
        { modes: [{ id: "always", firmware: "V2", cards: [...on] }] },
      );
    expect([of(["b"], "chain"), of(["b"], "io"), of(["a", "b"], "chain")]).toEqual(["workable", "ruled-out", "ruled-out"]);
  });

  it("can be a line, which then need not reach its slot", () => {
    const of = (on: readonly string[], ...releases: NonNullable<Card["enable"]>["releases"]) =>
      verdictOf(
        {
          board: { slots: [1, 2].map((n) => ({ id: `S${n}`, edge: "edge", position: n, interrupts: [] })) },
          cards: [card("a", { claims: [{ interrupts: [{ line: "I1" }] }], ...contacts(...releases) }), card("b")],
        },
        [
          { card: "a", slot: "S1" },
          { card: "b", slot: "S2" },
        ],
        { modes: [{ id: "always", firmware: "V2", cards: [...on] }] },
      );
    expect([of(["b"], "interrupts"), of(["b"], "io"), of(["a"], "interrupts")]).toEqual(["workable", "ruled-out", "ruled-out"]);
  });

  it("can be its need of a slow bus", () => {
    const of = (clock_at_most_MHz: number | "unknown", on: readonly string[], ...releases: NonNullable<Card["enable"]>["releases"]) =>
      verdictOf(
        { cards: [card("a", { needs: { clock_at_most_MHz }, ...contacts(...releases) }), card("b")] },
        [
          { card: "a", slot: "S1" },
          { card: "b", slot: "S2" },
        ],
        { modes: [{ id: "always", firmware: "V2", cards: [...on] }] },
      );
    expect([of(6, ["b"], "clock"), of(6, ["b"], "io"), of(6, ["a"], "clock")]).toEqual(["workable", "ruled-out", "ruled-out"]);
    expect([of("unknown", ["b"], "clock"), of("unknown", ["b"], "io")]).toEqual(["workable", "unknown"]);
  });
});

describe("the amount of memory that a build states", () => {
  const needy = card("a", { needs: { memory_at_least: "512K" } });
  const told = (memory: string | undefined) =>
    asked(smallClub({ cards: [needy] }), [{ card: "a", slot: "S1" }], memory === undefined ? {} : { memory });

  it("is known, also where the board's record names no amounts", () => {
    expect(told("512K").verdict).toBe("workable");
    expect(told("512K").combinations[0]!.memory).toBe(512 * 1024);
    expect(told("256K").verdict).toBe("ruled-out");
    expect(told(undefined).verdict).toBe("unknown");
    expect(told(undefined).combinations[0]!.unknowns[0]!.says).toContain("How much Board has is not written down.");
  });
});
