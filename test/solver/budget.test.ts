// A budget that runs out is its own result, never a wrong answer; and `stop` ends every task.
import { expect, test } from "vitest";
import {
  cheapest,
  count,
  countPerValue,
  decide,
  explain,
  list,
  oneReason,
  oneRepair,
  type Problem,
  possible,
  reasons,
  repairs,
} from "../../src/solver/index.js";
import { generateBuild, sizes } from "../bench/generate.js";
import { range } from "../support/solver/random.js";

/** As many variables as values and one variable more: hard without all-different, so told by pairs only. */
const pigeons = (n: number): Problem => ({
  variables: range(n + 1).map((i) => ({ name: `${i}`, size: n })),
  rules: range(n + 1).flatMap((i) =>
    range(i).flatMap((j) =>
      range(n).map((v) => ({
        kind: "forbid" as const,
        literals: [
          { variable: i, values: [v] },
          { variable: j, values: [v] },
        ],
      })),
    ),
  ),
});

test("few steps: stopped, not refused", () => {
  expect(decide(pigeons(9), { steps: 50 })).toEqual({ kind: "stopped" });
  expect(oneReason(pigeons(9), [], { steps: 50 })).toBe("stopped");
  expect(explain(pigeons(9), [], { steps: 50 }).kind).toBe("stopped");
  expect(possible(pigeons(9), { steps: 50 }).exact).toBe(false);
  expect(count(pigeons(9), {}, { steps: 50 }).exact).toBe(false);
});

test("a stop at once ends every task without a claim", () => {
  const { problem, choices, whole } = generateBuild(sizes.medium, "loose", 1);
  const now = { stop: () => true };
  expect(decide(whole, now).kind).toBe("stopped");
  expect(list(whole, {}, now).complete).toBe(false);
  expect(count(whole, {}, now).exact).toBe(false);
  expect(countPerValue(whole, now).exact).toBe(false);
  expect(possible(whole, now).exact).toBe(false);
  expect(cheapest(whole, [], { k: 2 }, now).proven).toBe(false);
  expect(oneReason(problem, choices, now)).toBe("stopped");
  expect(oneRepair(problem, choices, now)).toBe("stopped");
  expect(reasons(problem, choices, now).complete).toBe(false);
  expect(repairs(problem, choices, now).complete).toBe(false);
});

test("a count cut short is a lower bound, and a longer budget never lowers it below what is certain", () => {
  const { whole } = generateBuild(sizes.medium, "normal", 7);
  const exact = count(whole);
  expect(exact.exact).toBe(true);
  for (const steps of [60, 200, 1000]) {
    const cut = count(whole, {}, { steps });
    expect(cut.count <= exact.count).toBe(true);
    if (cut.exact) expect(cut.count).toBe(exact.count);
  }
});
