// How answers must change when the question or the records change, over random worlds and over the demo club.
import { describe, expect, it } from "vitest";
import { gather } from "../../src/catalogue/index.js";
import { withChoice } from "../../src/machine/index.js";
import { type Answer, plan } from "../../src/planning/index.js";
import type { Build, Conflict, Loaded } from "../../src/records/index.js";
import { demo } from "../support/demo.js";
import { Random } from "../support/solver/random.js";
import { randomSetup, type Setup } from "./support/world.js";

const worlds = process.env.LONG ? 2_000 : 150;

function answer(catalogue: Setup["catalogue"], build: Build): Answer {
  const a = plan(catalogue, build);
  if (a.kind !== "answer") throw new Error(a.faults[0]!.says);
  return a;
}

function loadedOf(setup: Setup): Loaded[] {
  const { catalogue } = setup;
  const of = (kind: Loaded["kind"], map: ReadonlyMap<string, unknown>) =>
    [...map.values()].map((record) => ({ kind, record, file: "" }) as Loaded);
  return [
    ...of("bus", catalogue.buses),
    ...of("board", catalogue.boards),
    ...of("firmware", catalogue.firmware),
    ...of("card", catalogue.cards),
    ...of("conflict", catalogue.conflicts),
  ];
}

function* setups(): Generator<{ seed: number; setup: Setup; before: Answer }> {
  for (let seed = 50_001; seed < 50_001 + worlds; seed++) {
    const setup = randomSetup(seed);
    yield { seed, setup, before: answer(setup.catalogue, setup.build) };
  }
}

const plain = (a: Answer) => ({
  verdict: a.verdict,
  count: a.count,
  hanging: a.hanging,
  combinations: a.combinations,
  reasons: a.reasons,
  repairs: a.repairs.map((r) => r.says),
  possible: a.possible,
});

