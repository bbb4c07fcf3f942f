// Two of one card in a machine: which of them a mode has on, which was tested, which stands already, and how they are told apart.
import { describe, expect, it } from "vitest";
import { compile } from "../../src/encoding/index.js";
import { resolveBuild, withChoice } from "../../src/machine/index.js";
import { type Answer, beforeYouBuy, countsOf, plan } from "../../src/planning/index.js";
import type { Build, BuildCard } from "../../src/records/index.js";
import { demo } from "../support/demo.js";
import { asked, card, smallClub, tested } from "./support/small-club.js";

const loop = "lightship-loop-interface";
const answer = (build: Build, catalogue = demo()): Answer => {
  const a = plan(catalogue, build);
  if (a.kind !== "answer") throw new Error(a.faults[0]!.says);
  return a;
};
const two = (first: BuildCard, second: BuildCard, one: readonly string[], other: readonly string[]): Build => ({
  id: "two-loops",
  name: "Two loops",
  board: "skerry-24",
  cards: [first, second],
  modes: [
    { id: "one", cards: [...one] },
    { id: "two", cards: [...other] },
  ],
});
const unnamed = two({ card: loop }, { card: loop, as: "second" }, [loop], ["second"]);
const named = two({ card: loop, as: "left" }, { card: loop, as: "second" }, ["left"], ["second"]);
const facts = ({ verdict, count, hanging, reasons, repairs, combinations }: Answer) => ({
  verdict,
  count,
  hanging,
  reasons: reasons.length,
  repairs: repairs.length,
  modes: combinations.map((c) => c.modes.map((m) => m.enabled.length)),
  places: combinations.map((c) => c.cards.map((p) => [p.slot, p.settings])),
});

describe("a mode that names the first of two copies", () => {
  it("is answered as when that copy has a name of its own", () => {
    const [a, b] = [answer(unnamed), answer(named)];
    expect(facts(a)).toEqual(facts(b));
    expect(a.verdict).not.toBe("ruled-out");
    expect(a.combinations[0]!.modes.map((m) => m.enabled)).toEqual([[loop], ["second"]]);
  });

  it("goes on naming it when the second is taken out", () => {
    const alone = answer(withChoice(unnamed, "card:second", undefined));
    expect(alone.combinations[0]!.modes.map((m) => m.enabled)).toEqual([[loop], []]);
  });

  it("means every copy only when no copy is called by the card's id", () => {
    const both = answer(two({ card: loop, as: "left" }, { card: loop, as: "right" }, [loop], []));
    const apart = answer(two({ card: loop, as: "left" }, { card: loop, as: "right" }, ["left", "right"], []));
    expect(facts(both)).toEqual(facts(apart));
    expect(both.verdict).toBe("ruled-out");
  });
});

describe("two copies in one mode", () => {
  const { modes: _, ...together } = unnamed;
  const none = answer(together);

  it("are told apart in reasons, repairs and choices", () => {
    expect(none.verdict).toBe("ruled-out");
    for (const reason of none.reasons) expect(new Set(reason.choices.map((c) => c.says)).size, reason.says).toBe(reason.choices.length);
    const said = [...none.reasons.flatMap((r) => [r.says, ...r.facts.map((f) => f.says)]), ...none.repairs.map((r) => r.says)];
    expect(new Set(none.repairs.map((r) => r.says)).size).toBe(none.repairs.length);
    expect(said.join("\n")).toMatch(/Lightship loop interface \(first\) and Lightship loop interface \(second\)/);
    expect(none.repairs.map((r) => r.says)).toContain("Leave out Lightship loop interface (second).");
    const labels = none.possible.map((p) => p.label);
    expect(new Set(labels).size).toBe(labels.length);
  });

  it("can be run in two modes, and one alone is called by its plain name", () => {
    const second = none.repairs.find((r) => r.kind === "ways");
    expect(second?.says).toMatch(/with Lightship loop interface \(second\); .* with Lightship loop interface \(first\)\.$/);
    const build = second!.build as Build;
    expect(build.modes!.map((m) => m.cards).sort()).toEqual([[loop], ["second"]]);
    const alone = answer({ ...together, cards: [{ card: loop, as: "second" }] });
    expect(alone.possible.map((p) => p.label)).toContain("Slot of Lightship loop interface");
    expect(JSON.stringify(alone)).not.toContain("(second)");
  });
});

describe("a test of two copies", () => {
  const club = (...cards: { card: string; slot: string; as?: string }[]) =>
    smallClub({ cards: [card("a"), card("b")], builds: [tested("seen", cards)] });

  it("proves them in whichever order they are named", () => {
    const seen = club({ card: "a", slot: "S1", as: "x" }, { card: "a", slot: "S2", as: "y" });
    const best = asked(seen, [
      { card: "a", slot: "S2" },
      { card: "a", slot: "S1", as: "other" },
    ]).combinations[0]!;
    expect(best.evidence).toBe("bench");
    expect(best.nearMatches).toEqual([]);
    const open = plan(seen, {
      id: "q",
      name: "Q",
      board: "board",
      cards: [{ card: "a" }, { card: "a", as: "other" }],
      modes: [{ id: "m", firmware: "V2" }],
    });
    if (open.kind !== "answer") throw new Error("not asked");
    expect(open.combinations[0]!.evidence).toBe("bench");
  });

  it("proves the copy that was on, whichever it was", () => {
    const seen = smallClub({
      cards: [card("a", { enable: { by: "contacts", releases: ["io", "memory"] } })],
      builds: [
        tested(
          "seen",
          [
            { card: "a", slot: "S1" },
            { card: "a", slot: "S2", as: "second" },
          ],
          {
            modes: [{ id: "always", firmware: "V2", cards: ["a"] }],
          },
        ),
      ],
    });
    const cards = [
      { card: "a", slot: "S2" },
      { card: "a", slot: "S1", as: "second" },
    ];
    const under = (on: string) => asked(seen, cards, { modes: [{ id: "m", firmware: "V2", cards: [on] }] }).combinations[0]!.evidence;
    // In the test the one in S1 was on: here that is the one called "second".
    expect(under("second")).toBe("bench");
    expect(under("a")).toBe("inferred");
  });

  it("that nearly matches is compared copy by copy, those in the same slot first", () => {
    const seen = club({ card: "a", slot: "S2", as: "x" }, { card: "a", slot: "S3", as: "y" });
    const best = asked(seen, [
      { card: "a", slot: "S1" },
      { card: "a", slot: "S2", as: "other" },
    ]).combinations[0]!;
    expect(best.nearMatches).toEqual([{ build: "seen", differs: "Card A (first) in S3" }]);
  });
});

