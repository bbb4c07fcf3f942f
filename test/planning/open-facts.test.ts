// What is worth finding out, ranked: alone or together, in however many words, over a part of the matrix.
import { describe, expect, it } from "vitest";
import { type CellQuestion, cell, openFacts } from "../../src/planning/index.js";
import { demo } from "../support/demo.js";
import { card, smallClub } from "./support/small-club.js";

const cellsOf = (cards: readonly string[], versions: readonly string[] = ["V1", "V2", "V3"]): CellQuestion[] =>
  cards.flatMap((c) => versions.map((firmware) => ({ board: "board", revision: "D1", family: "line", firmware, card: c })));

const thirsty = (id: string, more = {}) => card(id, { power: [{ rail: "+5", worst_A: "unknown" }], ...more });

describe("worth finding out", () => {
  it("is the fact that settles most cells, first", () => {
    // B runs under one version only, so its figure settles one cell; A's settles three.
    const b = thirsty("b", { needs: { firmware: [{ family: "line", only: ["V2"] }] } });
    const facts = openFacts(smallClub({ cards: [thirsty("a"), b, card("c")] }), cellsOf(["a", "b", "c"]));
    expect(facts.map((f) => [f.refs[0]!.id, f.settles.length, f.among.length])).toEqual([
      ["a", 3, 0],
      ["b", 1, 0],
    ]);
    expect(facts[0]).toMatchObject({
      says: "How much Card A takes from +5 V is not known.",
      refs: [{ kind: "card", id: "a", pointer: "/power/0" }],
    });
    expect(facts[0]!.how).toMatch(/Measure/);
  });

  it("two facts that are both needed settle nothing alone", () => {
    const both = thirsty("a", { needs: { clock_at_most_MHz: "unknown" } });
    const facts = openFacts(smallClub({ cards: [both] }), cellsOf(["a"], ["V1"]));
    expect(facts.map((f) => [f.refs[0]!.pointer, f.settles.length, f.among.length]).sort()).toEqual([
      ["/needs/clock_at_most_MHz", 0, 1],
      ["/power/0", 0, 1],
    ]);
  });

  it("one missing length is one fact, though every slot asks for it", () => {
    const slots = [1, 2, 3].map((n) => ({ id: `S${n}`, edge: "edge", position: n, longest_mm: 100 * n }));
    const long = card("a", { room: { length_mm: "unknown", height_mm: 90 } });
    const facts = openFacts(smallClub({ board: { slots }, cards: [long] }), cellsOf(["a"], ["V1"]));
    expect(facts.map((f) => [f.refs, f.settles.length])).toEqual([[[{ kind: "card", id: "a", pointer: "/room/length_mm" }], 1]]);
  });

  it("a fact that some slot can do without decides nothing", () => {
    const slots = [
      { id: "S1", edge: "edge", position: 1, longest_mm: "unknown" as const },
      { id: "S2", edge: "edge", position: 2, longest_mm: 300 },
    ];
    expect(openFacts(smallClub({ board: { slots } }), cellsOf(["a"], ["V1"]))).toEqual([]);
  });

  it("a suspected conflict is a fact to settle, by its own test", () => {
    const suspect = {
      id: "k",
      name: "Suspicion",
      class: "timing" as const,
      when: { cards: [{ card: "a" }] },
      effect: "blocks" as const,
      symptoms: ["s"],
      cause: "c",
      status: "suspected" as const,
      settle: "Run it for an hour.",
      evidence: [{ grade: "reported" as const, says: "r" }],
    };
    const facts = openFacts(smallClub({ conflicts: [suspect] }), cellsOf(["a"]));
    expect(facts.map((f) => [f.how, f.refs.map((r) => r.kind), f.settles.length])).toEqual([["Run it for an hour.", ["conflict"], 3]]);
  });

  it("over the demo names a fact for every unknown cell, and none for a sure one", () => {
    const catalogue = demo();
    const board = catalogue.boards.get("skerry-16t")!;
    const family = board.firmware[0]!;
    const cells = [...catalogue.cards.keys()].map((id) => ({
      board: board.id,
      revision: board.revisions.at(-1)!.id,
      family,
      firmware: catalogue.firmware.get(family)!.versions.at(-1)!.id,
      card: id,
    }));
    const unknown = cells.filter((q) => cell(catalogue, q).verdict === "unknown").map((q) => q.card);
    const told = openFacts(catalogue, cells).flatMap((f) => [...f.settles, ...f.among].map((q) => q.card));
    expect(unknown.length).toBeGreaterThan(0);
    expect([...new Set(told)].sort()).toEqual(unknown.sort());
  });
});
