// Rack configuration (CSPLib problem 031): cards of several types go into racks of several models within power and connectors; the
// cheapest total is known, and one unit cheaper is impossible.
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { type Constraint, type Cost, cheapest, decide, type Problem, type Term, type Variable } from "../../../src/solver/index.js";
import { range } from "../../support/solver/random.js";

interface Rack {
  readonly source: string;
  readonly racks: number;
  /** Power, connectors, price. */
  readonly models: readonly (readonly [number, number, number])[];
  /** Power, demand. */
  readonly cards: readonly (readonly [number, number])[];
  readonly optimum: number;
}

const folder = new URL("fixtures/rack/", import.meta.url);
const cases = readdirSync(folder).map((name) => JSON.parse(readFileSync(new URL(name, folder), "utf8")) as Rack);

/** Model 0 is "no rack here". Racks are alike, so they are listed by falling model, which halves nothing but the labels. */
function rackProblem(given: Rack): { problem: Problem; price: Cost } {
  const variables: Variable[] = [];
  const rules: Constraint[] = [];
  const variable = (name: string, size: number) => variables.push({ name, size }) - 1;
  const models = range(given.racks).map((r) => variable(`rack ${r}`, given.models.length + 1));
  const cards = given.cards.map(([, demand], c) => range(given.racks).map((r) => variable(`card ${c} in rack ${r}`, demand + 1)));
  const weigh = (v: number, weight: number): Term => ({ variable: v, weights: range(variables[v]!.size).map((n) => n * weight) });
  const model = (r: number, field: 0 | 1 | 2, sign: number): Term => ({
    variable: models[r]!,
    weights: [0, ...given.models.map((m) => sign * m[field])],
  });
  for (const r of range(given.racks)) {
    rules.push({ kind: "linear", terms: [...cards.map((row, c) => weigh(row[r]!, given.cards[c]![0])), model(r, 0, -1)], max: 0 });
    rules.push({ kind: "linear", terms: [...cards.map((row) => weigh(row[r]!, 1)), model(r, 1, -1)], max: 0 });
    if (r > 0) {
      const rows = range(given.models.length + 1).flatMap((a) => range(a + 1).map((b) => [a, b]));
      rules.push({ kind: "table", variables: [models[r - 1]!, models[r]!], rows });
    }
  }
  given.cards.forEach(([, demand], c) => {
    rules.push({ kind: "linear", terms: cards[c]!.map((v) => weigh(v, 1)), min: demand, max: demand });
  });
  // Follows from the rest: the racks together feed all cards.
  const power = given.cards.reduce((sum, [watts, demand]) => sum + watts * demand, 0);
  rules.push({ kind: "linear", terms: range(given.racks).map((r) => model(r, 0, 1)), min: power });
  return { problem: { variables, rules }, price: { terms: range(given.racks).map((r) => model(r, 2, 1)) } };
}

describe.each(cases)("$source", (given) => {
  const { problem, price } = rackProblem(given);

  test("the cheapest total is the known optimum, with proof", () => {
    const ranked = cheapest(problem, [price], { k: 1 });
    expect(ranked.proven).toBe(true);
    expect(ranked.solutions.map((s) => s.cost)).toEqual([[given.optimum]]);
  });

  test("one unit cheaper is impossible, the optimum itself is possible", () => {
    const within = (max: number): Problem => ({ ...problem, rules: [...problem.rules, { kind: "linear", terms: price.terms, max }] });
    expect(decide(within(given.optimum - 1)).kind).toBe("none");
    expect(decide(within(given.optimum)).kind).toBe("found");
  });
});