describe("relations between answers", () => {
  it("the same question twice gives the same answer, and the order of files is irrelevant", () => {
    for (const { seed, setup, before } of setups()) {
      const shuffled = gather(new Random(seed).shuffle(loadedOf(setup)));
      expect(plain(answer(shuffled, setup.build)), `seed ${seed}`).toEqual(plain(before));
    }
  });

  it("a confirmed conflict more never adds a combination, and a card nobody uses changes nothing", () => {
    let fewer = 0;
    for (const { seed, setup, before } of setups()) {
      const card = setup.build.cards[0]!.card;
      const more: Conflict = {
        id: "more",
        name: "More",
        class: "timing",
        when: { cards: [{ card, slots: ["S1"] }] },
        effect: "blocks",
        symptoms: ["s"],
        cause: "c",
        status: "confirmed",
        evidence: [{ grade: "reported", says: "e" }],
      };
      const after = answer(gather([...loadedOf(setup), { kind: "conflict", record: more, file: "" }]), setup.build);
      expect(BigInt(after.count) <= BigInt(before.count), `seed ${seed}`).toBe(true);
      if (before.verdict === "ruled-out") expect(after.verdict, `seed ${seed}`).toBe("ruled-out");
      if (after.count !== before.count) fewer++;
      const unused = { ...setup.catalogue.cards.get(card)!, id: "unused", name: "Unused" };
      expect(plain(answer(gather([...loadedOf(setup), { kind: "card", record: unused, file: "" }]), setup.build)), `seed ${seed}`).toEqual(
        plain(before),
      );
    }
    expect(fewer).toBeGreaterThan(worlds / 20);
  });

  it("settling an unknown current never turns ruled-out into workable, nor a sure thing into an open one", () => {
    let settled = 0;
    for (const { seed, setup, before } of setups())
      for (const amps of [0, 9]) {
        const cards = [...setup.catalogue.cards.values()].map((c) => ({
          ...c,
          power: c.power.map((p) => (p.worst_A === "unknown" ? { ...p, worst_A: amps } : p)),
        }));
        if (JSON.stringify(cards) === JSON.stringify([...setup.catalogue.cards.values()])) continue;
        const after = answer(
          gather([
            ...loadedOf(setup).filter((l) => l.kind !== "card"),
            ...cards.map((record) => ({ kind: "card" as const, record, file: "" })),
          ]),
          setup.build,
        );
        if (before.verdict === "ruled-out") expect(after.verdict, `seed ${seed}`).toBe("ruled-out");
        if (before.verdict === "workable") expect(after.verdict, `seed ${seed}`).toBe("workable");
        // What is certain before stays so; what hung on it is now certain or gone.
        expect(BigInt(after.count) >= BigInt(before.count), `seed ${seed}`).toBe(true);
        expect(BigInt(after.count) + BigInt(after.hanging) <= BigInt(before.count) + BigInt(before.hanging), `seed ${seed}`).toBe(true);
        settled++;
      }
    expect(settled).toBeGreaterThan(worlds / 20);
  });

  it("every reason stands by itself and is minimal, and every repair gives what it promises and is minimal", () => {
    let looked = 0;
    for (const { seed, setup, before } of setups()) {
      if (before.verdict !== "ruled-out") continue;
      expect([before.reasonsComplete, before.repairsComplete.givingUp], `seed ${seed}`).toEqual([true, "all"]);
      for (const reason of before.reasons) {
        expect(reason.facts.length, `seed ${seed}`).toBeGreaterThan(0);
        for (const f of reason.facts) expect(f.refs.length, `seed ${seed}: ${f.says}`).toBeGreaterThan(0);
      }
      for (const repair of before.repairs.filter((r) => r.kind !== "by-hand")) {
        const after = answer(setup.catalogue, repair.build as Build);
        expect([after.verdict, after.verdict === "unknown" ? after.hanging : after.count], `seed ${seed}: ${repair.says}`).toEqual([
          repair.verdict,
          repair.count,
        ]);
        // Giving up one thing less does not help.
        if (repair.kind === "drop" || repair.kind === "change")
          for (const kept of repair.gives) {
            const less = repair.gives.filter((g) => g !== kept).reduce((b, g) => withChoice(b, g.id, undefined), setup.build);
            expect(answer(setup.catalogue, less).verdict, `seed ${seed}: ${repair.says}`).toBe("ruled-out");
          }
        looked++;
      }
      // Reasons and repairs are each other's hitting sets: every repair breaks every reason.
      for (const repair of before.repairs.filter((r) => r.kind === "drop" || r.kind === "change"))
        for (const reason of before.reasons)
          expect(
            reason.choices.some((c) => repair.gives.some((g) => g.id === c.id)),
            `seed ${seed}`,
          ).toBe(true);
    }
    expect(looked).toBeGreaterThan(worlds / 10);
  });

  it("pinning a value that is possible keeps it so, and the counts of all values of a hole add up", () => {
    for (const { seed, setup, before } of setups()) {
      const hole = before.possible.find((p) => p.chosen === undefined && !p.id.startsWith("setting"));
      if (!hole || !before.exact) continue;
      let sum = 0n;
      for (const v of hole.values) {
        const a = answer(
          setup.catalogue,
          withChoice(setup.build.modes ? setup.build : { ...setup.build, modes: [{ id: "always" }] }, hole.id, v.value),
        );
        sum += BigInt(a.count);
        expect(BigInt(a.count) > 0n, `seed ${seed}: ${hole.id}=${v.value}`).toBe(v.verdict === "workable");
      }
      expect(String(sum), `seed ${seed}: ${hole.id}`).toBe(before.count);
    }
  });

  it("a matrix cell and the planner never disagree", async () => {
    const { cell, cellBuild } = await import("../../src/planning/index.js");
    const catalogue = demo();
    const random = new Random(7);
    for (let i = 0; i < 60; i++) {
      const board = random.pick([...catalogue.boards.values()]);
      const family = random.pick(board.firmware);
      const q = {
        board: board.id,
        revision: random.pick(board.revisions).id,
        family,
        firmware: random.pick(catalogue.firmware.get(family)!.versions).id,
        card: random.pick([...catalogue.cards.keys()]),
      };
      const [c, a] = [cell(catalogue, q), answer(catalogue, cellBuild(q))];
      expect([c.verdict, c.evidence], JSON.stringify(q)).toEqual([a.verdict, a.combinations[0]?.evidence ?? "inferred"]);
    }
  });
});
