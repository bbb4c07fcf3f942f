// Published version-choice examples: which versions are chosen, which choices exist, and that in each failing case every statement is needed.
import { describe, expect, test } from "vitest";
import { named } from "../../../src/cli/reading/problem-file.js";
import { cheapest, explain, explainAll, list } from "../../../src/solver/index.js";
import { casesOf, problemOf } from "./fixtures.js";

interface Expected {
  readonly satisfiable: boolean;
  readonly newest?: Record<string, string>;
  readonly all?: readonly Record<string, string>[];
  /** In a failing case: how many statements there are, all of them needed. */
  readonly minimal?: number;
}

describe.each(casesOf<Expected>("versions"))("$name ($source)", (given) => {
  const file = problemOf(given);
  const { expected } = given;

  test.runIf(expected.satisfiable)("the newest choice and the list of all choices", () => {
    const ranked = cheapest(file.problem, file.costs, { k: 1 });
    expect(ranked.proven).toBe(true);
    expect(named(file, ranked.solutions[0]!.solution)).toEqual(expected.newest);
    const all = list(file.problem).solutions.map((s) => JSON.stringify(named(file, s)));
    expect(all.sort()).toEqual((expected.all ?? []).map((s) => JSON.stringify(s)).sort());
    expect(explain(file.problem).kind).toBe("none");
  });

  test.runIf(!expected.satisfiable)("no choice, and every statement is needed for that", () => {
    const ids = file.problem.rules.flatMap((rule) => (rule.id === undefined ? [] : [rule.id]));
    expect(ids.length).toBe(expected.minimal);
    const found = explain(file.problem);
    expect(found).toEqual({ kind: "found", ids, minimal: true, others: "no" });
    expect(explainAll(file.problem)).toEqual({ sets: [ids], complete: true });
  });
});
