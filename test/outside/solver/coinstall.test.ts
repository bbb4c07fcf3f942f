// Published co-installability cases: every set of versions that can be installed together to meet a request.
import { describe, expect, test } from "vitest";
import { count, list } from "../../../src/solver/index.js";
import { casesOf, problemOf } from "./fixtures.js";

describe.each(casesOf<readonly (readonly string[])[]>("coinstall"))("$name ($source)", (given) => {
  const { problem } = problemOf(given);
  const flat = (sets: readonly (readonly string[])[]) => sets.map((set) => [...set].sort().join()).sort();

  test("lists exactly the published solutions", () => {
    const listed = list(problem);
    expect(listed.complete).toBe(true);
    const sets = listed.solutions.map((s) => problem.variables.filter((_, v) => s[v] === 1).map((v) => v.name));
    expect(flat(sets)).toEqual(flat(given.expected));
    expect(count(problem).count).toBe(BigInt(given.expected.length));
  });
});
