// What a record leaves out is not known: each kind of resource, whole or one position, and a board's own current. Both sides of each.
import { describe, expect, it } from "vitest";
import type { Answer } from "../../src/planning/index.js";
import type { Board, Card } from "../../src/records/index.js";
import { spellOutBoard, spellOutCard } from "../support/spell-out.js";
import { asked, board, bus, card, type Records, smallClub } from "./support/small-club.js";

const dma = { dma: [{ id: "D1" }] };
const whole = {
  ...card("a"),
  claims: [{ io: "none" as const, memory: "none" as const, interrupts: "none" as const, dma: "none" as const }],
};

/** Card A in S1, everything else written down. */
function answerTo(a: Card, more: Records = {}): Answer {
  const given = {
    bus: dma,
    board: spellOutBoard({ ...board, ...more.board } as Board),
    cards: [a, ...(more.cards ?? [])],
    asWritten: true as const,
  };
  return asked(smallClub({ ...more, ...given }), [
    { card: "a", slot: "S1" },
    ...(more.cards ?? []).map((c, i) => ({ card: c.id, slot: `S${i + 2}` })),
  ]);
}
const said = (answer: Answer) => answer.combinations.flatMap((c) => c.unknowns.map((u) => u.says));

describe("a card's claims", () => {
  it("written in full, or as none, are known", () => {
    expect(answerTo(whole).verdict).toBe("workable");
    expect(answerTo({ ...card("a"), claims: "none" }).verdict).toBe("workable");
  });

  it.each(["io", "memory", "interrupts", "dma"] as const)("without %s are not known", (kind) => {
    const { [kind]: _, ...rest } = whole.claims[0]!;
    const answer = answerTo({ ...whole, claims: [rest] });
    expect([answer.verdict, answer.count, answer.hanging]).toEqual(["unknown", "0", "1"]);
    expect(said(answer)).toEqual([expect.stringMatching(/^Which .* Card A takes is not written down\.$/)]);
    const declared = answerTo({ ...whole, claims: [{ ...whole.claims[0], [kind]: "unknown", find: "Follow the track." }] });
    expect(declared.combinations[0]!.unknowns[0]!.how).toBe("Follow the track.");
  });

  it("left out altogether, or said to be unknown, are not known", () => {
    expect(answerTo(card("a")).verdict).toBe("unknown");
    expect(answerTo({ ...card("a"), claims: "unknown" }).verdict).toBe("unknown");
    expect(said(answerTo(card("a")))).toEqual([
      "Which ports, memory addresses, interrupt lines and DMA channels Card A takes is not written down.",
    ]);
  });

  it("are not asked for where the bus has no such thing, or the card's edge does not carry it", () => {
    const { dma: _, ...noDma } = whole.claims[0]!;
    expect(answerTo({ ...whole, claims: [noDma] }, { bus: {} }).verdict).toBe("unknown");
    const without = smallClub({ board: spellOutBoard(board), cards: [{ ...whole, claims: [noDma] }], asWritten: true });
    expect(asked(without, [{ card: "a", slot: "S1" }]).verdict).toBe("workable");
    const edges = [{ ...bus.edges[0]!, dma: [] }];
    expect(
      asked(smallClub({ bus: { ...dma, edges }, board: spellOutBoard(board), cards: [{ ...whole, claims: [noDma] }], asWritten: true }), [
        { card: "a", slot: "S1" },
      ]).verdict,
    ).toBe("workable");
  });

  it("hold where an entry stands for it, and are open where none does", () => {
    const when = { J1: "x" };
    const entry = { when, ...whole.claims[0] };
    expect(answerTo({ ...whole, claims: [entry] }).verdict).toBe("workable");
    const other = { ...entry, when: { J1: "y" } };
    expect(answerTo({ ...whole, claims: [other] }).verdict).toBe("unknown");
    expect(answerTo({ ...whole, claims: [entry, other] }).verdict).toBe("workable");
    expect(said(answerTo({ ...whole, claims: [other] }))[0]).toContain("Card A with J1 at x");
  });

  it("left to the settings need a setting that speaks, and every position of it", () => {
    const claims = [{ ...whole.claims[0], io: "settings" as const }];
    const positions = (x: object, y: object) => [
      {
        id: "J1",
        name: "n",
        by: "jumper" as const,
        positions: [
          { id: "x", ...x },
          { id: "y", ...y },
        ],
      },
    ];
    expect(answerTo({ ...whole, claims }).verdict).toBe("unknown");
    const taking = { io: [{ base: 0x300, size: 8 }] };
    expect(answerTo({ ...whole, claims, settings: positions(taking, { io: "none" }) }).verdict).toBe("workable");
    expect(answerTo({ ...whole, claims, settings: positions({}, taking) }).verdict).toBe("unknown");
    expect(answerTo({ ...whole, claims, settings: positions(taking, {}) }).verdict).toBe("workable");
  });

  it("matter no more once the card is off and lets go of them", () => {
    const { io: _, ...rest } = whole.claims[0]!;
    const a = (releases: NonNullable<Card["enable"]>["releases"]): Card => ({
      ...whole,
      claims: [rest],
      enable: { by: "contacts", releases },
    });
    const club = (...releases: NonNullable<Card["enable"]>["releases"]) =>
      smallClub({ bus: dma, board: spellOutBoard(board), cards: [a(releases), spellOutCard(card("b"))], asWritten: true });
    const cards = [
      { card: "a", slot: "S1" },
      { card: "b", slot: "S2" },
    ];
    const modes = (on: string[]) => ({ modes: [{ id: "m", firmware: "V2", cards: on }] });
    expect(asked(club("io"), cards, modes(["b"])).verdict).toBe("workable");
    expect(asked(club("memory"), cards, modes(["b"])).verdict).toBe("unknown");
    expect(asked(club("io"), cards, modes(["a", "b"])).verdict).toBe("unknown");
  });
});

