// Ways by hand: cases small enough to see what the answer must be, and the demo club's own.

import { describe, expect, it } from "vitest";
import type { Catalogue } from "../../src/catalogue/index.js";
import { findWays, type Ways } from "../../src/planning/index.js";
import type { Build, Card, Wishes } from "../../src/records/index.js";
import { demo } from "../support/demo.js";
import type { Loose } from "../support/loose.js";
import { card, smallClub, tested } from "./support/small-club.js";

const everything = ["io", "memory", "interrupts", "dma", "firmware", "features", "clock", "cards", "chain", "memory-size"] as const;
const enable: Card["enable"] = { by: "contacts", releases: [...everything] };
const under = (range: object) => ({ firmware: [{ family: "line", ...range }] });
const port = (base: number) => [{ io: [{ base, size: 4 }] }];

/** A card that can be switched off. */
const free = (id: string, more: Partial<Loose<Card>> = {}) => card(id, { enable, ...more });

function waysOf(catalogue: Catalogue, cards: Build["cards"], wishes?: Wishes, more: Partial<Build> = {}): Ways {
  const board = catalogue.boards.has("board") ? "board" : "skerry-16t";
  const ways = findWays(catalogue, { id: "q", name: "Q", board, cards, ...(wishes ? { wishes } : {}), ...more });
  if (ways?.kind !== "ways") throw new Error(JSON.stringify(ways));
  return ways;
}

const on = (ways: Ways) => ways.divisions.map((d) => d.ways.map((w) => w.on.join("+")));
const abc = [{ card: "a" }, { card: "b" }, { card: "c" }];

describe("the fewest ways", () => {
  const apart = smallClub({
    cards: [free("a", { needs: under({ upTo: "V1" }) }), free("b", { needs: under({ only: ["V2"] }) }), free("c")],
  });

  it("are one when all can be on at once, and then there is nothing to prove", () => {
    const ways = waysOf(smallClub({ cards: [free("a"), free("b"), free("c")] }), abc);
    expect(ways).toMatchObject({ outcome: "found", fewest: 1, fewer: { kind: "one-way" }, divisionsComplete: true });
    expect(on(ways)).toEqual([["a+b+c"]]);
  });

  it("hold as many cards as can be: what fights nobody is on in every way", () => {
    const ways = waysOf(apart, abc);
    expect(ways).toMatchObject({
      outcome: "found",
      fewest: 2,
      fewer: { kind: "apart", wishes: ["card:a", "card:b"] },
      divisionsComplete: true,
    });
    expect(on(ways)).toEqual([["a+c", "b+c"]]);
    expect(ways.divisions[0]?.switched).toEqual(["a", "b"]);
    expect(ways.divisions[0]?.ways.map((w) => [w.versions, w.own])).toEqual([
      [["V1"], ["a"]],
      [["V2"], ["b"]],
    ]);
  });

  it("are the same whatever the order of the cards", () => {
    const ways = waysOf(apart, [...abc].reverse());
    expect(on(ways).map((d) => d.map((w) => w.split("+").sort().join("+")))).toEqual([["a+c", "b+c"]]);
  });

  it("put together what does not fight, and give what all fights a way each", () => {
    const ports = smallClub({
      cards: [free("a", { claims: port(1) }), free("b", { claims: port(8) }), free("c", { claims: [...port(1), ...port(8)] })],
    });
    expect(on(waysOf(ports, abc)).map((d) => [...d].sort())).toEqual([["a+b", "c"]]);
    const pair = smallClub({ cards: [free("a", { claims: port(1) }), free("b", { claims: port(1) }), free("c", { claims: port(1) })] });
    const ways = waysOf(pair, abc, { together: [{ firmware: "V1" }, { firmware: "V2" }] });
    expect(ways.fewest).toBe(3);
    expect(on(ways).map((d) => [...d].sort())).toEqual([["a", "b", "c"]]);
  });

  it("keep apart what is only needed alone, and always on what is wanted always", () => {
    const calm = smallClub({ cards: [free("a"), free("b"), free("c")] });
    expect(on(waysOf(calm, abc, { alone: ["a"] })).map((d) => [...d].sort())).toEqual([["a", "b+c"]]);
    expect(on(waysOf(calm, abc, { alone: ["a"], always: ["c"] })).map((d) => [...d].sort())).toEqual([["a+c", "b+c"]]);
    expect(waysOf(calm, abc, { alone: ["a"], always: ["a"] })).toMatchObject({ outcome: "none" });
  });

  it("run the version a program needs, and pin it in the build that is offered", () => {
    const ways = waysOf(apart, abc, { together: [{ cards: ["c"], firmware: "V3" }] });
    expect(ways).toMatchObject({ outcome: "found", fewest: 3 });
    expect(ways.divisions[0]?.build.modes?.map((m) => m.firmware)).toEqual([undefined, undefined, "V3"]);
  });

  it("say when they are more than would be put up with", () => {
    expect(waysOf(apart, abc, { ways_at_most: 1 })).toMatchObject({ fewest: 2, tooMany: true });
    expect(waysOf(apart, abc, { ways_at_most: 2 })).toMatchObject({ fewest: 2, tooMany: false });
  });

  it("part two of one card that fight each other", () => {
    const ways = waysOf(smallClub({ cards: [free("a", { claims: port(1), settings: undefined })] }), [
      { card: "a", as: "left" },
      { card: "a", as: "right" },
    ]);
    expect(ways).toMatchObject({ fewest: 2, fewer: { kind: "apart" } });
    expect(on(ways).map((d) => [...d].sort())).toEqual([["left", "right"]]);
  });

  it("part two that fight over a window even by jumper: every setting is tried, and a jumper is shared by all ways", () => {
    const at = (base: number) => ({ id: base === 1 ? "x" : "y", io: [{ base, size: 4 }] });
    const either = (id: string) => free(id, { settings: [{ id: "J1", name: "n", by: "jumper", positions: [at(1), at(8)] }] });
    expect(waysOf(smallClub({ cards: [either("a"), either("b")] }), abc.slice(0, 2)).fewest).toBe(1);
    const ways = waysOf(smallClub({ cards: [either("a"), either("b"), either("c")] }), abc);
    expect(ways.fewest).toBe(2);
    expect(ways.divisions.length).toBe(3);
    // Any two of them go together, so no pair proves it: it takes the search.
    expect(ways.fewer).toMatchObject({ kind: "searched", against: { ways: 1, wishes: ["card:a", "card:b", "card:c"] } });
    expect(ways.divisionsComplete).toBe(true);
  });
});

