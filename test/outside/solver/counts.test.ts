// Published counts (OEIS sequences, CSPLib problems) and textbook puzzles. Values marked "from memory" were not looked up again.
import { describe, expect, test } from "vitest";
import { type Constraint, cheapest, count, decide, list, type Problem, type Solution } from "../../../src/solver/index.js";
import { range } from "../../support/solver/random.js";

const total = (problem: Problem): number => {
  const found = count(problem);
  expect(found.exact).toBe(true);
  return Number(found.count);
};
const variables = (n: number, size: number) => range(n).map((i) => ({ name: `x${i}`, size }));
/** A table of the pairs of values that satisfy a relation. */
const pairs = (a: number, b: number, size: number, relation: (x: number, y: number) => boolean): Constraint => ({
  kind: "table",
  variables: [a, b],
  rows: range(size).flatMap((x) =>
    range(size)
      .filter((y) => relation(x, y))
      .map((y) => [x, y]),
  ),
});
const eachPair = <T>(n: number, make: (i: number, j: number) => T): T[] =>
  range(n).flatMap((i) =>
    range(n)
      .slice(i + 1)
      .map((j) => make(i, j)),
  );

function queens(n: number): Problem {
  const apart = eachPair(n, (i, j) => pairs(i, j, n, (a, b) => Math.abs(a - b) !== j - i));
  return { variables: variables(n, n), rules: [{ kind: "allDifferent", variables: range(n) }, ...apart] };
}

function latin(n: number): Problem {
  const lines = range(n).flatMap((i) => [range(n).map((j) => i * n + j), range(n).map((j) => j * n + i)]);
  return { variables: variables(n * n, n), rules: lines.map((line) => ({ kind: "allDifferent", variables: line })) };
}

/** Two copies of each number k stand k + 1 places apart: variable k is where the first copy stands. */
function langford(n: number): Problem {
  const spots = (k: number, from: number) => [from, from + k + 2];
  return {
    variables: range(n).map((k) => ({ name: `${k + 1}`, size: Math.max(0, 2 * n - k - 2) })),
    rules: [
      {
        kind: "disjoint",
        occupiers: range(n).map((k) => ({
          variable: k,
          windows: range(Math.max(0, 2 * n - k - 2)).map((from) => spots(k, from).map((s): [number, number] => [s, s])),
        })),
      },
    ],
  };
}

/** Marks of a ruler no longer than `length`; all distances differ. */
function golomb(marks: number, length: number): Problem {
  const size = length + 1;
  const names = eachPair(marks, (i, j) => [i, j] as const);
  const distance = names.map((_, d) => marks + d);
  return {
    variables: variables(marks + names.length, size),
    rules: [
      { kind: "unary", variable: 0, values: [0] },
      ...names.map(
        ([i, j], d): Constraint => ({
          kind: "table",
          variables: [i, j, marks + d],
          rows: range(size).flatMap((a) =>
            range(size)
              .filter((b) => b > a)
              .map((b) => [a, b, b - a]),
          ),
        }),
      ),
      { kind: "allDifferent", variables: distance },
    ],
  };
}

const graph = (n: number, edges: readonly (readonly [number, number])[], colours: number): Problem => ({
  variables: variables(n, colours),
  rules: edges.map(([a, b]) => ({ kind: "allDifferent", variables: [a, b] })),
});

const cube = eachPair(8, (i, j) => [i, j] as const).filter(([i, j]) => [1, 2, 4].includes(i ^ j));
const petersen = range(5).flatMap((i): [number, number][] => [
  [i, (i + 1) % 5],
  [i, i + 5],
  [5 + i, 5 + ((i + 2) % 5)],
]);

