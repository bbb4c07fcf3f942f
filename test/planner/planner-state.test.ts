// What the planner's page remembers: moves that can be taken back in any order, addresses that hold a whole build, edits between builds.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { modesOf } from "../../src/catalogue/index.js";
import { addressOf, buildFrom, editsBetween, fillBuild, pinsOf, resolveBuild } from "../../src/machine/index.js";
import { blank, buildOf, type Move, notAtHand, type State, unpinned, withMove, without } from "../../src/planner/state/moves.js";
import { openedWith } from "../../src/planner/state/store.js";
import { idFrom } from "../../src/planner/ui/Share.js";
import { plan } from "../../src/planning/index.js";
import { type Build, bytes } from "../../src/records/index.js";
import { demo } from "../support/demo.js";

const catalogue = demo();
const builds = [...catalogue.builds.values()];
const made = (moves: readonly Move[], base: Build = blank): State => moves.reduce(withMove, { base, moves: [] });

const gannet = "gannet-fixed-disk-controller";
const tallow = "tallow-bus-tracer";
const moves: readonly Move[] = [
  { do: "board", board: "skerry-16t" },
  { do: "add", card: gannet },
  { do: "choose", id: `slot:${gannet}`, value: "S5" },
  { do: "choose", id: "revision", value: "D1" },
  { do: "add", card: tallow },
  { do: "have", what: "firmware", id: "R5" },
  { do: "choose", id: "firmware:always", value: "R5" },
];

describe("moves", () => {
  it("amount to a build", () => {
    expect(buildOf(made(moves))).toEqual({
      ...blank,
      board: "skerry-16t",
      revision: "D1",
      cards: [{ card: gannet, slot: "S5" }, { card: tallow }],
      modes: [{ id: "always", name: "Everyday", firmware: "R5" }],
      at_hand: { firmware: ["R5"] },
    });
  });

  it("are taken back in any order, each leaving the others as if it had never been made", () => {
    const state = made(moves);
    moves.forEach((_, at) => {
      expect(buildOf(without(state, at))).toEqual(buildOf(made(moves.filter((_m, i) => i !== at))));
    });
    fc.assert(
      fc.property(fc.shuffledSubarray([...moves.keys()], { minLength: 1 }), (order) => {
        let left = state;
        for (const at of order) left = without(left, left.moves.indexOf(moves[at]!));
        return JSON.stringify(buildOf(left)) === JSON.stringify(buildOf(made(moves.filter((_m, i) => !order.includes(i)))));
      }),
      { seed: 7, numRuns: 60 },
    );
  });

  it("say the last word on a thing once", () => {
    const state = made([...moves, { do: "choose", id: "revision", value: "C" }]);
    expect(buildOf(state).revision).toBe("C");
    expect(state.moves.filter((m) => m.do === "choose" && m.id === "revision")).toHaveLength(1);
  });

  it("forget the slots of a board that is changed, and keep the cards", () => {
    const build = buildOf(made([...moves, { do: "board", board: "skerry-24" }]));
    expect(build.board).toBe("skerry-24");
    expect(build.revision).toBeUndefined();
    expect(build.cards).toEqual([{ card: gannet }, { card: tallow }]);
  });

  it("choose a part for the switch and leave it to the plan again", () => {
    const state = made([...moves, { do: "switch", what: "switch", id: "rotary-3x4" }, { do: "switch", what: "cable", id: "ribbon-10" }]);
    expect(buildOf(state).switch).toEqual({ switch: "rotary-3x4", cable: "ribbon-10" });
    const open = withMove(withMove(state, { do: "switch", what: "switch", id: "" }), { do: "switch", what: "cable", id: "" });
    expect("switch" in buildOf(open)).toBe(false);
  });

  it("leave no trace of a card that is put in and taken out again", () => {
    const state = made([...moves, { do: "add", card: gannet }, { do: "drop", as: `${gannet}-2` }]);
    expect(state.moves).toEqual(moves);
    const bare = made([...moves, { do: "drop", as: gannet }]);
    expect(buildOf(bare).cards).toEqual([{ card: tallow }]);
    expect(bare.moves.some((m) => m.do === "choose" && m.id === `slot:${gannet}`)).toBe(false);
  });

  it("take a pin back wherever it came from: a move, a repair, or the build the page was opened with", () => {
    const opened: State = { base: { ...blank, board: "skerry-16t", revision: "D1", cards: [{ card: gannet, slot: "S4" }] }, moves: [] };
    expect(buildOf(unpinned(opened, `slot:${gannet}`)).cards).toEqual([{ card: gannet }]);
    const repaired = withMove(opened, {
      do: "all",
      says: "x",
      edits: [
        { pin: `slot:${gannet}`, value: "S6" },
        { pin: "memory", value: "655360" },
      ],
    });
    expect(pinsOf(buildOf(unpinned(repaired, `slot:${gannet}`))).has(`slot:${gannet}`)).toBe(false);
    expect(buildOf(unpinned(repaired, `slot:${gannet}`)).memory).toBe(655360);
  });

  it("take back what was at hand, and leave no empty list behind", () => {
    const opened: State = { base: { ...blank, at_hand: { parts: ["27c010"] } }, moves: [] };
    expect(buildOf(notAtHand(opened, "parts", "27c010"))).toEqual(blank);
  });
});

