// Feature models with published counts, histograms by number of selected features, core (in every product) and dead (in none) features.
import { describe, expect, test } from "vitest";
import { count, countPerValue, type Problem, possible } from "../../../src/solver/index.js";
import { casesOf, problemOf } from "./fixtures.js";

interface Expected {
  readonly configurations: number | string;
  readonly bySelectedFeatureCount?: readonly number[];
  readonly core: readonly string[] | number;
  readonly dead: readonly string[] | number;
}

/** The same problem with exactly n of its yes/no variables on "yes". */
function withSelected(problem: Problem, n: number): Problem {
  const variables = problem.variables.map((_, v) => v);
  return { ...problem, rules: [...problem.rules, { kind: "cardinality", variables, values: [1], min: n, max: n }] };
}

describe.each(casesOf<Expected>("models"))("$name ($source)", (given) => {
  const { problem } = problemOf(given);
  const { expected } = given;
  const total = BigInt(expected.configurations);

  test("has the published number of products", () => {
    expect(count(problem)).toEqual({ count: total, exact: true });
  });

  test("has the published core and dead features, by possible values and by counts", () => {
    const found = possible(problem);
    const { counts } = countPerValue(problem);
    expect(found.exact).toBe(true);
    const names = (value: number) => problem.variables.filter((_, v) => !found.values[v]!.has(value)).map((v) => v.name);
    const check = (names: readonly string[], wanted: readonly string[] | number) => {
      if (typeof wanted === "number") expect(names.length).toBe(wanted);
      else expect([...names].sort()).toEqual([...wanted].sort());
    };
    check(names(0), expected.core);
    check(names(1), expected.dead);
    for (const [v, row] of counts.entries()) {
      expect(row[0]! + row[1]!).toBe(total);
      expect(row.map((n) => n > 0n)).toEqual([found.values[v]!.has(0), found.values[v]!.has(1)]);
    }
  });

  const histogram = expected.bySelectedFeatureCount;
  test.runIf(histogram !== undefined)("has the published histogram by number of selected features", () => {
    const found = histogram!.map((_, n) => Number(count(withSelected(problem, n)).count));
    expect(found).toEqual(histogram);
  });
});
