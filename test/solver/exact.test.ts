// Sums are exact: decimals, weights at the end of the range and large tables, against trying everything in fractions of whole numbers.
import { expect, test } from "vitest";
import { solveFile } from "../../src/cli/commands/solve.js";
import { readProblemFile } from "../../src/cli/reading/problem-file.js";
import { cheapest, count, decide, type Problem } from "../../src/solver/index.js";
import { Random, range } from "../support/solver/random.js";

const rounds = process.env.LONG ? 4_000 : 400;

/** A number as it is written, and what it is: `units / 10 ** 12`, a unit being small enough for every number below. */
interface Written {
  readonly text: string;
  readonly units: bigint;
}

const unit = 10n ** 12n;

/** A whole number of tenths, hundredths and so on, written out. */
function written(numerator: bigint, places: number): Written {
  const digits = (numerator < 0n ? -numerator : numerator).toString().padStart(places + 1, "0");
  const text = `${numerator < 0n ? "-" : ""}${digits.slice(0, digits.length - places)}${places > 0 ? `.${digits.slice(-places)}` : ""}`;
  return { text, units: (numerator * unit) / 10n ** BigInt(places) };
}

/** What a printed number is, read by its digits alone. */
function unitsOf(printed: number): bigint {
  const [, sign, whole, part = "", exponent = "0"] = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(String(printed)) ?? [];
  const power = 12 - part.length + Number(exponent);
  const size = power >= 0 ? BigInt(`${whole}${part}`) * 10n ** BigInt(power) : BigInt(`${whole}${part}`) / 10n ** BigInt(-power);
  return sign === "-" ? -size : size;
}

/** The ways people write weights: tenths, hundredths and thousandths mixed, and whole numbers far out. */
function weigher(random: Random): () => Written {
  const large = BigInt(random.pick([2 ** 40, 2 ** 49, 1e15]));
  return random.pick<() => Written>([
    () => written(BigInt(random.int(-9, 30)), 1),
    () => written(BigInt(random.int(-200, 900)), random.int(1, 4)),
    () => written(BigInt(random.int(0, 12)) * 5n, 2),
    () => written(large + BigInt(random.int(-3, 3)), 0),
    () => written(BigInt(random.int(0, 3)), 0),
  ]);
}

interface Sum {
  /** For each variable of the sum what each value adds. */
  readonly rows: ReadonlyMap<number, readonly Written[]>;
  readonly text: string;
}

/** A sum over some of the variables, as weights or, the values being numbers, as factors. */
function randomSum(random: Random, values: readonly (readonly Written[])[]): Sum {
  const weigh = weigher(random);
  const among = random.shuffle(range(values.length)).slice(0, random.int(1, values.length));
  const rows = new Map<number, readonly Written[]>();
  const texts = among.map((v) => {
    if (random.next() < 0.3) {
      const factor = written(BigInt(random.int(-3, 5)), 1);
      const products = values[v]!.map(({ units }) => ({ text: "", units: (units * factor.units) / unit }));
      rows.set(v, products);
      return `"v${v}": ${factor.text}`;
    }
    const weights = values[v]!.map(weigh);
    rows.set(v, weights);
    return `"v${v}": [${weights.map((w) => w.text)}]`;
  });
  return { rows, text: `{${texts}}` };
}

const total = (sum: Sum, s: readonly number[]): bigint => [...sum.rows].reduce((n, [v, row]) => n + row[s[v]!]!.units, 0n);

function assignments(sizes: readonly number[]): number[][] {
  return sizes.reduce<number[][]>((all, size) => all.flatMap((s) => range(size).map((value) => [...s, value])), [[]]);
}

test(`${rounds} random files of decimals and large weights: count, list and cheapest agree with fractions`, () => {
  const seen = { none: 0, some: 0, close: 0 };
  for (let seed = 1; seed <= rounds; seed++) {
    const random = new Random(81_000 + seed);
    const values = range(random.int(2, 5)).map(() => range(random.int(2, 4)).map((i) => written(BigInt(random.int(0, 4) + 5 * i), 1)));
    const all = assignments(values.map((v) => v.length));
    const sums = range(random.int(1, 3)).map(() => {
      const sum = randomSum(random, values);
      // Bounds that some assignment meets just so, where a rounded sum falls on the wrong side.
      const edge = () => total(sum, random.pick(all));
      const [one, two] = [edge(), edge()];
      const [min, max] = one < two ? [one, two] : [two, one];
      return random.next() < 0.4 ? { sum, min: max, max } : { sum, min, max };
    });
    const costs = range(random.int(1, 2)).map(() => randomSum(random, values));
    const bound = (units: bigint) => written(units, 12).text.replace(/\.?0+$/, "");
    const text = `{"variables": {${values.map((v, i) => `"v${i}": [${v.map((w) => w.text)}]`)}},
      "rules": [${sums.map(({ sum, min, max }) => `{"kind": "linear", "terms": ${sum.text}, "min": ${bound(min)}, "max": ${bound(max)}}`)}],
      "costs": [${costs.map((c) => c.text)}]}`;
    const read = readProblemFile(text);
    if (read.kind === "bad") {
      expect(read.mistakes[0], text).toMatch(/sums are exact up to|cannot be held exactly/);
      continue;
    }
    const ask = (task: "count" | "list" | "cheapest", limit = 10_000) => solveFile(read.file, task, { limit }).answer as never;
    const truth = all.filter((s) => sums.every(({ sum, min, max }) => total(sum, s) >= min && total(sum, s) <= max));
    seen[truth.length > 0 ? "some" : "none"]++;
    expect(ask("count"), text).toEqual({ task: "count", count: String(truth.length), exact: true });
    const told = (ask("list") as { solutions: Record<string, number>[] }).solutions.map((s) => values.map((_, v) => s[`v${v}`]).join());
    const right = truth.map((s) => s.map((value, v) => Number(values[v]![value]!.text)).join());
    expect(told.sort(), text).toEqual(right.sort());
    const ranked = ask("cheapest", 3) as { solutions: { cost: number[] }[]; proven: boolean };
    const less = (a: readonly bigint[], b: readonly bigint[]) => Number(a.map((n, i) => n - b[i]!).find((d) => d !== 0n) ?? 0n);
    const best = truth.map((s) => costs.map((c) => total(c, s))).sort(less);
    if (best.length > 1 && less(best[0]!, best[1]!) !== 0) seen.close++;
    expect(ranked.proven, text).toBe(true);
    expect(
      ranked.solutions.map(({ cost }) => cost.map(unitsOf)),
      text,
    ).toEqual(best.slice(0, 3));
  }
  expect(seen.some).toBeGreaterThan(rounds / 3);
  expect(seen.close).toBeGreaterThan(rounds / 10);
});

