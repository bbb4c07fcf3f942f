// Problems of a size nobody builds a machine of: setting up is paid for out of the budget, and no step of it grows out of hand.
import { describe, expect, test } from "vitest";
import {
  type Constraint,
  cheapest,
  count,
  decide,
  explain,
  list,
  oneReason,
  openSession,
  type Problem,
  possible,
  reasons,
  solves,
} from "../../src/solver/index.js";
import { Random, range } from "../support/solver/random.js";

const variables = (count: number, size: number) => range(count).map((i) => ({ name: `v${i}`, size }));

const large: Readonly<Record<string, () => Problem>> = {
  "5,000 runs of two values that must not meet": () => {
    const runs = (first: number) => range(5_000).map((i): readonly [number, number] => [4 * i + first, 4 * i + first + 1]);
    const occupiers = range(2).map((variable) => ({
      variable,
      windows: range(20).map((value) => runs((variable + value) % 2 === 0 ? 0 : 2)),
    }));
    return { variables: variables(2, 20), rules: [{ kind: "disjoint", occupiers }] };
  },
  "5,000 variables with a run each": () => {
    const occupiers = range(5_000).map((variable) => ({ variable, windows: [[[3 * variable, 3 * variable + 1] as const], []] }));
    return { variables: variables(5_000, 2), rules: [{ kind: "disjoint", occupiers }] };
  },
  "a table of 100,000 rows over three variables of 2,000 values": () => {
    const random = new Random(7);
    const rows = range(100_000).map(() => range(3).map(() => random.int(0, 1_999)));
    return { variables: variables(3, 2_000), rules: [{ kind: "table", variables: [0, 1, 2], rows }] };
  },
  "a table of 100,000 rows over two variables of 10,000 values": () => {
    const random = new Random(8);
    const rows = range(100_000).map(() => [random.int(0, 9_999), random.int(0, 9_999)]);
    return { variables: variables(2, 10_000), rules: [{ kind: "table", variables: [0, 1], rows }] };
  },
  "clauses of 10,000 literals": () => {
    const rules = range(40).map(
      (k): Constraint => ({ kind: "clause", literals: range(10_000).map((variable) => ({ variable, values: [(variable + k) % 2] })) }),
    );
    return { variables: variables(10_000, 2), rules };
  },
};

describe.each(Object.keys(large))("%s", (name) => {
  const problem = large[name]!();
  const choices = problem.rules.map((rule, i) => ({ id: `${i}`, rules: [rule] }));

  test("has a solution", () => {
    const found = decide(problem);
    expect(found.kind).toBe("found");
    if (found.kind === "found") expect(solves(problem, found.solution)).toBe(true);
  });

  test("no steps: every task ends in setting up, without a claim", () => {
    const none = { steps: 0 };
    expect(decide(problem, none).kind).toBe("stopped");
    expect(list(problem, {}, none)).toEqual({ solutions: [], complete: false });
    expect(count(problem, {}, none)).toMatchObject({ exact: false });
    expect(possible(problem, none).exact).toBe(false);
    expect(cheapest(problem, [], { k: 1 }, none)).toMatchObject({ solutions: [], proven: false });
    expect(oneReason({ ...problem, rules: [] }, choices, none)).toBe("stopped");
    expect(reasons({ ...problem, rules: [] }, choices, none).complete).toBe(false);
    expect(explain(problem, [], none).kind).toBe("stopped");
    const session = openSession(problem);
    expect(session.possible(none).exact).toBe(false);
    expect(session.count(none).exact).toBe(false);
    // What was not set up for want of steps is set up for whoever pays.
    expect(session.count({ steps: 10_000 }).count).toBeGreaterThan(0n);
  });

  test("setting up asks whether to stop", () => {
    let times = 0;
    const stopped = decide(problem, { stop: () => ++times > 0 });
    expect(stopped.kind).toBe("stopped");
    expect(times).toBe(1);
  });
});

test("a chain of 3,000 variables in any order is counted exactly", () => {
  const rows = [
    [0, 1],
    [1, 2],
    [2, 0],
    [0, 0],
    [1, 1],
  ];
  for (const length of [65, 200, 3_000]) {
    const order = new Random(length).shuffle(range(length));
    const rules = range(length - 1).map((i): Constraint => ({ kind: "table", variables: [order[i]!, order[i + 1]!], rows }));
    // Going along the chain: how many ways end in each value.
    let ways = [1n, 1n, 1n];
    for (let i = 1; i < length; i++) ways = range(3).map((to) => rows.reduce((n, row) => (row[1] === to ? n + ways[row[0]!]! : n), 0n));
    expect(count({ variables: variables(length, 3), rules }), `${length}`).toEqual({ count: ways[0]! + ways[1]! + ways[2]!, exact: true });
  }
});

test("of runs compared along their starts none that meet are missed", () => {
  const seen = { meet: 0, apart: 0 };
  for (let seed = 1; seed <= 300; seed++) {
    const random = new Random(60_000 + seed);
    const run = (): readonly [number, number] => {
      const from = random.int(-40, 40);
      return [from, from + random.int(0, random.pick([0, 3, 12]))];
    };
    const windows = range(5).map(() => range(3).map(() => range(random.int(0, 6)).map(run)));
    const problem: Problem = {
      variables: variables(5, 3),
      rules: [{ kind: "disjoint", occupiers: windows.map((of, variable) => ({ variable, windows: of })) }],
    };
    const taken = (v: number, value: number) => windows[v]![value]!.flatMap(([from, to]) => range(to - from + 1).map((i) => from + i));
    let truth = 0;
    for (let code = 0; code < 3 ** 5; code++) {
      const all = range(5).flatMap((v) => [...new Set(taken(v, Math.floor(code / 3 ** v) % 3))]);
      if (new Set(all).size === all.length) truth++;
    }
    seen[truth > 0 ? "apart" : "meet"]++;
    expect(count(problem), `seed ${seed}`).toEqual({ count: BigInt(truth), exact: true });
  }
  expect(seen.apart).toBeGreaterThan(30);
  expect(seen.meet).toBeGreaterThan(30);
});