describe("edits between builds", () => {
  it("lead from any build of the club to any other on the same board", () => {
    const same = (a: Build, b: Build) => {
      const reached = buildOf({ base: a, moves: [{ do: "all", says: "", edits: editsBetween(a, b) }] });
      expect(pinsOf(reached)).toEqual(pinsOf(b));
      expect(new Set(reached.cards.map((c) => c.as ?? c.card))).toEqual(new Set(b.cards.map((c) => c.as ?? c.card)));
      // No modes, and the one mode in which all is on, are the same machine.
      expect(modesOf(reached).map((m) => m.id)).toEqual(modesOf(b).map((m) => m.id));
    };
    const some = builds.filter((b) => b.board === "skerry-16t" && new Set(b.cards.map((c) => c.card)).size === b.cards.length);
    expect(some.length).toBeGreaterThan(20);
    for (const [i, a] of some.entries()) same(a, some[(i * 7 + 3) % some.length]!);
  });

  it("are those of a repair, and stand when an earlier move is taken back", () => {
    const state = made([moves[0]!, moves[1]!, moves[4]!]);
    const build = buildOf(state);
    const answer = plan(catalogue, build);
    if (answer.kind !== "answer") throw new Error("not asked");
    expect(answer.verdict).toBe("ruled-out");
    const drop = answer.repairs.find((r) => r.kind === "drop" && r.gives.some((g) => g.id === `card:${tallow}`))!;
    const repaired = withMove(state, { do: "all", says: drop.says, edits: drop.edits });
    expect(buildOf(repaired).cards).toEqual([{ card: gannet }]);
    expect(buildOf(without(repaired, 3)).cards).toEqual(build.cards);
    expect(buildOf(without(repaired, 1)).cards).toEqual([]);
  });
});

