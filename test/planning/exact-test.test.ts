// What an exact, dated, working test proves: that machine, as it was. Missing figures and suspicions do not hold it back and are told all the
// same; whatever differs in one respect is judged as if the test did not exist.
import { describe, expect, it } from "vitest";
import { type Catalogue, gather } from "../../src/catalogue/index.js";
import { plan } from "../../src/planning/index.js";
import type { Build, Card, Conflict, Loaded } from "../../src/records/index.js";
import { demo } from "../support/demo.js";
import { asked, card, type Records, smallClub, tested } from "./support/small-club.js";

const unweighed = card("a", { power: [{ rail: "+5", worst_A: "unknown" }] });
const b = card("b");
const [inS1, inS2] = [
  { card: "a", slot: "S1" },
  { card: "b", slot: "S2" },
] as const;
const suspicion: Conflict = {
  id: "hearsay",
  name: "Hearsay",
  class: "timing",
  when: { cards: [{ card: "a" }] },
  effect: "blocks",
  symptoms: ["No picture."],
  cause: "Not known.",
  status: "suspected",
  settle: "Try it.",
  evidence: [{ grade: "reported", says: "Somebody said so." }],
};
const club = (records: Records) => smallClub({ cards: [unweighed, b], ...records });
const verdictOf = (records: Records, cards = [inS1, inS2] as Parameters<typeof asked>[1], more?: Partial<Build>) =>
  asked(club(records), cards, more).verdict;

