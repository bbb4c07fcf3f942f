// Random small problems against brute force: every task, both outcomes. LONG=1 runs ten times as many.
import { expect, test } from "vitest";
import {
  type Choice,
  type Cost,
  cheapest,
  count,
  countPerValue,
  decide,
  explain,
  explainAll,
  list,
  oneReason,
  oneRepair,
  openSession,
  type Problem,
  possible,
  reasons,
  repairs,
} from "../../src/solver/index.js";
import { bruteCost, bruteSets, bruteSolutions } from "../support/solver/brute.js";
import { Random, randomProblem, randomRule, range } from "../support/solver/random.js";

const rounds = process.env.LONG ? 20_000 : 2_000;
const sorted = (lines: readonly (readonly (number | string)[])[]) => lines.map((l) => [...l].sort().join()).sort();

/** Runs a check on every random problem, naming the seed and the problem when it fails. */
function each(count: number, from: number, check: (problem: Problem, random: Random) => void): void {
  for (let seed = from; seed < from + count; seed++) {
    const random = new Random(seed);
    const problem = randomProblem(random);
    try {
      check(problem, random);
    } catch (error) {
      throw new Error(`seed ${seed}: ${JSON.stringify(problem)}\n${(error as Error).message}`, { cause: error });
    }
  }
}

test(`${rounds} random problems: decide, list, count, possible values, cheapest agree with brute force`, () => {
  let yes = 0;
  let no = 0;
  each(rounds, 1, (problem, random) => {
    const truth = bruteSolutions(problem);
    const keys = new Set(truth.map((s) => s.join()));
    if (truth.length > 0) yes++;
    else no++;
    const decision = decide(problem);
    expect(decision.kind).toBe(truth.length > 0 ? "found" : "none");
    if (decision.kind === "found") expect(keys.has(decision.solution.join())).toBe(true);
    const listing = list(problem);
    expect(listing.complete).toBe(true);
    expect(listing.solutions.map((s) => s.join()).sort()).toEqual([...keys].sort());
    expect(count(problem)).toEqual({ count: BigInt(truth.length), exact: true });
    const perValue = problem.variables.map((v, i) => range(v.size).map((value) => BigInt(truth.filter((s) => s[i] === value).length)));
    expect(countPerValue(problem)).toEqual({ exact: true, counts: perValue });
    const values = problem.variables.map((_, i) => new Set(truth.map((s) => s[i]!)));
    expect(possible(problem)).toEqual({ exact: true, values });

    const project = random.some(range(problem.variables.length), 0.5);
    const key = (s: readonly number[]) => project.map((v) => s[v]).join();
    const projections = new Set(truth.map(key));
    const projected = list(problem, { project });
    expect(projected.solutions.map(key).sort()).toEqual([...projections].sort());
    expect(projected.solutions.every((s) => keys.has(s.join()))).toBe(true);
    expect(count(problem, { project })).toEqual({ count: BigInt(projections.size), exact: true });

    const costs: Cost[] = range(random.int(1, 2)).map(() => ({
      terms: random
        .some(range(problem.variables.length), 0.7)
        .map((variable) => ({ variable, weights: range(problem.variables[variable]!.size).map(() => random.int(-2, 4)) })),
    }));
    const best = new Map<string, number[]>();
    const less = (a: number[], b: number[]) => {
      const i = a.findIndex((n, j) => n !== b[j]);
      return i < 0 ? 0 : a[i]! - b[i]!;
    };
    for (const s of truth) {
      const cost = costs.map((c) => bruteCost(c, s));
      const before = best.get(key(s));
      if (!before || less(cost, before) < 0) best.set(key(s), cost);
    }
    const ranked = cheapest(problem, costs, { k: 4, project });
    expect(ranked.proven).toBe(true);
    expect(ranked.solutions.map((r) => r.cost)).toEqual([...best.values()].sort(less).slice(0, 4));
    expect(new Set(ranked.solutions.map((r) => key(r.solution))).size).toBe(ranked.solutions.length);
    for (const r of ranked.solutions) {
      expect(keys.has(r.solution.join())).toBe(true);
      expect(r.cost).toEqual(costs.map((c) => bruteCost(c, r.solution)));
    }
  });
  // The generator must yield both outcomes, or half of the above checks nothing.
  expect(yes).toBeGreaterThan(rounds / 4);
  expect(no).toBeGreaterThan(rounds / 10);
});