describe("published counts", () => {
  test("queens (OEIS A000170)", () => {
    expect(range(8).map((n) => total(queens(n + 1)))).toEqual([1, 0, 0, 2, 10, 4, 40, 92]);
  });
  test("Latin squares (OEIS A002860)", () => {
    expect(range(4).map((n) => total(latin(n + 1)))).toEqual([1, 2, 12, 576]);
  });
  test("Langford pairings, up to reversal (OEIS A014552, CSPLib 024: only for n = 4k or 4k-1)", () => {
    expect(range(8).map((n) => total(langford(n + 1)) / 2)).toEqual([0, 0, 1, 1, 0, 0, 26, 150]);
  });
  test("shortest Golomb rulers (OEIS A003022, CSPLib 006), one unit shorter impossible", () => {
    for (const [marks, length] of [
      [3, 3],
      [4, 6],
      [5, 11],
    ] as const) {
      const last = { terms: [{ variable: marks - 1, weights: range(length + 4) }] };
      const best = cheapest(golomb(marks, length + 3), [last], { k: 1 });
      expect(best.proven).toBe(true);
      expect(best.solutions[0]!.cost).toEqual([length]);
      expect(decide(golomb(marks, length - 1)).kind).toBe("none");
    }
  });
  test("colourings of the cube (OEIS A140986)", () => {
    expect([1, 2, 3, 4].map((k) => total(graph(8, cube, k)))).toEqual([0, 2, 114, 2652]);
  });
  test("colourings of Petersen's graph with 3 and 4 colours (chromatic polynomial, from memory)", () => {
    expect([2, 3, 4].map((k) => total(graph(10, petersen, k)))).toEqual([0, 120, 12960]);
  });
  test("colourings of a cycle: (k-1)^n + (-1)^n (k-1)", () => {
    for (const n of [5, 8, 20]) {
      const ring = range(n).map((i): [number, number] => [i, (i + 1) % n]);
      expect(count(graph(n, ring, 4)).count).toBe(3n ** BigInt(n) + (n % 2 === 0 ? 3n : -3n));
    }
  });
  test("permutations and derangements (OEIS A000142, A000166)", () => {
    const permutations = (n: number): Problem => ({ variables: variables(n, n), rules: [{ kind: "allDifferent", variables: range(n) }] });
    const derangements = (n: number): Problem => {
      const given = permutations(n);
      return {
        ...given,
        rules: [...given.rules, ...range(n).map((i): Constraint => ({ kind: "forbid", literals: [{ variable: i, values: [i] }] }))],
      };
    };
    expect([5, 10, 20].map((n) => count(permutations(n)).count)).toEqual([120n, 3628800n, 2432902008176640000n]);
    expect(
      range(9)
        .slice(1)
        .map((n) => total(derangements(n))),
    ).toEqual([0, 1, 2, 9, 44, 265, 1854, 14833]);
  });
  test("binary words without two ones in a row (Fibonacci numbers, OEIS A000045)", () => {
    const words = (n: number): Problem => ({
      variables: variables(n, 2),
      rules: range(n - 1).map((i) => ({
        kind: "forbid",
        literals: [
          { variable: i, values: [1] },
          { variable: i + 1, values: [1] },
        ],
      })),
    });
    expect(total(words(10))).toBe(144);
    expect(count(words(90)).count).toBe(7540113804746346429n);
  });
  test("sudoku squares of order 4 (OEIS A107739, from memory)", () => {
    const blocks = [0, 2, 8, 10].map((at): Constraint => ({ kind: "allDifferent", variables: [at, at + 1, at + 4, at + 5] }));
    const given = latin(4);
    expect(total({ ...given, rules: [...given.rules, ...blocks] })).toBe(288);
  });
  test("magic squares of order 3: eight, one up to symmetry", () => {
    const rows = [
      [0, 1, 2],
      [3, 4, 5],
      [6, 7, 8],
      [0, 3, 6],
      [1, 4, 7],
      [2, 5, 8],
      [0, 4, 8],
      [2, 4, 6],
    ];
    const sums = rows.map(
      (row): Constraint => ({
        kind: "linear",
        terms: row.map((variable) => ({ variable, weights: range(9).map((v) => v + 1) })),
        min: 15,
        max: 15,
      }),
    );
    expect(total({ variables: variables(9, 9), rules: [{ kind: "allDifferent", variables: range(9) }, ...sums] })).toBe(8);
  });
});

