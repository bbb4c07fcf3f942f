// What the ways out of a refused machine cost, side by side.
import { describe, expect, it } from "vitest";
import { waysOutCosts } from "../../src/pages/index.js";
import { plan, type Repair } from "../../src/planning/index.js";
import type { Build } from "../../src/records/index.js";
import { planWiring, wiringOptions } from "../../src/wiring/index.js";
import { costCells, costHeads, thenText } from "../../src/words/index.js";
import { demo } from "../support/demo.js";

const three: Build = {
  id: "three",
  name: "Three",
  board: "skerry-16t",
  cards: ["tallow-bus-tracer", "gannet-fixed-disk-controller", "plover-tape-interface"].map((card) => ({ card })),
};

function answered(build: Build) {
  const answer = plan(demo(), build);
  if (answer.kind !== "answer") throw new Error(answer.faults[0]!.says);
  return answer;
}

describe("what ways out cost", () => {
  const answer = answered(three);
  const costs = waysOutCosts(demo(), answer);

  it("is told once for each kind, what leaves nothing out first, then what takes fewest parts", () => {
    expect(costs.map((c) => c.kind)).toEqual(["by-hand", "switch", "leave-out"]);
    const [hand, built, without] = costs;
    expect(hand).toMatchObject({ toGet: 1, each: [4, 4], without: [] });
    expect(built!.toGet).toBeGreaterThan(hand!.toGet!);
    expect(without).toMatchObject({ toGet: 0, without: ["Tallow bus tracer"], verdict: "workable" });
  });

  it("of a switch is what its wiring asks for", () => {
    const ways = answer.repairs.find((r) => r.kind === "ways")!;
    expect(ways.differs).toEqual({ cards: 3, versions: 1 });
    const build = ways.build as Build;
    const wirings = answered(build).combinations.map((c) => planWiring(demo(), c, wiringOptions(build, { tables: false })));
    const plans = wirings.flatMap((w) => (w.kind === "wiring" ? [w.plan] : []));
    const { poles, wires } = costs.find((c) => c.kind === "switch")!;
    expect(plans.map((p) => [p.optimality.poles, p.wires.length])).toContainEqual([poles, wires]);
  });

  it("is set in one cell for each head", () => {
    for (const cost of costs) expect(costCells(cost)).toHaveLength(costHeads.length);
    expect(costCells(costs[0]!)).toEqual(["change over by hand", "one part", "nothing", "four things", "nothing", "works"]);
    expect(costCells({ kind: "switch", verdict: "workable", without: [] })).toEqual([
      "one switch",
      "no switch can do it",
      "nothing",
      "nothing",
      "nothing",
      "is not built",
    ]);
  });

  it("puts a switch that cannot be had last, with the reason", () => {
    const barred: Build = { ...three, switch: { switch: "toggle-spst" } };
    const told = waysOutCosts(demo(), answered(barred));
    expect(told.at(-1)).toMatchObject({ kind: "switch", impossible: expect.stringContaining("SPST") });
    expect(told.at(-1)!.toGet).toBeUndefined();
  });

  it("is nothing where nothing has to be given up", () => {
    expect(waysOutCosts(demo(), answered({ ...three, cards: three.cards.slice(0, 1) }))).toEqual([]);
  });
});

describe("what a way out leads to", () => {
  const way = { kind: "drop", count: "1200", exact: true } as Pick<Repair, "kind" | "count" | "exact">;
  it.each([
    [{ ...way, verdict: "workable" }, "Then it works, in 1,200 combinations."],
    [{ ...way, verdict: "conditional", exact: false }, "Then it works under a condition, in at least 1,200 combinations."],
    [{ ...way, verdict: "unknown", count: "1" }, "Whether it then works is not known; 1 combination hangs on missing facts."],
    [{ ...way, kind: "by-hand", verdict: "workable" }, "Then it works."],
    [{ ...way, kind: "by-hand", verdict: "unknown" }, "Whether it then works is not known."],
  ] as const)("%j", (leads, says) => expect(thenText(leads)).toBe(says));
});