describe("what no number of ways grants", () => {
  it("names the card that nothing can switch off and the one it fights", () => {
    const ways = waysOf(smallClub({ cards: [card("a", { claims: port(1) }), free("b", { claims: port(1) })] }), abc.slice(0, 2));
    expect(ways).toMatchObject({ outcome: "none", divisions: [], against: { wishes: ["card:b"] } });
    expect(ways.against?.choices.map((c) => c.id)).toEqual(["card:a"]);
    expect(ways.against?.facts.map((f) => f.rule)).toEqual(["io-windows"]);
  });

  it("names windows that fight even when off", () => {
    const keeps: Card["enable"] = { by: "contacts", releases: ["firmware"] };
    const ways = waysOf(
      smallClub({ cards: [card("a", { enable: keeps, claims: port(1) }), card("b", { enable: keeps, claims: port(1) })] }),
      abc.slice(0, 2),
    );
    expect(ways.outcome).toBe("none");
    expect(ways.against?.facts.map((f) => f.rule)).toEqual(["io-windows"]);
  });
});

describe("what is not known", () => {
  const vague = free("a", { needs: { clock_at_most_MHz: "unknown" } });

  it("makes ways a perhaps, and is never rounded up", () => {
    const ways = waysOf(smallClub({ cards: [vague, free("b")] }), abc.slice(0, 2));
    expect(ways).toMatchObject({ outcome: "perhaps", fewest: 1 });
    expect(ways.divisions.map((d) => d.verdict)).toEqual(["unknown"]);
  });

  it("leaves open whether fewer would do", () => {
    const suspected = {
      id: "k",
      name: "K",
      class: "timing",
      when: { cards: [{ card: "a" }, { card: "b" }] },
      effect: "blocks",
      symptoms: ["s"],
      cause: "c",
      status: "suspected",
      evidence: [],
    };
    const ways = waysOf(smallClub({ cards: [free("a"), free("b")], conflicts: [suspected as never] }), abc.slice(0, 2));
    expect(ways).toMatchObject({ outcome: "found", fewest: 2, fewer: { kind: "not-proven", ways: 1, because: "unknown-facts" } });
  });

  it("is settled by a bench test of exactly that machine in those ways", () => {
    const modes = [
      { id: "one", firmware: "V1", cards: ["a"] },
      { id: "two", firmware: "V2", cards: ["b"] },
    ];
    const stood = [
      { card: "a", slot: "S1" },
      { card: "b", slot: "S2" },
    ];
    const cards = [
      free("a", {
        needs: { ...under({ only: ["V1"] }), clock_at_most_MHz: "unknown" },
        settings: [{ id: "J1", name: "n", by: "jumper", positions: [{ id: "x" }] }],
      }),
      free("b", { needs: under({ only: ["V2"] }), settings: [{ id: "J1", name: "n", by: "jumper", positions: [{ id: "x" }] }] }),
    ];
    const builds = [tested("bench", stood, { modes })];
    expect(waysOf(smallClub({ cards }), abc.slice(0, 2))).toMatchObject({ outcome: "perhaps", fewest: 2 });
    expect(waysOf(smallClub({ cards, builds }), abc.slice(0, 2))).toMatchObject({ outcome: "found", fewest: 2 });
  });

  it("is a search that was stopped, when it was", () => {
    const stopped = findWays(
      smallClub({ cards: [free("a"), free("b")] }),
      { id: "q", name: "Q", board: "board", cards: abc.slice(0, 2) },
      { budget: { steps: 0 } },
    );
    expect(stopped).toMatchObject({ outcome: "stopped", divisions: [] });
  });
});

describe("the demo club", () => {
  const three = ["tallow-bus-tracer", "gannet-fixed-disk-controller", "plover-tape-interface"].map((id) => ({ card: id }));

  it("runs tracer, disk and tape of a Skerry 16T in two ways", () => {
    const ways = waysOf(demo(), three);
    expect(ways).toMatchObject({ outcome: "found", fewest: 2, fewer: { kind: "apart" }, divisionsComplete: true });
    expect(on(ways)).toEqual([["tallow-bus-tracer", "gannet-fixed-disk-controller+plover-tape-interface"]]);
    expect(ways.divisions[0]?.ways[1]?.versions).toEqual(["R5.1"]);
  });

  it("reads modes that are written down as what is wanted, and finds what they need", () => {
    const build = demo().builds.get("saltmarsh-three-mode-skerry");
    if (!build) throw new Error("no such build");
    const ways = findWays(demo(), build);
    expect(ways).toMatchObject({ outcome: "found", fewest: 3 });
  });
});
