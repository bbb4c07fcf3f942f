// Published lists of all minimal conflicts and all minimal diagnoses.
import { describe, expect, test } from "vitest";
import { oneReason, oneRepair, reasons, repairs } from "../../../src/solver/index.js";
import { casesOf, problemOf } from "./fixtures.js";

interface Expected {
  readonly reasons: readonly (readonly string[])[];
  readonly repairs: readonly (readonly string[])[];
}

const flat = (sets: readonly (readonly string[])[]) => sets.map((set) => [...set].sort().join(" ")).sort();

describe.each(casesOf<Expected>("explain"))("$name ($source)", (given) => {
  const { problem, choices } = problemOf(given);

  test("all minimal conflicts", () => {
    const found = reasons(problem, choices);
    expect(found.complete).toBe(true);
    expect(flat(found.sets)).toEqual(flat(given.expected.reasons));
    expect(flat(given.expected.reasons)).toContain(flat([oneReason(problem, choices) as string[]])[0]);
  });

  test("all minimal diagnoses", () => {
    const found = repairs(problem, choices);
    expect(found.complete).toBe(true);
    expect(flat(found.sets)).toEqual(flat(given.expected.repairs));
    expect(flat(given.expected.repairs)).toContain(flat([oneRepair(problem, choices) as string[]])[0]);
  });
});