describe("what the board takes", () => {
  const ports: Card = { ...whole, claims: [{ ...whole.claims[0], io: [{ base: 0x300, size: 8 }] }] };
  const timer = (more: object) => ({
    board: {
      fixed: [{ name: "timer", io: "none" as const, memory: "none" as const, interrupts: "none" as const, dma: "none" as const, ...more }],
    },
  });
  const asWritten = (a: Card, records: Records) =>
    asked(smallClub({ bus: dma, board: { ...spellOutBoard(board), ...records.board }, cards: [a], asWritten: true }), [
      { card: "a", slot: "S1" },
    ]);

  it("leaves a card open that takes something of a kind it is silent on, and no other", () => {
    expect(asWritten(ports, timer({})).verdict).toBe("workable");
    const silent = asWritten(ports, timer({ io: "unknown", find: "Read the decoder." }));
    expect([silent.verdict, said(silent)]).toEqual(["unknown", ["Which ports timer of Board takes is not written down."]]);
    expect(silent.combinations[0]!.unknowns[0]!.how).toBe("Read the decoder.");
    expect(asWritten(whole, timer({ io: "unknown" })).verdict).toBe("workable");
    const { io: _, ...left } = timer({}).board.fixed[0]!;
    expect(asWritten(ports, { board: { fixed: [left] } }).verdict).toBe("unknown");
  });

  it("of a rail is not 0 because nobody wrote it down", () => {
    const rails = (own: object) => ({
      board: { ...timer({}).board, rails: [{ rail: "+5", limit_A: 10, per_slot_A: "any" as const, ...own }] },
    });
    expect(asWritten(whole, rails({ board_A: 0 })).verdict).toBe("workable");
    expect(asWritten(whole, rails({})).verdict).toBe("unknown");
    expect(asWritten({ ...whole, power: [{ rail: "+5", worst_A: 11 }] }, rails({})).verdict).toBe("ruled-out");
    expect(asWritten({ ...whole, power: [{ rail: "+5", worst_A: 0 }] }, rails({})).verdict).toBe("workable");
  });
});

