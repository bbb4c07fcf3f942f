// What would help, and how much of it was tried: two modes for more than two cards, no way out that gives up what was asked about, and no
// list called complete that was not searched to its end.
import { describe, expect, it } from "vitest";
import type { Catalogue } from "../../src/catalogue/index.js";
import { withSecondMode } from "../../src/machine/index.js";
import { findWhyNot } from "../../src/planner/worker/why-not.js";
import { beforeYouBuy, plan, type Repair, reasonsSentence, repairsSentence } from "../../src/planning/index.js";
import type { Build, Card } from "../../src/records/index.js";
import { demo } from "../support/demo.js";
import { Random } from "../support/solver/random.js";
import { asked, card, smallClub, tested } from "./support/small-club.js";

const [tracer, gannet, plover] = ["tallow-bus-tracer", "gannet-fixed-disk-controller", "plover-tape-interface"];
const planned = (catalogue: Catalogue, build: Build) => {
  const answer = plan(catalogue, build);
  if (answer.kind !== "answer") throw new Error(answer.faults.map((f) => f.says).join(" "));
  return answer;
};
const question = (board: string, cards: Build["cards"], more: Partial<Build> = {}): Build => ({
  id: "q",
  name: "Question",
  board,
  cards,
  ...more,
});
const givenUp = (repairs: readonly Repair[]) => repairs.flatMap((r) => r.gives.map((g) => g.id));

/** A card that a switch can turn off, under these versions only. */
function switched(id: string, only: string[]): Card {
  return card(id, {
    needs: { firmware: [{ family: "line", only }] },
    enable: { by: "contacts", sense: "open-enables", points: [{ id: "P1", role: "a" }], releases: ["io", "memory", "firmware"] },
  });
}

describe("three cards for one knob", () => {
  it("are run in two ways, with one switch or by hand, one against two", () => {
    const answer = planned(demo(), question("skerry-16t", [{ card: tracer }, { card: gannet }, { card: plover }]));
    expect(answer.verdict).toBe("ruled-out");
    expect(answer.repairs.slice(0, 2).map((r) => [r.kind, r.says])).toEqual([
      [
        "ways",
        "Two ways and one switch: R4 or R4A with Tallow bus tracer; R5.1 with Gannet fixed-disk controller and Plover tape interface.",
      ],
      [
        "by-hand",
        "Two ways changed over by hand, four things to do each time: R4 with Tallow bus tracer; R5.1 with Gannet fixed-disk controller and Plover tape interface.",
      ],
    ]);
    const [two, hand] = answer.repairs;
    // The steps by hand, with the machine as it stands in each of the two.
    const { ways, changes } = hand!.lid!;
    expect(ways.map((w) => w.title)).toEqual([
      "R4 with Tallow bus tracer",
      "R5.1 with Gannet fixed-disk controller and Plover tape interface",
    ]);
    expect(ways.map((w) => w.cards.map((c) => / in S\d/.test(c) && c.endsWith(", off")))).toEqual([
      [false, true, true],
      [true, false, false],
    ]);
    expect(changes.map((c) => c.title)).toEqual([
      `From ${ways[0]!.title} to ${ways[1]!.title}`,
      `From ${ways[1]!.title} to ${ways[0]!.title}`,
    ]);
    for (const { steps } of changes) {
      expect(steps.length).toBe(4 + 2);
      expect(steps[0]).toBe("Switch off and pull the mains plug.");
      expect(steps.at(-1)).toMatch(/^Plug in, switch on, and see that R/);
    }
    expect((two!.build as Build).modes?.map((m) => m.cards)).toEqual([[tracer], [gannet, plover]]);
    expect(planned(demo(), two!.build as Build)).toMatchObject({ verdict: two!.verdict, count: two!.count });
    expect(answer.repairsComplete).toEqual({ givingUp: "all", twoModes: "no-help", moreModes: "no-help", ways: "all" });
    expect(repairsSentence(answer)).toMatch(/No fewer ways with a switch would do\.$/);
  });

  it("that need three ways are given three", () => {
    const catalogue = smallClub({ cards: [switched("a", ["V1"]), switched("b", ["V2"]), switched("c", ["V3"])] });
    const build = question("board", [{ card: "a" }, { card: "b" }, { card: "c" }]);
    const answer = planned(catalogue, build);
    expect(answer.repairs.map((r) => r.kind)).toEqual(["ways", "by-hand", "drop", "drop", "drop"]);
    expect(answer.repairs[0]?.says).toBe("Three ways and one switch: V1 with Card A; V2 with Card B; V3 with Card C.");
    expect(answer.repairsComplete).toEqual({ givingUp: "all", twoModes: "no-help", moreModes: "no-help", ways: "all" });
    expect(planned(catalogue, answer.repairs[0]!.build as Build).verdict).toBe("workable");
  });

  it("that no switch can turn off: nothing is said of a switch, and they are changed over by hand", () => {
    const [a, b] = [switched("a", ["V1"]), switched("b", ["V2"])].map(({ enable: _, ...rest }) => rest);
    const answer = planned(smallClub({ cards: [a!, b!] }), question("board", [{ card: "a" }, { card: "b" }]));
    expect(answer.repairsComplete).toEqual({ givingUp: "all", twoModes: "no-help", moreModes: "no-help", ways: "no-help" });
    expect(answer.repairs[0]).toMatchObject({
      kind: "by-hand",
      verdict: "workable",
      says: "Two ways changed over by hand, three things to do each time: V1 with Card A; V2 with Card B.",
    });
    expect(repairsSentence(answer)).toBe("No other smallest set of choices to give up would help.");
  });

  it("the version chosen stays in one of the ways; where it cannot, giving it up is said", () => {
    const catalogue = smallClub({ cards: [switched("a", ["V1"]), switched("b", ["V2"])] });
    const under = (firmware: string) =>
      planned(catalogue, question("board", [{ card: "a" }, { card: "b" }], { modes: [{ id: "m", firmware }] })).repairs.filter(
        (r) => r.kind === "ways",
      );
    expect(givenUp(under("V2"))).toEqual([]);
    expect(under("V2").map((r) => (r.build as Build).modes?.map((m) => m.firmware))).toEqual([[undefined, "V2"]]);
    expect(givenUp(under("V3"))).toEqual(["firmware:m"]);
    expect(under("V3").map((r) => r.says)).toEqual(["Instead of Line V3: two ways and one switch: V1 with Card A; V2 with Card B."]);
  });
});

