// The planner against its brute-force twin: on random small worlds both must give the same verdict, counts and possible values,
// and every combination offered must pass the independent checker.
import { describe, expect, it } from "vitest";
import { plan } from "../../src/planning/index.js";
import { judge } from "./support/checker/index.js";
import { machineOf, size, twin, verdictFor } from "./support/twin.js";
import { randomSetup } from "./support/world.js";

const worlds = process.env.LONG ? 10_000 : 1_000;
const first = Number(process.env.SEED ?? 1);

describe("planner and brute-force twin", () => {
  it(`agree on ${worlds} random worlds`, () => {
    const seen: Record<string, number> = {};
    for (let seed = first; seed < first + worlds; seed++) {
      const { world, catalogue, build } = randomSetup(seed);
      if (size(world, build) > 20_000) {
        seen.large = (seen.large ?? 0) + 1;
        continue;
      }
      if (build.cards.some((c) => c.as)) seen.copies = (seen.copies ?? 0) + 1;
      if ((build.modes ?? []).length > 2) seen.threeModes = (seen.threeModes ?? 0) + 1;
      const expected = twin(world, build);
      const got = plan(catalogue, build);
      if (got.kind !== "answer") throw new Error(`seed ${seed}: ${got.faults[0]?.says}`);
      const told = { verdict: got.verdict, certain: got.count, open: got.hanging };
      expect(told, `seed ${seed}`).toEqual({ verdict: expected.verdict, certain: String(expected.certain), open: String(expected.open) });
      seen[expected.verdict] = (seen[expected.verdict] ?? 0) + 1;

      for (const choice of got.possible) {
        if (choice.chosen !== undefined) continue;
        for (const v of choice.values) {
          const key = `${choice.id}=${v.value}`;
          const want = expected.certainValues.has(key) ? "workable" : expected.openValues.has(key) ? "unknown" : "ruled-out";
          expect(v.verdict, `seed ${seed}: ${key}`).toBe(want);
        }
      }
      if (got.combinations.length > 0)
        expect(got.combinations[0]!.verdict, `seed ${seed}: the best is as good as the verdict`).toBe(got.verdict);
      for (const c of got.combinations) {
        const j = judge(world, build, machineOf(world, build, c));
        expect(j.bad, `seed ${seed}: offered, and the checker finds it bad`).toEqual([]);
        expect(c.verdict, `seed ${seed}`).toBe(verdictFor(j));
      }
    }
    if (process.env.SHOW) console.log(seen);
    // The generator yields every outcome, often enough to mean something.
    expect([seen.copies ?? 0, seen.threeModes ?? 0].every((n) => n > worlds / 100)).toBe(true);
    for (const verdict of ["workable", "conditional", "ruled-out", "unknown"])
      expect(seen[verdict] ?? 0, verdict).toBeGreaterThan(worlds / 50);
  });
});