describe("main memory", () => {
  const window = { ...whole, claims: [{ ...whole.claims[0]!, memory: [{ base: 0xd0000, size: "16K" }] }] };
  const on = (memory: Board["memory"], of: Card = window, more = {}) => {
    const { memory: _, ...rest } = spellOutBoard(board);
    const club = smallClub({ bus: dma, board: memory === undefined ? rest : { ...rest, memory }, cards: [of], asWritten: true });
    return asked(club, [{ card: "a", slot: "S1" }], more);
  };

  it("takes nothing where there is none, and only its own addresses where they are told", () => {
    expect(on("none").verdict).toBe("workable");
    expect(on({ options: ["256K"], base: 0 }).verdict).toBe("workable");
    expect(on({ options: ["256K"], base: 0xc0000 }).verdict).toBe("ruled-out");
    expect(on({ options: ["64K"], base: 0xc0000 }).verdict).toBe("workable");
    expect(on({ options: ["64K", "128K"], base: 0xc0000 }).verdict).toBe("workable");
  });

  it.each([[undefined], ["unknown" as const], [{ options: ["256K"] }]])("left out (%j) may lie under any window of a card", (memory) => {
    const answer = on(memory);
    expect([answer.verdict, answer.count]).toEqual(["unknown", "0"]);
    expect(said(answer)).toEqual(["Where the main memory of Board lies is not written down."]);
    expect(on(memory, whole).verdict).toBe("workable");
  });

  it("stated by the build says how much, not where", () => {
    expect(on("unknown", window, { memory: "256K" }).verdict).toBe("unknown");
  });

  it("of which the amount is not known leaves open whether a part is there that stands with some amounts", () => {
    const part = { name: "copy of the firmware", memory: [{ base: 0xe0000, size: "32K" }], io: "none", interrupts: "none", dma: "none" };
    const fixed = [{ ...part, when_memory: ["768K"] }] as Board["fixed"];
    const with_ = (memory: Board["memory"], more = {}) => {
      const club = smallClub({ bus: dma, board: { ...spellOutBoard(board), fixed, memory: memory! }, cards: [window], asWritten: true });
      return asked(club, [{ card: "a", slot: "S1" }], more);
    };
    expect(said(with_("none"))).toEqual([
      "Whether copy of the firmware is there depends on the memory fitted. How much Board has is not written down.",
    ]);
    expect(with_("none", { memory: "512K" }).verdict).toBe("workable");
    expect(with_({ options: ["512K"], base: 0 }).verdict).toBe("workable");
  });
});

describe("limits", () => {
  const small = (more: Partial<Board>, a: Card = whole) =>
    asked(smallClub({ bus: dma, board: { ...spellOutBoard(board), ...more }, cards: [{ ...a, chain: "passes" }], asWritten: true }), [
      { card: "a", slot: "S1" },
    ]);
  const slots = (more: object) => ({
    slots: [{ id: "S1", edge: "edge", position: 1, longest_mm: "any" as const, highest_mm: "any" as const, ...more }],
  });
  const rails = (more: object) => ({ rails: [{ rail: "+5", limit_A: 10, board_A: 0, ...more }] });

  it.each([
    ["how long a card the slot takes", slots({ longest_mm: undefined }), slots({ longest_mm: 100 }), slots({ longest_mm: 99 })],
    ["how high a card the slot takes", slots({ highest_mm: undefined }), slots({ highest_mm: "any" }), slots({ highest_mm: 99 })],
    ["what one card may take", rails({}), rails({ per_slot_A: "any" }), rails({ per_slot_A: 0.9 })],
    ["what the supply gives in all", { total_W: undefined }, { total_W: 5 }, { total_W: 4.9 }],
  ] as const)("%s: left out is not known, any is any", (_, left, enough, short) => {
    expect([small(left as Partial<Board>), small(enough as Partial<Board>), small(short as Partial<Board>)].map((a) => a.verdict)).toEqual([
      "unknown",
      "workable",
      "ruled-out",
    ]);
  });

  it("in all, ask nothing of a card that takes no current", () => {
    expect(small({ total_W: undefined } as unknown as Partial<Board>, { ...whole, power: [{ rail: "+5", worst_A: 0 }] }).verdict).toBe(
      "workable",
    );
  });
});

describe("the priority chain", () => {
  const chained = { ...dma, chains: [{ id: "G", name: "grant chain" }] };
  const along = (...slots: string[]): Partial<Board> => ({ chains: [{ chain: "G", slots, empty: "passes" }] });
  const verdict = (a: Card["chain"], b: Card["chain"], more: Partial<Board> = along("S1", "S2"), on: Records["bus"] = chained) =>
    asked(
      smallClub({
        bus: on!,
        board: { ...spellOutBoard(board), ...more },
        cards: [
          { ...whole, chain: a },
          { ...whole, id: "b", name: "Card B", chain: b },
        ] as Card[],
        asWritten: true,
      }),
      [
        { card: "a", slot: "S1" },
        { card: "b", slot: "S2" },
      ],
    ).verdict;

  it("hangs on a silent card where another that uses it stands behind, or where it may use it itself", () => {
    expect(verdict("passes", "uses")).toBe("workable");
    expect(verdict("breaks", "uses")).toBe("ruled-out");
    expect(verdict(undefined, "uses")).toBe("unknown");
    expect(verdict("breaks", undefined)).toBe("unknown");
    expect(verdict("uses", undefined)).toBe("workable");
    expect(verdict(undefined, "passes")).toBe("workable");
  });

  it("asks nothing where the bus has none, and is open for a silent card off it", () => {
    expect(verdict(undefined, undefined, {}, dma)).toBe("workable");
    expect(verdict("passes", undefined, along("S1"))).toBe("unknown");
    expect(verdict("passes", "uses", along("S1"))).toBe("ruled-out");
  });
});