describe("a mode of several that is run as two", () => {
  it("is offered where one of the modes cannot be, and three modes are not said to have been tried", () => {
    const catalogue = smallClub({ cards: ["a", "b", "c"].map((id, at) => switched(id, [`V${at + 1}`])) });
    const modes = [
      { id: "both", cards: ["a", "b"] },
      { id: "other", cards: ["c"] },
    ];
    const answer = planned(catalogue, question("board", [{ card: "a" }, { card: "b" }, { card: "c" }], { modes }));
    const second = answer.repairs.filter((r) => r.kind === "second-mode");
    expect(second.map((r) => (r.build as Build).modes?.map((m) => m.cards))).toEqual([[["b"], ["a"], ["c"]]]);
    expect(answer.repairsComplete).toEqual({ givingUp: "all", twoModes: "all", moreModes: "no-help", ways: "no-help" });
  });
});

describe("one of two modes run as two, against every way to share its cards out", () => {
  const idle = { id: "idle", cards: [] };

  /** A few cards that fight over ports and firmware, most of them switchable, in one mode, on a board that may have a chain; in a second mode nothing is on. */
  function randomFight(seed: number): { readonly catalogue: Catalogue; readonly build: Build; readonly free: readonly string[] } {
    const r = new Random(seed);
    const ids = ["a", "b", "c", "d"].slice(0, r.int(2, 4));
    const cards = ids.map((id) => ({
      ...switched(id, r.some(["V1", "V2", "V3"], 0.6)),
      settings: [],
      claims: [{ io: [{ base: r.int(0, 3) * 8, size: 8 }] }],
      ...(r.next() < 0.2 ? { enable: undefined } : {}),
      ...(r.next() < 0.1 ? { chain: "breaks" as const } : {}),
    }));
    const needy =
      r.next() < 0.2 ? cards.map((c, i) => (i === 0 ? { ...c, needs: { ...c.needs, cards: [{ any_of: ["b"], why: "w" }] } } : c)) : cards;
    const chain = r.next() < 0.2 ? { chains: [{ chain: "G", slots: ["S1", "S2", "S3", "S4"], empty: "breaks" as const }] } : {};
    return {
      catalogue: smallClub({ cards: needy as Card[], board: chain }),
      build: question(
        "board",
        ids.map((id) => ({ card: id })),
        {
          modes: [{ id: "m", ...(r.next() < 0.3 ? { firmware: r.pick(["V1", "V2", "V3"]) } : {}) }, idle],
        },
      ),
      free: needy.filter((c) => c.enable).map((c) => c.id),
    };
  }

  /** Every smallest split that works, by brute force: each card on in both, off in the first, or off in the second. */
  function smallest(catalogue: Catalogue, build: Build, free: readonly string[]): string[] {
    const splits = free.reduce<{ first: string[]; second: string[] }[]>(
      (all, as) => all.flatMap((s) => [s, { ...s, first: [...s.first, as] }, { ...s, second: [...s.second, as] }]),
      [{ first: [], second: [] }],
    );
    const pin = build.modes?.[0]?.firmware;
    const can = (b: Build) => planned(catalogue, b).verdict !== "ruled-out";
    const otherVersion = pin !== undefined && can({ ...build, modes: [{ id: "m" }, idle] });
    const inside = (a: readonly string[], b: readonly string[]) => a.every((x) => b.includes(x));
    const inSplit = (a: (typeof splits)[number], b: (typeof splits)[number]) => inside(a.first, b.first) && inside(a.second, b.second);
    const least = (good: typeof splits, unless: typeof splits) =>
      good.filter((w) => !good.some((o) => o !== w && inSplit(o, w)) && !unless.some((o) => inSplit(o, w)));
    const split = (first: readonly string[], second: readonly string[]) => withSecondMode(build, "m", first, second);
    // With a version chosen, it is kept in the first mode; then the second may have every card on. No mode has nothing on.
    const keeping = splits.filter(({ first, second }) => {
      const { modes, ...rest } = split(first, second);
      const some = first.length > 0 && first.length < build.cards.length;
      return pin !== undefined && some && can({ ...rest, modes: (modes ?? []).map((m, i) => (i === 0 ? { ...m, firmware: pin } : m)) });
    });
    const neither = splits.filter(
      ({ first, second }) => first.length > 0 && second.length > 0 && !otherVersion && can(split(first, second)),
    );
    const both = keeping.flatMap((k) => [k, { first: k.second, second: k.first }]);
    const kept = least(keeping, []).map((s) => JSON.stringify(["kept", s.first, s.second]));
    return [...new Set([...kept, ...least(neither, both).map((s) => JSON.stringify(["free", ...[s.first, s.second].sort()]))])].sort();
  }

  it("finds the smallest ones, all where it says all", () => {
    const seen = { all: 0, found: 0, none: 0, longer: 0 };
    for (let seed = 1; seed <= (process.env.LONG ? 5_000 : 120); seed++) {
      const { catalogue, build, free } = randomFight(seed);
      const before = planned(catalogue, build);
      if (before.verdict !== "ruled-out") continue;
      const told = before.repairs
        .filter((r) => r.kind === "second-mode")
        .map((r) => {
          const { modes = [] } = r.build as Build;
          const off = modes.slice(0, 2).map((m) => build.cards.map((c) => c.card).filter((as) => !m.cards?.includes(as)));
          return JSON.stringify(modes[0]?.firmware ? ["kept", ...off] : ["free", ...off.sort()]);
        });
      const expected = smallest(catalogue, build, free);
      if (before.repairsComplete.twoModes === "some") for (const t of told) expect(expected, `seed ${seed}`).toContain(t);
      else expect(told.sort(), `seed ${seed}`).toEqual(expected);
      if (before.repairsComplete.twoModes === "all") seen.all++;
      seen[told.length > 0 ? "found" : "none"]++;
      if (told.some((t) => JSON.parse(t).slice(1).flat().length > 2)) seen.longer++;
    }
    for (const count of Object.values(seen)) expect(count, JSON.stringify(seen)).toBeGreaterThan(2);
  });
});