describe("a second copy beside one that stands", () => {
  const club = smallClub({ cards: [card("a"), card("b")] });
  const build: Build = { id: "q", name: "Q", board: "board", revision: "D1", cards: [{ card: "a", slot: "S1", settings: { J1: "x" } }] };

  it("is new: only the one that stands is moved, and the new one is to be got", () => {
    const wish: Build = {
      ...build,
      cards: [
        { card: "a", slot: "S2" },
        { card: "a", as: "second", slot: "S3" },
      ],
      stands: { cards: [{ card: "a", slot: "S1" }] },
      at_hand: { cards: ["b"] },
    };
    const best = answer(wish, club).combinations[0]!;
    expect(best.changes.filter((c) => c.startsWith("move"))).toEqual(["move Card A (first) to S2"]);
    expect(best.conditions.filter((c) => c.kind === "to-get").map((c) => c.says)).toEqual(["Get Card A."]);
  });

  it("may be bought again and again", () => {
    const three: Build = { ...build, cards: [...build.cards, { card: "a", as: "a-2", slot: "S2" }] };
    const bought = beforeYouBuy(club, three, "a");
    if (bought.kind !== "purchase") throw new Error("not asked");
    expect(bought.best?.cards.map((c) => c.as)).toEqual(["a", "a-2", "a-3"]);
  });
});

describe("cards at hand are counted", () => {
  const club = smallClub({ cards: [card("a"), card("b")] });
  const three: Build = {
    id: "q",
    name: "Q",
    board: "board",
    revision: "D1",
    cards: [
      { card: "a", slot: "S1" },
      { card: "a", as: "second", slot: "S2" },
      { card: "a", as: "third", slot: "S3" },
    ],
  };
  const toGet = (more: Partial<Build>) =>
    answer({ ...three, ...more }, club).combinations[0]?.conditions.flatMap((c) => (c.kind === "to-get" ? [c.says] : []));

  it("one does not do for three, nor two", () => {
    expect(toGet({ at_hand: { cards: ["b"] } })).toEqual(["Get 3 of Card A."]);
    expect(toGet({ at_hand: { cards: ["a"] } })).toEqual(["Get 2 of Card A."]);
    expect(toGet({ at_hand: { cards: [{ card: "a", count: 2 }] } })).toEqual(["Get Card A."]);
    expect(toGet({ at_hand: { cards: ["a", { card: "a", count: 2 }] } })).toEqual([]);
  });

  it("beside those that stand in the machine", () => {
    const stands = { cards: [{ card: "a", slot: "S4" }] };
    expect(toGet({ stands, at_hand: { cards: ["a"] } })).toEqual(["Get Card A."]);
    expect(toGet({ stands, at_hand: { cards: [{ card: "a", count: 2 }] } })).toEqual([]);
  });
});

describe("a machine with everything off in one mode", () => {
  const gannet = "gannet-fixed-disk-controller";
  const build: Build = {
    id: "q",
    name: "Q",
    board: "skerry-16t",
    cards: [{ card: gannet }],
    modes: [
      { id: "safe", cards: [], safest: true },
      { id: "daily", cards: [gannet] },
    ],
  };
  it("is planned so, and no card is on in that mode", () => {
    const best = answer(build).combinations[0]!;
    expect(best.modes.map((m) => m.enabled)).toEqual([[], [gannet]]);
    expect(best.switched).toBe(true);
  });
});

describe("many copies of one card", () => {
  const standing = (count: number) => Array.from({ length: count }, (_, i) => ({ card: "a", as: `a${i + 1}`, slot: `S${i + 1}` }));
  const slots = [1, 2, 3, 4, 5, 6, 7, 8].map((n) => ({ id: `S${n}`, edge: "edge", position: n }));
  const club = (count: number) => {
    const builds = [tested("t1", standing(count)), tested("t2", standing(count))];
    return smallClub({ board: { slots, rails: [{ rail: "+5", limit_A: 100 }] }, cards: [card("a")], builds });
  };
  const open = (count: number): Build => {
    const cards = standing(count).map(({ card, as }) => ({ card, as }));
    return { id: "q", name: "q", board: "board", firmware: "line", cards };
  };

  it("are found as they were tested, six of them", () => {
    expect(answer(open(6), club(6)).combinations[0]!.evidence).toBe("bench");
  });

  it("are sifted by evidence: each tested place filled, whichever copy stands in which, 4! ways", () => {
    const asked = resolveBuild(club(4), open(4));
    if (asked.kind !== "question") throw new Error(asked.kind);
    const { kinds } = countsOf(compile(asked.question));
    expect(kinds.filter((k) => k.evidence === "bench" && k.count !== "0").map((k) => k.count)).toEqual(["24"]);
  });
});