describe("a machine that was tested exactly so", () => {
  const it1 = { builds: [tested("ran", [inS1, inS2])] };

  it("works although a current is not written down, and the current is told", () => {
    expect(verdictOf({})).toBe("unknown");
    const answer = asked(club(it1), [inS1, inS2]);
    expect([answer.verdict, answer.count, answer.hanging]).toEqual(["workable", "1", "0"]);
    const [best] = answer.combinations;
    expect(best?.exactTest).toMatchObject({ build: "ran", by: "Ada", date: "2019-05" });
    expect(best?.exactTest?.notWritten.flatMap((u) => u.refs.map((r) => r.id))).toContain("a");
    expect(best?.unknowns).toEqual([]);
    expect(best?.rests[0]?.says).toContain("This very machine, set just so, ran on 2019-05 (Ada).");
    expect(answer.says).toContain("proven on the bench");
  });

  it("works although somebody suspects a conflict", () => {
    const plain = { cards: [card("a"), b], conflicts: [suspicion] };
    expect(verdictOf(plain)).toBe("unknown");
    expect(verdictOf({ ...plain, ...it1 })).toBe("workable");
  });

  it("is met by a board without a card too, and by that board alone", () => {
    const bare = { builds: [tested("bare", [])], conflicts: [{ ...suspicion, when: { boards: [{ board: "board" }] } }] };
    expect(verdictOf({ ...bare, builds: [] }, [])).toBe("unknown");
    const answer = asked(club(bare), []);
    expect([answer.verdict, answer.combinations[0]?.exactTest?.build, answer.combinations[0]?.evidence]).toEqual([
      "workable",
      "bare",
      "bench",
    ]);
    expect(verdictOf(bare, [], { revision: "C" })).toBe("unknown");
    expect(verdictOf(bare, [{ card: "b", slot: "S1" }])).toBe("unknown");
    expect(verdictOf({ ...bare, builds: [tested("ran", [inS1])] }, [])).toBe("unknown");
  });

  it("is one machine, counted once, however many tested it", () => {
    const twice = { builds: [tested("ran", [inS1, inS2]), tested("ran-again", [inS2, inS1])] };
    const answer = asked(club(twice), [inS1, inS2]);
    expect([answer.verdict, answer.count, answer.hanging]).toEqual(["workable", "1", "0"]);
  });

  it("is found among open choices, and the others stay not known", () => {
    const { result: _, ...open } = tested("question", []);
    const answer = plan(club(it1), { ...open, cards: [{ card: "a" }, { card: "b" }] });
    if (answer.kind !== "answer") throw new Error("misasked");
    // Two revisions, three versions, four slots less one, two positions each; one of them was tested. The named revision and version pin two.
    expect([answer.verdict, answer.count, answer.hanging]).toEqual(["workable", "1", String(4 * 3 * 4 - 1)]);
    expect(answer.combinations[0]?.cards.map((c) => c.slot)).toEqual(["S1", "S2"]);
  });

  it.each<[string, Build]>([
    ["another slot", tested("ran", [{ card: "a", slot: "S3" }, inS2])],
    ["another setting", tested("ran", [{ ...inS1, settings: { J1: "y" } } as never, inS2])],
    ["another board revision", tested("ran", [inS1, inS2], { revision: "C" })],
    ["other firmware", tested("ran", [inS1, inS2], { modes: [{ id: "always", firmware: "V1" }] })],
    ["one card more", tested("ran", [inS1, inS2, { card: "b", slot: "S3", as: "b2" }])],
    ["one card less", tested("ran", [inS1])],
    ["a card that was off", tested("ran", [inS1, inS2], { modes: [{ id: "always", firmware: "V2", cards: ["a"] }] })],
    ["a slot nobody wrote down", tested("ran", [{ card: "a" } as never, inS2])],
    [
      "a second mode",
      tested("ran", [inS1, inS2], {
        modes: [
          { id: "one", firmware: "V2" },
          { id: "two", firmware: "V2" },
        ],
      }),
    ],
    ["a failure", tested("ran", [inS1, inS2], { result: { by: "Ada", date: "2019-05", outcome: "failed" } })],
  ])("is another one with %s", (_what, build) => {
    expect(verdictOf({ builds: [build] })).toBe("unknown");
  });

  it("is not known to work when it failed on another bench", () => {
    const failed = tested("failed", [inS1, inS2], { result: { by: "Bo", date: "2020-01", outcome: "failed" } });
    expect(verdictOf({ builds: [...it1.builds, failed] })).toBe("unknown");
  });

  it("is another one with other memory, also where the board's record names no amounts", () => {
    const builds = [tested("ran", [inS1, inS2], { memory: "256K" })];
    const of = (memory: string) => asked(club({ builds }), [inS1, inS2], { memory });
    expect([of("256K").verdict, of("512K").verdict]).toEqual(["workable", "unknown"]);
    const c = card("c");
    const three = [inS1, inS2, { card: "c", slot: "S3" }] as const;
    const known = { cards: [card("a"), b, c], builds: [tested("ran", three, { memory: "256K" })] };
    const sure = (memory: string) => asked(smallClub(known), three, { memory }).combinations[0]?.evidence;
    expect([sure("256K"), sure("512K")]).toEqual(["bench", "inferred"]);
  });

  it("does not outweigh a confirmed conflict", () => {
    const confirmed: Conflict = { ...suspicion, status: "confirmed" };
    expect(verdictOf({ ...it1, conflicts: [confirmed] })).toBe("ruled-out");
  });

  it("with two copies is the same whichever copy is called what", () => {
    const copies = [
      { card: "a", as: "left", slot: "S1" },
      { card: "a", as: "right", slot: "S2" },
    ] as const;
    const turned = [
      { card: "a", as: "one", slot: "S2" },
      { card: "a", as: "two", slot: "S1" },
    ] as const;
    expect(verdictOf({ builds: [tested("ran", copies)] }, turned)).toBe("workable");
    expect(verdictOf({ builds: [tested("ran", copies, { modes: [{ id: "always", firmware: "V2", cards: ["left"] }] })] }, turned)).toBe(
      "unknown",
    );
  });
});