describe("a way out that gives up what was asked about is none", () => {
  it("a value of a card that cannot be: no way out leaves the card out or takes the value back", () => {
    const build = question("skerry-16t", [{ card: tracer }, { card: gannet }], {
      modes: [
        { id: "trace", cards: [tracer] },
        { id: "daily", cards: [gannet] },
      ],
    });
    const slots = planned(demo(), build).possible.find((c) => c.id === `slot:${gannet}`)!;
    const no = slots.values.filter((v) => v.verdict === "ruled-out").map((v) => v.value);
    expect(no.length).toBeGreaterThan(0);
    for (const slot of no) {
      const why = findWhyNot(demo(), build, `slot:${gannet}`, slot);
      if (why.kind !== "why-not") throw new Error("misasked");
      expect(why.reasons.length, slot).toBeGreaterThan(0);
      expect(givenUp(why.repairs), slot).not.toContain(`card:${gannet}`);
      expect(givenUp(why.repairs), slot).not.toContain(`slot:${gannet}`);
    }
  });

  it("a version for a mode: no way out gives up the mode, nor runs two modes without that version", () => {
    const catalogue = smallClub({ cards: [switched("a", ["V1"]), switched("b", ["V2"])] });
    const build = question("board", [{ card: "a" }, { card: "b" }], {
      modes: [
        { id: "m", cards: ["a"] },
        { id: "n", cards: ["b"] },
      ],
    });
    const why = findWhyNot(catalogue, build, "firmware:m", "V3");
    if (why.kind !== "why-not") throw new Error("misasked");
    expect(givenUp(why.repairs)).toEqual(["card:a"]);
  });

  it("a card to buy is in the machine in every way out", () => {
    const machine = question("skerry-16t", [{ card: tracer, slot: "S3" }], { revision: "D1", modes: [{ id: "m", firmware: "R4A" }] });
    const purchase = beforeYouBuy(demo(), machine, gannet);
    if (purchase.kind !== "purchase") throw new Error("misasked");
    expect(purchase.verdict).toBe("ruled-out");
    expect(purchase.repairs.length).toBeGreaterThan(0);
    for (const r of purchase.repairs)
      if (r.kind === "by-hand") expect(r.says).toContain("Gannet fixed-disk controller");
      else expect((r.build as Build).cards.map((c) => c.card)).toContain(gannet);
  });

  it("the only card asked about is not left out, nor all of several", () => {
    const catalogue = smallClub({ cards: [switched("a", ["V1"])] });
    const alone = planned(catalogue, question("board", [{ card: "a" }], { modes: [{ id: "m", firmware: "V2" }] }));
    expect(givenUp(alone.repairs)).toEqual(["firmware:m"]);
    const never = planned(
      smallClub({ cards: [card("a", { bus: "other" }), card("b", { bus: "other" })] }),
      question("board", [{ card: "a" }, { card: "b" }]),
    );
    expect([never.verdict, never.repairs]).toEqual(["ruled-out", []]);
    expect(repairsSentence(never)).toBe("No choice could be given up to make it work.");
  });
});

