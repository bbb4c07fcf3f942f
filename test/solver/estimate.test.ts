// The estimate beside a count cut short: right on average, the same for the same seed, and never told as exact.
import { expect, test } from "vitest";
import { solveFile } from "../../src/cli/commands/solve.js";
import { readProblemFile } from "../../src/cli/reading/problem-file.js";
import { estimateCount } from "../../src/solver/index.js";
import { bruteSolutions } from "../support/solver/brute.js";
import { Random, randomProblem, range } from "../support/solver/random.js";

test("the mean of many dives is the brute-force count, within five standard errors", () => {
  let spread = 0;
  for (const seed of range(150)) {
    const problem = randomProblem(new Random(seed));
    const truth = bruteSolutions(problem).length;
    const estimate = estimateCount(problem, { dives: 1500, seed });
    expect(estimate.dives).toBe(1500);
    expect(Math.abs(estimate.mean - truth), `seed ${seed}`).toBeLessThanOrEqual(5 * (estimate.spread ?? 0) + 1e-9 * truth);
    if ((estimate.spread ?? 0) > 0) spread++;
  }
  expect(spread).toBeGreaterThan(20);
});

test("the same seed gives the same estimate, and the budget ends it", () => {
  const problem = randomProblem(new Random(3));
  expect(estimateCount(problem, { seed: 7 })).toEqual(estimateCount(problem, { seed: 7 }));
  expect(estimateCount(problem, {}, { steps: 0 }).dives).toBe(0);
});

test("solve tells a count cut short with its estimate, and an exact one without", () => {
  const names = range(12).map((i) => `guest ${i}`);
  const text = JSON.stringify({
    variables: Object.fromEntries(names.map((name) => [name, { from: 1, to: 12 }])),
    rules: names.slice(1).map((name, i) => ({ kind: "linear", terms: { [names[i] as string]: 1, [name]: -1 }, min: -9, max: 9 })),
  });
  const read = readProblemFile(text);
  if (read.kind === "bad") throw new Error(read.mistakes.join());
  const exact = solveFile(read.file, "count").answer as { count: string; exact: boolean; estimate?: object };
  expect(exact).toMatchObject({ exact: true });
  expect(exact.estimate).toBeUndefined();
  const { answer, holds } = solveFile(read.file, "count", { steps: 40 });
  const cut = answer as { count: string; exact: boolean; estimate: { about: string; standardError: string; dives: number } };
  expect(holds).toBe(false);
  expect(cut.exact).toBe(false);
  expect(Number(cut.count)).toBeLessThanOrEqual(Number(exact.count));
  expect(cut.estimate.dives).toBeGreaterThan(1);
  expect(Math.abs(Number(cut.estimate.about) - Number(exact.count))).toBeLessThanOrEqual(5 * Number(cut.estimate.standardError));
});
