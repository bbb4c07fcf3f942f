// Cheapest where costs lie on variables that must differ, which the assignment bound is for: against brute force, costs of every sort;
// and what a run tells that was cut short.
import { expect, test } from "vitest";
import { type Constraint, type Cost, cheapest, type Problem, solves } from "../../src/solver/index.js";
import { trouble } from "../bench/fewest-lines.js";
import { generateBuild, sizes } from "../bench/generate.js";
import { bruteCost, bruteLeast, bruteSolutions } from "../support/solver/brute.js";
import { Random, randomRule, range } from "../support/solver/random.js";

const rounds = process.env.LONG ? 4_000 : 400;

/** Three to six variables, most of them in one or two all-different rules. */
function rivals(random: Random): Problem {
  const variables = range(random.int(3, 6)).map((v) => ({ name: `v${v}`, size: random.int(2, 4) }));
  const different = range(random.int(1, 2)).map((): Constraint => {
    const some = random.shuffle(range(variables.length)).slice(0, random.int(2, variables.length));
    return { kind: "allDifferent", variables: some, except: random.some(range(4), 0.3) };
  });
  return { variables, rules: [...different, ...range(random.int(0, 2)).map(() => randomRule(random, variables))] };
}

/** Weights in one of the ways people set them: small, coarse, in steps with an offset, or far apart. */
function weigher(random: Random): () => number {
  const way = random.int(0, 3);
  const small = () => random.int(-3, 6);
  return [small, () => random.int(0, 3) * 12, () => 5 - 4 * random.int(0, 3), () => random.pick([0, 1, 400])][way]!;
}

test(`${rounds} random problems with variables that differ: the k cheapest are those of brute force`, () => {
  const seen = { none: 0, some: 0 };
  for (let seed = 1; seed <= rounds; seed++) {
    const random = new Random(40_000 + seed);
    const problem = rivals(random);
    const costs: Cost[] = range(random.int(1, 3)).map(() => {
      const weight = weigher(random);
      const among = random.some(range(problem.variables.length), 0.8);
      return { terms: among.map((variable) => ({ variable, weights: range(problem.variables[variable]!.size).map(weight) })) };
    });
    const project = random.next() < 0.5 ? undefined : random.some(range(problem.variables.length), 0.6);
    const key = (s: readonly number[]) => (project ? project.map((v) => s[v]) : s).join();
    const less = (a: readonly number[], b: readonly number[]) => a.map((n, i) => n - b[i]!).find((d) => d !== 0) ?? 0;
    const best = new Map<string, number[]>();
    for (const s of bruteSolutions(problem)) {
      const cost = costs.map((c) => bruteCost(c, s));
      const before = best.get(key(s));
      if (!before || less(cost, before) < 0) best.set(key(s), cost);
    }
    seen[best.size > 0 ? "some" : "none"]++;
    const k = random.int(1, 6);
    const ranked = cheapest(problem, costs, { k, ...(project ? { project } : {}) });
    const told = `seed ${seed}: ${JSON.stringify({ problem, costs, k, project })}`;
    expect(ranked.proven, told).toBe(true);
    const right = [...best.values()].sort(less).slice(0, k);
    expect(ranked.solutions.length, told).toBe(right.length);
    for (const [i, { solution, cost }] of ranked.solutions.entries()) {
      expect(less(cost, right[i]!), told).toBe(0);
      expect(solves(problem, solution), told).toBe(true);
      expect(cost, told).toEqual(costs.map((c) => bruteCost(c, solution)));
    }
    expect(new Set(ranked.solutions.map((r) => key(r.solution))).size, told).toBe(right.length);
    // The other way of trying everything agrees with the first.
    if (costs.length === 1) {
      const least = bruteLeast(problem, costs[0]!, k, project ?? range(problem.variables.length));
      expect(least.map((n, i) => less([n], right[i]!))).toEqual(right.map(() => 0));
    }
  }
  expect(seen.none).toBeGreaterThan(rounds / 20);
  expect(seen.some).toBeGreaterThan(rounds / 2);
});

test("a run cut short gives what it has found, unproven and no better than the optimum", () => {
  const build = generateBuild(sizes.medium, "loose", 3);
  const cost = trouble(build, 3);
  const whole = cheapest(build.whole, [cost], { k: 3 });
  expect(whole.proven).toBe(true);
  let between = 0;
  for (let steps = 8; steps <= 512; steps += 8) {
    const cut = cheapest(build.whole, [cost], { k: 3 }, { steps });
    for (const { solution } of cut.solutions) expect(solves(build.whole, solution)).toBe(true);
    if (cut.proven) expect(cut.solutions.map((s) => s.cost)).toEqual(whole.solutions.map((s) => s.cost));
    else {
      if (cut.solutions.length > 0) between++;
      for (const [i, { cost: found }] of cut.solutions.entries()) expect(found[0]).toBeGreaterThanOrEqual(whole.solutions[i]!.cost[0]!);
    }
  }
  expect(between).toBeGreaterThan(0);
  // The first answer too, before it is proven cheapest.
  const early = range(64).map((i) => cheapest(build.whole, [cost], { k: 1 }, { steps: 4 * i }));
  expect(early.some((cut) => !cut.proven && cut.solutions.length === 1)).toBe(true);
});

test("cheap values that lead nowhere do not keep the search from finding anything", () => {
  const build = generateBuild(sizes.large, "normal", 2);
  const random = new Random(2);
  const terms = build.slotVariables.map((variable) => ({
    variable,
    weights: range(build.whole.variables[variable]!.size).map(() => random.int(0, 20)),
  }));
  // Deciding by costs alone this one had no answer after 20,000 steps.
  const ranked = cheapest(build.whole, [{ terms }], { k: 4, project: build.slotVariables }, { steps: 5000 });
  expect(ranked.proven).toBe(true);
  expect(ranked.solutions.length).toBe(4);
});

test("the same question has the same answer", () => {
  const build = generateBuild(sizes.medium, "normal", 5);
  const ask = () => cheapest(build.whole, [trouble(build, 5)], { k: 4, project: build.slotVariables });
  expect(ask()).toEqual(ask());
});

test("ten that all like one place best cost what the ten cheapest places cost", () => {
  const n = 10;
  const problem: Problem = {
    variables: range(n).map((i) => ({ name: `${i}`, size: n })),
    rules: [{ kind: "allDifferent", variables: range(n) }],
  };
  const cost = { terms: range(n).map((variable) => ({ variable, weights: range(n) })) };
  // 45 whoever goes where; without the assignment's bound the proof would try orders without end.
  expect(cheapest(problem, [cost], { k: 1 }, { steps: 100 })).toMatchObject({ proven: true, solutions: [{ cost: [45] }] });
});