test(`${rounds / 4} random problems with choices: reasons and repairs agree with brute force`, () => {
  let refused = 0;
  each(rounds / 4, 500_000, (problem, random) => {
    const choices: Choice[] = range(random.int(0, 6)).map((i) => ({
      id: `c${i}`,
      rules: range(random.int(1, 2)).map(() => randomRule(random, problem.variables)),
    }));
    const truth = bruteSets(problem, choices);
    if (truth.reasons.length > 0) refused++;
    const why = reasons(problem, choices);
    const cure = repairs(problem, choices);
    expect(why.complete && cure.complete).toBe(true);
    expect(sorted(why.sets)).toEqual(sorted(truth.reasons));
    expect(sorted(cure.sets)).toEqual(sorted(truth.repairs));
    for (const { sets } of [why, cure]) expect(sets.map((s) => s.length)).toEqual(sets.map((s) => s.length).sort((a, b) => a - b));
    const reason = oneReason(problem, choices);
    if (truth.reasons.length === 0) expect(reason).toBeUndefined();
    else expect(sorted(truth.reasons)).toContain([...(reason ?? ["?"])].sort().join());
    const repair = oneRepair(problem, choices);
    if (truth.repairs.length === 0) expect(repair).toBeUndefined();
    else expect(sorted(truth.repairs)).toContain([...(repair ?? ["?"])].sort().join());
  });
  expect(refused).toBeGreaterThan(rounds / 40);
});

test(`${rounds / 4} random problems: explanations over rule ids agree with brute force`, () => {
  let explained = 0;
  each(rounds / 4, 700_000, (problem) => {
    const ids = [...new Set(problem.rules.flatMap((r) => (r.id === undefined ? [] : [r.id])))];
    const asChoices = ids.map((id) => ({ id, rules: problem.rules.filter((r) => r.id === id) }));
    const base = { variables: problem.variables, rules: problem.rules.filter((r) => r.id === undefined) };
    const truth = bruteSets(base, asChoices).reasons;
    const one = explain(problem);
    const all = explainAll(problem);
    expect(all.complete).toBe(true);
    expect(sorted(all.sets)).toEqual(sorted(truth));
    if (truth.length === 0) {
      expect(one.kind).toBe("none");
      return;
    }
    explained++;
    expect(one.minimal).toBe(true);
    expect(sorted(truth)).toContain([...one.ids].sort().join());
    expect(one.others).toBe(truth.length > 1 ? "yes" : "no");
  });
  expect(explained).toBeGreaterThan(rounds / 40);
});

test(`${rounds / 4} random click sequences: a session stays exact, undo in any order`, () => {
  each(rounds / 4, 900_000, (problem, random) => {
    const truth = bruteSolutions(problem);
    const session = openSession(problem);
    const selected = new Map<number, number>();
    for (let click = 0; click < 6; click++) {
      const variable = random.int(0, problem.variables.length - 1);
      if (selected.has(variable) && random.next() < 0.6) {
        selected.delete(variable);
        session.withdraw(variable);
      } else {
        const value = random.int(0, problem.variables[variable]!.size - 1);
        selected.set(variable, value);
        session.select(variable, value);
      }
      const left = truth.filter((s) => [...selected].every(([v, value]) => s[v] === value));
      expect(session.possible()).toEqual({ exact: true, values: problem.variables.map((_, i) => new Set(left.map((s) => s[i]!))) });
      expect(session.count()).toEqual({ count: BigInt(left.length), exact: true });
    }
  });
});