test("seven, two and one tenth make one", () => {
  const read = readProblemFile(`{"variables": {"a": [0, 0.7], "b": [0, 0.2], "c": [0, 0.1]},
    "rules": [{"kind": "linear", "terms": {"a": 1, "b": 1, "c": 1}, "min": 1, "max": 1}]}`);
  if (read.kind === "bad") throw new Error(read.mistakes[0]);
  expect(solveFile(read.file, "decide").answer).toEqual({ task: "decide", kind: "found", solution: { a: 0.7, b: 0.2, c: 0.1 } });
  expect(solveFile(read.file, "count").answer).toEqual({ task: "count", count: "1", exact: true });
});

const three: Problem = { variables: range(3).map((i) => ({ name: `${i}`, size: 3 })), rules: [] };
const sum = (weights: readonly number[]) => ({ terms: three.variables.map((_, variable) => ({ variable, weights })) });

test("weights at the end of the range: the cheapest is found, and few steps end the search", () => {
  const most = 2 ** 53 - 1;
  const costs = [{ terms: [{ variable: 0, weights: [most, most - 1, most - 2] }] }];
  expect(cheapest(three, costs, { k: 3 }).solutions.map((s) => s.cost[0])).toEqual([most - 2, most - 2, most - 2]);
  const far = {
    terms: [
      { variable: 0, weights: [-(2 ** 52), 2 ** 51, 1] },
      { variable: 1, weights: [0, 3, 2 ** 51] },
    ],
  };
  expect(cheapest(three, [far], { k: 1 }, { steps: 200 })).toMatchObject({ solutions: [{ cost: [-(2 ** 52)] }], proven: true });
  const parity: Problem = {
    variables: range(12).map((i) => ({ name: `${i}`, size: 2 })),
    rules: [{ kind: "linear", terms: range(12).map((variable) => ({ variable, weights: [0, 2] })), min: 13, max: 13 }],
  };
  const wide = { terms: range(12).map((variable) => ({ variable, weights: [0, 2 ** 49 - variable] })) };
  expect(cheapest(parity, [wide], { k: 1 }, { steps: 10 }).proven).toBe(false);
});

test("weights that are not whole, or sums past the range, are refused at the door", () => {
  for (const weights of [
    [0.5, 1, 2],
    [0, 1, Number.POSITIVE_INFINITY],
    [0, 0, 2 ** 52],
  ]) {
    expect(() => cheapest(three, [sum(weights)], { k: 1 }), `${weights}`).toThrow(RangeError);
    expect(() => decide({ ...three, rules: [{ kind: "linear", ...sum(weights), max: 3 }] }), `${weights}`).toThrow(RangeError);
  }
});

test("large tables count what their rows say", () => {
  for (let seed = 1; seed <= 6; seed++) {
    const random = new Random(91_000 + seed);
    const sizes = [random.int(20, 70), random.int(20, 70), random.int(20, 70), 12];
    const rows = (columns: readonly number[], n: number) => range(n).map(() => columns.map((c) => random.int(0, sizes[c]! - 1)));
    const [one, two] = [rows([0, 1, 2], 20_000), rows([1, 2, 3], 20_000)];
    const weights = sizes.map((size) => range(size).map(() => random.int(0, 99)));
    const problem: Problem = {
      variables: sizes.map((size, i) => ({ name: `${i}`, size })),
      rules: [
        { kind: "table", variables: [0, 1, 2], rows: one },
        { kind: "table", variables: [1, 2, 3], rows: two },
        { kind: "linear", terms: sizes.map((_, variable) => ({ variable, weights: weights[variable]! })), max: 60 },
      ],
    };
    const second = new Set(two.map((row) => row.join()));
    const first = [...new Set(one.map((row) => row.join()))].map((row) => row.split(",").map(Number));
    let truth = 0n;
    for (const [a, b, c] of first as [number, number, number][]) {
      for (const d of range(12)) {
        const within = weights[0]![a]! + weights[1]![b]! + weights[2]![c]! + weights[3]![d]! <= 60;
        if (within && second.has([b, c, d].join())) truth++;
      }
    }
    expect(count(problem), `seed ${seed}`).toEqual({ count: truth, exact: true });
  }
});
