// Power budgets worked by hand: rails, derating, the total, and what is not known of them.
import { describe, expect, it } from "vitest";
import type { Card } from "../../../src/records/index.js";
import { answerOf, plainBoard, plainCard } from "./support.js";

/** Worked budgets; planning with 0.8 of a rating is common practice, not a standard. */
const budgets = [
  {
    name: "a plain budget",
    rails: [
      { rail: "+5", rated: 10, loads: [3.2, 1.1, 0.9, 0.6], sum: 5.8, allowed: 8 },
      { rail: "+12", rated: 2, loads: [0.9, 0.35], sum: 1.25, allowed: 1.6 },
    ],
    rated_W: 63.5,
    allowed_W: 50.8,
    drawn_W: 44,
    verdict: "workable",
  },
  {
    name: "each rail fits but the total does not",
    rails: [
      { rail: "+5", rated: 10, loads: [7.5], sum: 7.5, allowed: 8 },
      { rail: "+12", rated: 4, loads: [3], sum: 3, allowed: 3.2 },
    ],
    rated_W: 65,
    allowed_W: 52,
    drawn_W: 73.5,
    verdict: "ruled-out",
  },
] as const;

type Loads = readonly { readonly rail: string; readonly loads: readonly (number | "unknown")[] }[];

/** One card a place in the lists: the first takes the first load of every rail, and so on. */
function cardsTaking(rails: Loads): Card[] {
  const most = Math.max(...rails.map((r) => r.loads.length));
  return Array.from({ length: most }, (_, i) =>
    plainCard(`load-${i + 1}`, {
      power: rails.flatMap((r) => (r.loads[i] === undefined ? [] : [{ rail: r.rail, worst_A: r.loads[i]! }])),
    }),
  );
}

describe("power budgets", () => {
  it.each(budgets)("$name: $verdict", ({ rails, rated_W, allowed_W, drawn_W, verdict }) => {
    const limits = rails.map((r) => ({ rail: r.rail, limit_A: r.rated, derate: 0.8 }));
    const cards = cardsTaking(rails);
    const board = plainBoard({ rails: limits, total_W: rated_W, total_derate: 0.8 });
    const answer = answerOf(board, cards);
    expect(answer.verdict).toBe(verdict);
    // Without the total, every rail is as worked out.
    const { total_W: _, ...railsAlone } = board;
    expect(answerOf(railsAlone, cards).combinations[0]!.headroom).toEqual(
      rails.map((r) => ({ rail: r.rail, used_A: r.sum, limit_A: r.allowed })),
    );
    if (verdict === "ruled-out") {
      const fact = answer.reasons.flatMap((r) => r.facts).find((f) => f.rule === "rails")!;
      expect(fact.says).toContain(`${drawn_W} W`);
      expect(fact.says).toContain(`${allowed_W} W`);
      return;
    }
    // The total is watched to the last tenth of a watt, with and without the factor.
    expect(answerOf({ ...board, total_W: drawn_W / 0.8 }, cards).verdict).toBe("workable");
    expect(answerOf({ ...board, total_W: drawn_W / 0.8 - 0.1 }, cards).verdict).toBe("ruled-out");
  });

  it("an unknown load does not count as zero", () => {
    const rails = [{ rail: "+5", loads: [3.2, "unknown"] }] as const;
    const board = plainBoard({ rails: [{ rail: "+5", limit_A: 10, derate: 0.8 }] });
    const answer = answerOf(board, cardsTaking(rails));
    expect({ verdict: answer.verdict, count: answer.count }).toEqual({ verdict: "unknown", count: "0" });
    expect(answer.combinations[0]!.headroom).toEqual([{ rail: "+5", used_A: "unknown", limit_A: 8 }]);
    expect(answer.unknowns[0]!.says).toMatch(/load-2 .*\+5 V is not known/);
    expect(answer.unknowns[0]!.how).toMatch(/Measure/);
  });

  it("a load that is too great is too great, whatever an unknown one beside it takes", () => {
    const board = plainBoard({ rails: [{ rail: "+5", limit_A: 10, derate: 0.8 }] });
    expect(answerOf(board, cardsTaking([{ rail: "+5", loads: [8.1, "unknown"] }])).verdict).toBe("ruled-out");
  });

  it("an unknown limit is not without end", () => {
    const board = plainBoard({ rails: [{ rail: "+5", limit_A: "unknown" }] });
    expect(answerOf(board, cardsTaking([{ rail: "+5", loads: [0.1] }])).verdict).toBe("unknown");
  });
});

describe("derating", () => {
  // Published: full load up to 50 C, then 2.5 % less a degree (a power-supply derating guide); two curves multiply, 73 % by 90 %
  // (a maker's answer on derating). The record gives the factor; the limit that comes of it is checked to the milliampere.
  it.each([
    { why: "60 C", factor: 1 - 0.025 * (60 - 50), worked: 0.75 },
    { why: "70 C", factor: 1 - 0.025 * (70 - 50), worked: 0.5 },
    { why: "low mains and heat together", factor: 0.73 * 0.9, worked: 0.657 },
  ])("$why leaves $worked of a rail", ({ factor, worked }) => {
    expect(factor).toBeCloseTo(worked, 9);
    const board = plainBoard({ rails: [{ rail: "+5", limit_A: 10, derate: factor }] });
    const taking = (amps: number) => answerOf(board, [plainCard("load", { power: [{ rail: "+5", worst_A: amps }] })]).verdict;
    expect([taking(worked * 10), taking(worked * 10 + 0.001)]).toEqual(["workable", "ruled-out"]);
  });
});