describe("a machine with five and more copies of a card", () => {
  const letters = ["p", "q", "r", "s", "t", "u"];
  const slots = letters.map((_, n) => ({ id: `S${n + 1}`, edge: "edge", position: n + 1 }));
  const roomy = { board: { slots } };
  /** Copies with names of their own, at J1 x and y by turns, in these slots. */
  const copies = (places: readonly string[], from = 0) =>
    places.map((slot, n) => ({ card: "a", as: letters[n + from] ?? "", slot, settings: { J1: n % 2 === 0 ? "x" : "y" } }));
  const places = (n: number) => slots.slice(0, n).map((s) => s.id);

  it.each([5, 6])("of %i is known to work as it was tested, and no other way", (n) => {
    const ran = tested("ran", copies(places(n)));
    expect(verdictOf(roomy, copies(places(n)))).toBe("unknown");
    expect(verdictOf({ ...roomy, builds: [ran] }, copies(places(n)))).toBe("workable");
    expect(verdictOf({ ...roomy, builds: [ran] }, copies(places(n).toReversed()))).toBe(n % 2 === 1 ? "workable" : "unknown");
  });

  it("is counted once for each way to call its copies by name", () => {
    const { result: _, ...ran } = tested("ran", copies(places(5)));
    const open = { ...ran, cards: ran.cards.map(({ card, as }) => ({ card, ...(as ? { as } : {}) })) };
    const answer = plan(club({ ...roomy, builds: [tested("ran", copies(places(5)))] }), open);
    if (answer.kind !== "answer") throw new Error("misasked");
    expect([answer.verdict, answer.count]).toEqual(["workable", "120"]);
    expect(answer.combinations[0]?.exactTest?.build).toBe("ran");
  });

  it("is not known to work when it failed on another bench, its copies told in another order", () => {
    const failed = tested("failed", copies(places(5)).toReversed(), { result: { by: "Bo", date: "2020-01", outcome: "failed" } });
    expect(verdictOf({ ...roomy, builds: [tested("ran", copies(places(5))), failed] }, copies(places(5)))).toBe("unknown");
  });

  it("was tested with the copies on that were on, not with others", () => {
    const modes = (cards: readonly string[]) => ({ modes: [{ id: "always", firmware: "V2", cards: [...cards] }] });
    const ran = tested("ran", copies(places(5)), modes(["p", "q"]));
    expect(verdictOf({ ...roomy, builds: [ran] }, copies(places(5)), modes(["p", "q"]))).toBe("workable");
    expect(verdictOf({ ...roomy, builds: [ran] }, copies(places(5)), modes(["p", "s"]))).toBe("unknown");
  });

  it("is not called untested when its copies are pinned to what the test had", () => {
    const known = { cards: [card("a")], board: { slots } };
    const ran = tested("ran", copies(places(5)));
    const pinned = copies(places(5).toReversed()).map((c) => ({ ...c, settings: {} }));
    const answer = asked(smallClub({ ...known, builds: [ran] }), pinned);
    expect(answer.combinations[0]?.evidence).toBe("bench");
  });
});

describe("what was seen working comes first", () => {
  it("though it has a note that an untried way lacks", () => {
    const note: Conflict = {
      ...suspicion,
      effect: "cosmetic",
      status: "suspected",
      when: { cards: [{ card: "a", settings: { J1: "x" } }] },
    };
    const records = { cards: [card("a"), b], builds: [tested("ran", [inS1, inS2])], conflicts: [note] };
    const { result: _, ...question } = tested("question", []);
    const answer = plan(smallClub(records), { ...question, cards: [{ card: "a" }, { card: "b" }] });
    if (answer.kind !== "answer") throw new Error("misasked");
    expect(answer.combinations[0]?.evidence).toBe("bench");
    expect(answer.says).not.toContain("nobody has tested");
  });
});

describe("the demo club", () => {
  const changed = (id: string, change: (c: Card) => Card): Catalogue => {
    const { boards, buses, firmware, cards, conflicts, builds, parts } = demo();
    const of = (kind: string, list: Iterable<object>) => [...list].map((record) => ({ kind, record, file: "" }) as unknown as Loaded);
    const own = [...cards.values()].map((c) => (c.id === id ? change(c) : c));
    const rest = [...of("bus", buses.values()), ...of("board", boards.values()), ...of("firmware", firmware.values())];
    return gather([
      ...rest,
      ...of("card", own),
      ...of("conflict", conflicts.values()),
      ...of("build", builds.values()),
      ...of("part", parts.values()),
    ]);
  };

  it("knows its backup machine to work when a current goes missing, and no other setting of it", () => {
    const catalogue = changed("plover-tape-interface", (c) => ({
      ...c,
      power: c.power.map((p) => ({ ...p, worst_A: "unknown" as const })),
    }));
    const { result: _, ...machine } = demo().builds.get("gannet-plover-r51-16t-d1")!;
    const same = plan(catalogue, machine);
    const before = plan(demo(), machine);
    if (same.kind !== "answer" || before.kind !== "answer") throw new Error("misasked");
    expect(before.verdict).not.toBe("unknown");
    expect(same.verdict).toBe(before.verdict);
    expect(same.combinations[0]?.exactTest?.build).toMatch(/^gannet-plover-r51-16t-d1/);
    const moved = machine.cards.map((c) => (c.card === "plover-tape-interface" ? { ...c, slot: "S3" } : c));
    const other = plan(catalogue, { ...machine, cards: moved });
    if (other.kind !== "answer") throw new Error("misasked");
    expect(other.verdict).toBe("unknown");
  });
});