describe("what would have to be got", () => {
  const versions = ["R4", "R5", "R5.1"].map((id) => ({ id, image: { size: "64K", crc32: "unknown" as const } }));
  const needs = (only: string): NonNullable<Card["needs"]> => ({ firmware: [{ family: "line", only: [only] }] });
  const off = switched("x", []).enable!;

  it("names R5 and R5.1 when both are lacking", () => {
    const catalogue = smallClub({
      firmware: { versions },
      cards: [card("a", { needs: needs("R5"), enable: off }), card("b", { needs: { ...needs("R5.1"), other: ["A cable."] }, enable: off })],
    });
    const machine = tested("q", [{ card: "a", slot: "S1" }], {
      at_hand: { firmware: ["R4"] },
      modes: [
        { id: "five", cards: ["a"] },
        { id: "later", cards: [] },
      ],
    });
    // The new card is on in every mode; here it is to be on in the second alone.
    const both = { ...machine, cards: [...machine.cards, { card: "b" }], modes: [machine.modes![0]!, { id: "later", cards: ["b"] }] };
    const told = planned(catalogue, both).combinations[0]!;
    expect(told.conditions.map((c) => c.get)).toEqual([
      { kind: "firmware", id: "line", version: "R5" },
      { kind: "firmware", id: "line", version: "R5.1" },
    ]);
    expect(told.alsoNeeded).toEqual([{ as: "b", says: "A cable.", refs: [{ kind: "card", id: "b", pointer: "/needs/other/0" }] }]);
  });

  it("lists a version whose name is within the card's own, and a thing of two conditions once", () => {
    const remedy = { says: "Fit pull-ups.", leaves: "nothing", costs: "part", part: "pull-up" } as const;
    const conflict = (id: string) => ({
      id,
      name: id,
      class: "timing" as const,
      when: { cards: [{ card: "b" }] },
      effect: "blocks" as const,
      symptoms: ["s"],
      cause: "c",
      remedies: [remedy],
      status: "confirmed" as const,
      evidence: [{ grade: "bench" as const, says: "e" }],
    });
    const catalogue = smallClub({
      firmware: { versions, name: "Line" },
      cards: [card("a"), card("b", { name: "Line R5", needs: needs("R5.1") })],
      conflicts: [conflict("k1"), conflict("k2")],
    });
    const purchase = beforeYouBuy(catalogue, question("board", [{ card: "a" }], { at_hand: { firmware: ["R4"] } }), "b");
    if (purchase.kind !== "purchase") throw new Error("misasked");
    expect(purchase.shopping.map((s) => s.get)).toEqual([
      { kind: "card", id: "b" },
      { kind: "part", id: "pull-up" },
      { kind: "firmware", id: "line", version: "R5.1" },
    ]);
  });
});

describe("all the reasons", () => {
  it("are claimed only where no other facts exclude the same choices", () => {
    const one = asked(smallClub({ cards: [switched("a", ["V1"])] }), [{ card: "a", slot: "S1" }]);
    expect(one.reasons.map((r) => r.moreFacts)).toEqual(["no"]);
    expect(reasonsSentence(one)).toBe("These are all the reasons.");
    const two = asked(smallClub({ cards: [card("a", { bus: "other", needs: { boards: [{ board: "elsewhere" }] } })] }), [
      { card: "a", slot: "S1" },
    ]);
    expect(two.reasons.map((r) => r.moreFacts)).toContain("yes");
    expect(reasonsSentence(two)).toBe("Nothing else that was chosen stands in the way, but more facts do than those named.");
  });
});
