// The benchmark of the ways: its gate can fail, and the division it asks for is as full as clingo's optimisation finds it.
import { describe, expect, it } from "vitest";
import { cheapest } from "../../src/solver/index.js";
import { leastByClingo, loadClingo } from "../support/solver/clingo.js";
import { range } from "../support/solver/random.js";
import { spreadOf } from "./figures.js";
import { bounds, complaints, divisionProblem, largeQuestion } from "./ways.js";

const machines = process.env.LONG ? 12 : 3;

describe("the benchmark of the ways", () => {
  it("is held to its bounds by a gate that can fail", () => {
    const known = spreadOf([1, 1, 1]);
    const withSwitch = { runs: 3, median: bounds.median, p95: bounds.p95, max: bounds.slowest };
    expect(complaints({ known, withSwitch })).toEqual([]);
    for (const over of [{ median: bounds.median + 1 }, { p95: bounds.p95 + 1 }, { max: bounds.slowest + 1 }])
      expect(complaints({ known, withSwitch: { ...withSwitch, ...over } })).toHaveLength(1);
  });

  it(`asks for divisions of ${machines} large machines that clingo finds no fuller`, async () => {
    const problems = range(machines).flatMap((i) => divisionProblem(largeQuestion(1_000 + i)) ?? []);
    expect(problems.length).toBe(machines);
    const run = await loadClingo();
    for (const { problem, off } of problems) {
      const { solutions, proven } = cheapest(problem, [off], { k: 1 });
      expect(proven).toBe(true);
      expect(await leastByClingo(run, problem, off)).toBe(solutions[0]!.cost[0]);
    }
  });
});
