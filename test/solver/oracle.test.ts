// Random problems against clingo: decide, the exact count, possible values. Slower than brute force, but it reads the rules in its own way
// and can follow a real build.
import { expect, test } from "vitest";
import { count, decide, possible } from "../../src/solver/index.js";
import { generateBuild } from "../bench/generate.js";
import { askClingo, loadClingo } from "../support/solver/clingo.js";
import { Random, randomProblem } from "../support/solver/random.js";

const rounds = process.env.LONG ? 1_000 : 100;

test(`${rounds} random problems: clingo decides, counts and gives the same possible values`, async () => {
  const run = await loadClingo();
  const seen = { yes: 0, no: 0 };
  for (let seed = 1; seed <= rounds; seed++) {
    const problem = randomProblem(new Random(3_000_000 + seed));
    const oracle = await askClingo(run, problem);
    seen[oracle.satisfiable ? "yes" : "no"]++;
    const answer = { decide: decide(problem).kind, count: count(problem).count, values: possible(problem).values };
    expect(answer, `seed ${seed}`).toEqual({
      decide: oracle.satisfiable ? "found" : "none",
      count: BigInt(oracle.models),
      values: oracle.values,
    });
  }
  expect(seen.yes).toBeGreaterThan(rounds / 5);
  expect(seen.no).toBeGreaterThan(rounds / 20);
});

test("small builds: clingo decides and gives the same possible values", async () => {
  const run = await loadClingo();
  const kinds = new Set<string>();
  for (const strain of ["normal", "tight", "over"] as const) {
    for (let seed = 1; seed <= 4; seed++) {
      const { whole } = generateBuild({ slots: 4, cards: 4, firmware: 4, conflicts: 10 }, strain, seed);
      const oracle = await askClingo(run, whole);
      expect(decide(whole).kind).toBe(oracle.satisfiable ? "found" : "none");
      expect(possible(whole).values).toEqual(oracle.values);
      expect(count(whole).count).toBe(BigInt(oracle.models));
      kinds.add(`${oracle.satisfiable}`);
    }
  }
  expect(kinds.size).toBe(2);
});
