// Permanents by kinds against Ryser's formula, and closed forms; and the count that rests on them against the diagram, which does not.

import { describe, expect, test } from "vitest";
import { DiagramBuilder } from "../../src/solver/count/diagram-builder.js";
import { Permanents } from "../../src/solver/count/permanents.js";
import { Engine } from "../../src/solver/engine/engine.js";
import { maskOf } from "../../src/solver/engine/propagator.js";
import { count } from "../../src/solver/index.js";
import { StepBudget } from "../../src/solver/model/step-budget.js";
import { generateBuild, type Strain, sizes } from "../bench/generate.js";
import { Random, range } from "../support/solver/random.js";

const none = (size: number) => maskOf(size, []);
const permanent = (rows: readonly (readonly number[])[], size: number, shared: readonly number[] = []) =>
  new Permanents().count(
    rows.map((row) => maskOf(size, row)),
    maskOf(size, shared),
  );

/** Permanent of a square matrix of zeros and ones (Ryser, "Combinatorial Mathematics", 1963, chapter 2, theorem 4.1; from memory). */
function ryser(rows: readonly (readonly number[])[]): bigint {
  const n = rows.length;
  let sum = 0n;
  for (let set = 1; set < 1 << n; set++) {
    let product = 1n;
    for (const row of rows) product *= BigInt(row.filter((value) => (set >> value) & 1).length);
    const size = range(n).filter((value) => (set >> value) & 1).length;
    sum += (n - size) % 2 === 0 ? product : -product;
  }
  return sum;
}

/** One variable after another, whatever is left. */
function tried(rows: readonly (readonly number[])[], shared: readonly number[], taken: readonly number[] = []): bigint {
  if (taken.length === rows.length) return 1n;
  const open = rows[taken.length]!.filter((value) => shared.includes(value) || !taken.includes(value));
  return open.reduce((sum, value) => sum + tried(rows, shared, [...taken, value]), 0n);
}

test("square matrices: as Ryser's formula has it", () => {
  const random = new Random(11);
  for (const _ of range(150)) {
    const n = random.int(1, 9);
    const rows = range(n).map(() => random.some(range(n), 0.6));
    expect(permanent(rows, n)).toBe(ryser(rows));
  }
});

test("more values than variables, and values that may be shared: as trying has it", () => {
  const random = new Random(12);
  for (const _ of range(150)) {
    const size = random.int(2, 9);
    const rows = range(random.int(1, 6)).map(() => random.some(range(size), 0.6));
    const shared = random.some(range(size), 0.2);
    expect(permanent(rows, size, shared)).toBe(tried(rows, shared));
  }
});

describe("closed forms", () => {
  test("everything allowed: the falling factorial, far beyond a double", () => {
    const falling = (m: number, n: number) => range(n).reduce((product, i) => product * BigInt(m - i), 1n);
    expect(
      permanent(
        range(20).map(() => range(20)),
        20,
      ),
    ).toBe(falling(20, 20));
    expect(
      permanent(
        range(12).map(() => range(40)),
        40,
      ),
    ).toBe(falling(40, 12));
  });
  test("beyond what it holds it says so, and is as good as new after", () => {
    const permanents = new Permanents();
    const all = range(36).map(() => maskOf(36, range(36)));
    expect(permanents.count(all, none(36))).toBeUndefined();
    expect(permanents.count([maskOf(3, [0, 1]), maskOf(3, [1, 2])], none(3))).toBe(3n);
  });
  test.each([
    // Derangements, OEIS A000166, and ménage numbers, OEIS A000179 (both from memory).
    ["derangements", (i: number, j: number) => i !== j, [0n, 1n, 2n, 9n, 44n, 265n, 1854n, 14833n, 133496n]],
    [
      "ménage numbers",
      (i: number, j: number, n: number) => i !== j && (i + 1) % n !== j,
      [undefined, 0n, 1n, 2n, 13n, 80n, 579n, 4738n, 43387n],
    ],
  ] as const)("%s", (_, allowed, terms) => {
    terms.forEach((term, i) => {
      const n = i + 1;
      if (term !== undefined)
        expect(
          permanent(
            range(n).map((row) => range(n).filter((column) => allowed(row, column, n))),
            n,
          ),
        ).toBe(term);
    });
  });
});

test.each(["normal", "tight", "loose"] as const)("%s builds: the count is the diagram's", (strain: Strain) => {
  let compared = 0;
  for (const seed of range(12)) {
    for (const size of [sizes.small, { slots: 7, cards: 8, firmware: 8, conflicts: 25 }]) {
      const { whole } = generateBuild(size, strain, 400 + seed);
      const engine = new Engine(whole);
      if (!engine.wake()) continue;
      const diagram = new DiagramBuilder(engine, new StepBudget({ steps: 30_000 })).build();
      if (!diagram) continue;
      expect(count(whole)).toEqual({ count: diagram.count(), exact: true });
      compared++;
    }
  }
  expect(compared).toBeGreaterThan(8);
});