describe("an address", () => {
  const asked = ({ result: _r, notes: _n, sources: _s, summary: _u, allow: _a, ...build }: Build): Build => build as Build;
  const bytesIn = ({ memory, stands, ...build }: Build) => ({
    ...build,
    ...(memory === undefined ? {} : { memory: bytes(memory) }),
    ...(stands ? { stands: { ...stands, ...(stands.memory === undefined ? {} : { memory: bytes(stands.memory) }) } } : {}),
  });

  it("gives back every build of the club", () => {
    expect(builds.length).toBeGreaterThan(100);
    for (const build of builds) expect(buildFrom(`#${addressOf(build)}`), build.id).toEqual(bytesIn(asked(build)));
  });

  it("of the largest build of the club is short enough to send", () => {
    expect(Math.max(...builds.map((b) => addressOf(b).length))).toBeLessThan(2000);
  });

  it("keeps any text: signs that mean something in addresses, spaces, letters of any writing", () => {
    const text = fc.string({ unit: "grapheme", minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(text, text, text, fc.dictionary(text, text, { maxKeys: 3 }), (name, slot, mode, settings) => {
        const plain = Object.fromEntries(Object.entries(settings).filter(([k]) => k !== "__proto__"));
        const build: Build = {
          ...blank,
          name,
          board: "b",
          cards: [{ card: "c", slot, ...(Object.keys(plain).length > 0 ? { settings: plain } : {}) }],
          modes: [{ id: mode, cards: ["c"] }],
        };
        expect(buildFrom(addressOf(build))).toEqual(build);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it("that holds no build, or a damaged one, opens nothing by surprise", () => {
    expect(buildFrom("")).toBeUndefined();
    expect(buildFrom("#answer")).toBeUndefined();
    expect(buildFrom("#__proto__=x&b=%E0%A4%A")).toEqual({ ...blank, board: "%E0%A4%A" });
    expect(({} as Record<string, unknown>).x).toBeUndefined();
  });

  it("may also be a question of another page", () => {
    expect(openedWith({ hash: "", search: "?card=gannet-fixed-disk-controller" })).toEqual({
      kind: "build",
      build: { ...blank, cards: [{ card: gannet }] },
    });
    expect(openedWith({ hash: "", search: "?build=everyday-office" })).toEqual({ kind: "named", id: "everyday-office" });
    expect(openedWith({ hash: "#planner.html?board=skerry-16t", search: "" }, "#planner.html?")).toMatchObject({
      build: { board: "skerry-16t" },
    });
    expect(openedWith({ hash: "", search: "" })).toBeUndefined();
  });
});

describe("several of one card at hand", () => {
  const two = made([
    { do: "add", card: gannet },
    { do: "have", what: "cards", id: tallow },
    { do: "have", what: "cards", id: gannet },
    { do: "have", what: "cards", id: gannet, count: 2 },
  ]);

  it("are told once, stay in the address, and can be taken back", () => {
    const build = buildOf(two);
    expect(build.at_hand).toEqual({ cards: [tallow, { card: gannet, count: 2 }] });
    expect(buildFrom(addressOf(build))).toEqual(build);
    expect(buildOf(notAtHand(two, "cards", gannet)).at_hand).toEqual({ cards: [tallow] });
    expect(buildOf(notAtHand({ base: build, moves: [] }, "cards", gannet)).at_hand).toEqual({ cards: [tallow] });
  });

  it("are read from an address that was written before they could be counted", () => {
    expect(buildFrom(`#b=skerry-16t&hc=${gannet},${tallow}`)?.at_hand).toEqual({ cards: [gannet, tallow] });
  });
});

describe("three copies of one card in a question of another page", () => {
  const opened = openedWith({ hash: "", search: `?board=skerry-16t&card=${gannet}&card=${gannet}&card=${gannet}` });
  if (opened?.kind !== "build") throw new Error("no build was opened");

  it("have a name each, and so has one more that is put in", () => {
    const names = (build: Build) => build.cards.map((c) => c.as ?? c.card);
    expect(names(opened.build)).toEqual([gannet, `${gannet}-2`, `${gannet}-3`]);
    const more = [1, 2].reduce<State>((state) => withMove(state, { do: "add", card: gannet }), { base: opened.build, moves: [] });
    expect(new Set(names(buildOf(more))).size).toBe(5);
  });

  it("are a question the planner can read", () => {
    expect(resolveBuild(catalogue, opened.build).kind).toBe("question");
  });
});

describe("a way taken as it is", () => {
  it("fills every hole and is answered with the same verdict, in one way", () => {
    const build: Build = { ...blank, board: "skerry-16t", cards: [{ card: gannet }] };
    const answer = plan(catalogue, build, { most: 1 });
    if (answer.kind !== "answer") throw new Error("not asked");
    const whole = fillBuild(build, answer.combinations[0]!);
    const again = plan(catalogue, whole);
    expect(again).toMatchObject({ kind: "answer", verdict: answer.verdict, count: "1" });
  });
});

describe("an id from a name", () => {
  it("is what records take", () => {
    expect(idFrom("Tape corner, 16T")).toBe("tape-corner-16t");
    expect(idFrom("  Łódź & Ångström ")).toMatch(/^[a-z0-9][a-z0-9-]*$/);
    expect(idFrom("***")).toBe("my-build");
  });
});
