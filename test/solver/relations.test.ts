// What must stay true when a problem is changed, on random problems, without any twin: the engine against itself.
import { expect, test } from "vitest";
import { type Choice, type Constraint, count, decide, list, type Problem, possible, reasons, repairs } from "../../src/solver/index.js";
import { Random, randomProblem, randomRule, range } from "../support/solver/random.js";

const rounds = process.env.LONG ? 3_000 : 300;

function each(from: number, check: (problem: Problem, random: Random) => void): void {
  for (let seed = from; seed < from + rounds; seed++) {
    const random = new Random(seed);
    const problem = randomProblem(random);
    try {
      check(problem, random);
    } catch (error) {
      throw new Error(`seed ${seed}: ${(error as Error).message}`, { cause: error });
    }
  }
}

const solutions = (problem: Problem) => list(problem).solutions.map((s) => s.join());

/** The same problem with its variables in another order. */
function reordered(problem: Problem, order: readonly number[]): Problem {
  const place = (v: number) => order.indexOf(v);
  const literal = <T extends { readonly variable: number }>(l: T): T => ({ ...l, variable: place(l.variable) });
  const rule = (r: Constraint): Constraint => {
    switch (r.kind) {
      case "unary":
        return literal(r);
      case "forbid":
      case "clause":
        return { ...r, literals: r.literals.map(literal) };
      case "linear":
        return { ...r, terms: r.terms.map(literal) };
      case "disjoint":
        return { ...r, occupiers: r.occupiers.map(literal) };
      default:
        return { ...r, variables: r.variables.map(place) };
    }
  };
  return { variables: order.map((v) => problem.variables[v]!), rules: problem.rules.map(rule) };
}

test("adding a rule never adds a solution", () => {
  let fewer = 0;
  each(10_000, (problem, random) => {
    const before = new Set(solutions(problem));
    const after = solutions({ ...problem, rules: [...problem.rules, randomRule(random, problem.variables)] });
    expect(after.every((s) => before.has(s))).toBe(true);
    if (after.length < before.size) fewer++;
  });
  expect(fewer).toBeGreaterThan(rounds / 20);
});

test("the order of rules and of variables changes nothing", () => {
  each(20_000, (problem, random) => {
    const shuffled = { ...problem, rules: random.shuffle(problem.rules) };
    expect(solutions(shuffled).sort()).toEqual(solutions(problem).sort());
    const order = random.shuffle(range(problem.variables.length));
    const other = reordered(problem, order);
    expect(count(other)).toEqual(count(problem));
    const values = possible(problem).values;
    expect(possible(other).values).toEqual(order.map((v) => values[v]));
  });
});

test("asked twice, the same answer in the same order", () => {
  each(30_000, (problem) => {
    expect(list(problem)).toEqual(list(problem));
    expect(decide(problem)).toEqual(decide(problem));
  });
});

test("an unused variable multiplies the count by its size", () => {
  each(40_000, (problem, random) => {
    const size = random.int(1, 40);
    const wider = { ...problem, variables: [...problem.variables, { name: "unused", size }] };
    expect(count(wider).count).toBe(count(problem).count * BigInt(size));
  });
});

test("possible values are the union of the solutions", () => {
  each(50_000, (problem) => {
    const all = list(problem).solutions;
    expect(possible(problem).values).toEqual(problem.variables.map((_, v) => new Set(all.map((s) => s[v]!))));
  });
});

test("reasons fail and their subsets hold; repairs restore and their subsets do not; each list hits the other minimally", () => {
  let checked = 0;
  each(60_000, (problem, random) => {
    const choices: Choice[] = range(6).map((i) => ({ id: `c${i}`, rules: [randomRule(random, problem.variables)] }));
    const holds = (ids: readonly string[]) =>
      decide({ ...problem, rules: [...problem.rules, ...choices.filter((c) => ids.includes(c.id)).flatMap((c) => c.rules)] }).kind ===
      "found";
    if (!holds([])) return;
    const all = choices.map((c) => c.id);
    const why = reasons(problem, choices).sets;
    const cure = repairs(problem, choices).sets;
    const without = (ids: readonly string[], gone: readonly string[]) => ids.filter((id) => !gone.includes(id));
    for (const reason of why) {
      checked++;
      expect(holds(reason)).toBe(false);
      for (const id of reason) expect(holds(without(reason, [id]))).toBe(true);
    }
    for (const repair of cure) {
      expect(holds(without(all, repair))).toBe(true);
      for (const id of repair) expect(holds(without(all, without(repair, [id])))).toBe(false);
    }
    expect(minimalHittingSets(why, all)).toEqual(cure.map((s) => s.join()).sort());
    if (why.length > 0) expect(minimalHittingSets(cure, all)).toEqual(why.map((s) => s.join()).sort());
  });
  expect(checked).toBeGreaterThan(rounds / 5);
});

function minimalHittingSets(sets: readonly (readonly string[])[], all: readonly string[]): string[] {
  const subsets = range(1 << all.length).map((mask) => all.filter((_, i) => mask & (1 << i)));
  const hitting = subsets.filter((s) => sets.every((set) => set.some((id) => s.includes(id))));
  return hitting
    .filter((s) => s.every((id) => !hitting.some((h) => h.length === s.length - 1 && !h.includes(id) && h.every((x) => s.includes(x)))))
    .map((s) => s.join())
    .sort();
}