describe("textbook puzzles", () => {
  test("SEND + MORE = MONEY has one solution: 9567 + 1085 = 10652", () => {
    const letters = [..."SENDMORY"];
    const weights: Record<string, number> = {};
    const add = (word: string, sign: number) =>
      [...word].reverse().forEach((l, i) => {
        weights[l] = (weights[l] ?? 0) + sign * 10 ** i;
      });
    add("SEND", 1);
    add("MORE", 1);
    add("MONEY", -1);
    const problem: Problem = {
      variables: letters.map((name) => ({ name, size: 10 })),
      rules: [
        { kind: "allDifferent", variables: range(8) },
        {
          kind: "linear",
          terms: letters.map((l, variable) => ({ variable, weights: range(10).map((d) => d * weights[l]!) })),
          min: 0,
          max: 0,
        },
        ...["S", "M"].map((l): Constraint => ({ kind: "unary", variable: letters.indexOf(l), values: range(10).slice(1) })),
      ],
    };
    const all = list(problem);
    expect(all.complete).toBe(true);
    const spell = (word: string, s: Solution) => Number([...word].map((l) => s[letters.indexOf(l)]).join(""));
    expect(all.solutions.map((s) => ["SEND", "MORE", "MONEY"].map((w) => spell(w, s)))).toEqual([[9567, 1085, 10652]]);
  });

  test("colouring the mainland of Australia and Tasmania with three colours: 18 ways", () => {
    const [wa, nt, sa, q, nsw, v] = range(6) as [number, number, number, number, number, number];
    const borders: [number, number][] = [
      [wa, nt],
      [wa, sa],
      [nt, sa],
      [nt, q],
      [sa, q],
      [sa, nsw],
      [sa, v],
      [q, nsw],
      [nsw, v],
    ];
    expect(total(graph(7, borders, 3))).toBe(18);
    expect(decide(graph(7, borders, 2)).kind).toBe("none");
  });

  test("the zebra puzzle (Life International, 1962): one solution, the Norwegian drinks water, the Japanese owns the zebra", () => {
    const groups = [
      "red green ivory yellow blue",
      "English Spanish Ukrainian Norwegian Japanese",
      "dog snails fox horse zebra",
      "coffee tea milk juice water",
      "OldGold Kools Chesterfield LuckyStrike Parliament",
    ].map((g) => g.split(" "));
    const names = groups.flat();
    const at = (name: string) => names.indexOf(name);
    const is = (a: string, b: string) => pairs(at(a), at(b), 5, (x, y) => x === y);
    const next = (a: string, b: string) => pairs(at(a), at(b), 5, (x, y) => Math.abs(x - y) === 1);
    const problem: Problem = {
      variables: names.map((name) => ({ name, size: 5 })),
      rules: [
        ...groups.map((g): Constraint => ({ kind: "allDifferent", variables: g.map(at) })),
        is("English", "red"),
        is("Spanish", "dog"),
        is("coffee", "green"),
        is("Ukrainian", "tea"),
        pairs(at("ivory"), at("green"), 5, (x, y) => y === x + 1),
        is("OldGold", "snails"),
        is("Kools", "yellow"),
        { kind: "unary", variable: at("milk"), values: [2] },
        { kind: "unary", variable: at("Norwegian"), values: [0] },
        next("Chesterfield", "fox"),
        next("Kools", "horse"),
        is("LuckyStrike", "juice"),
        is("Japanese", "Parliament"),
        next("Norwegian", "blue"),
      ],
    };
    const all = list(problem);
    expect(all.solutions.length).toBe(1);
    const owner = (thing: string) => groups[1]!.find((who) => all.solutions[0]![at(who)] === all.solutions[0]![at(thing)]);
    expect([owner("water"), owner("zebra")]).toEqual(["Norwegian", "Japanese"]);
  });
});
