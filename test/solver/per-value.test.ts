// Counts per value agree with counting each value by itself, where the diagram reaches and where it does not.
import { expect, test } from "vitest";
import { count, countPerValue } from "../../src/solver/index.js";
import { generateBuild, sizes } from "../bench/generate.js";

test.each([
  ["within the diagram's reach", { slots: 4, cards: 5, firmware: 5, conflicts: 12 }, 2],
  ["beyond it", sizes.medium, 6],
] as const)("%s", (_, size, seed) => {
  const { whole } = generateBuild(size, "normal", seed);
  const total = count(whole);
  const found = countPerValue(whole);
  expect(total.exact && found.exact).toBe(true);
  expect(total.count).toBeGreaterThan(0n);
  for (const row of found.counts) expect(row.reduce((sum, n) => sum + n, 0n)).toBe(total.count);
  for (const variable of [0, 2, 3, whole.variables.length - 1]) {
    const values = [0, whole.variables[variable]!.size - 1];
    for (const value of values) {
      const taken = count({ ...whole, rules: [...whole.rules, { kind: "unary", variable, values: [value] }] });
      expect(found.counts[variable]![value]).toBe(taken.count);
    }
  }
});

test("cut short, each count is a lower bound", () => {
  const { whole } = generateBuild(sizes.medium, "normal", 6);
  const exact = countPerValue(whole).counts;
  const cut = countPerValue(whole, { steps: 5300 });
  expect(cut.exact).toBe(false);
  expect(cut.counts.flat().some((n) => n > 0n)).toBe(true);
  cut.counts.forEach((row, v) => {
    row.forEach((n, value) => {
      expect(n <= exact[v]![value]!).toBe(true);
    });
  });
});
