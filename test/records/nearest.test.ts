// The word a writer probably meant.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { editDistance, nearest, truncateList } from "../../src/records/nearest.js";

/** The same distance by its definition, without a table: slow and obvious. */
function twin(a: string, b: string): number {
  if (a === "" || b === "") return a.length + b.length;
  const [x, y] = [a.slice(1), b.slice(1)];
  const ways = [twin(x, b) + 1, twin(a, y) + 1, twin(x, y) + (a[0] === b[0] ? 0 : 1)];
  if (a.length > 1 && b.length > 1 && a[0] === b[1] && a[1] === b[0]) ways.push(twin(a.slice(2), b.slice(2)) + 1);
  return Math.min(...ways);
}

test("slips are counted as the definition says", () => {
  const word = fc.string({ unit: fc.constantFrom("a", "b", "c"), maxLength: 6 });
  fc.assert(
    fc.property(word, word, (a, b) => {
      expect(editDistance(a, b)).toBe(twin(a, b));
    }),
    { numRuns: 400, seed: 3 },
  );
});

describe("nearest", () => {
  test.each<[string, string[], string | undefined]>([
    ["unknwon", ["unknown", "known"], "unknown"],
    ["tallow-bus-trcer", ["tallow-bus-tracer", "tallow-bus"], "tallow-bus-tracer"],
    ["gannet", ["plover", "curlew"], undefined],
    ["S3", ["S1", "S2"], undefined],
    ["s1", ["S1", "S2"], "S1"],
    ["R1B", ["R1", "R1A"], undefined],
    ["301", ["300", "710"], "300"],
    ["", ["a"], undefined],
    // Nothing but the maker's name, or the maker's and the kind of thing, is shared.
    ["vellgate-plover", ["vellgate-gannet"], undefined],
    ["vellgate-electronics-crake", ["vellgate-electronics-knot", "vellgate-electronics-ruff"], undefined],
    ["vellgate-serial-card", ["vellgate-floppy-card"], undefined],
    ["Vellgate VX-20", ["Vellgate TR-31"], undefined],
    ["vellgate-x1", ["vellgate-x2"], undefined],
    ["vellgate-abc", ["vellgate"], undefined],
    ["vellgate-plovr", ["vellgate-gannet", "vellgate-plover"], "vellgate-plover"],
    ["vellgate-electronics-krake", ["vellgate-electronics-crake", "vellgate-electronics-knot"], "vellgate-electronics-crake"],
    ["velgate-plover", ["vellgate-plover", "vellgate-gannet"], "vellgate-plover"],
    ["tallow-tracer", ["tallow-bus-tracer"], "tallow-bus-tracer"],
    ["tallow-bus-tracer-b", ["tallow-bus-tracer"], "tallow-bus-tracer"],
    ["tallowbus-tracer", ["tallow-bus-tracer"], "tallow-bus-tracer"],
    // A sign turned around is another rail.
    ["+12", ["-12", "+5"], undefined],
    ["-12", ["+12", "12"], undefined],
    ["12", ["-12"], undefined],
    ["\u221212", ["-12", "+12"], "-12"],
    ["+13", ["+12", "-13"], "+12"],
    ["worst_a", ["worst_A", "idle_A"], "worst_A"],
  ])("%s of %j is %s", (word, of, meant) => {
    expect(nearest(word, of)).toBe(meant);
    expect(nearest(word, [...of].reverse()), "whatever the order").toBe(meant);
  });
});

test("few names what a reader can take in", () => {
  expect(truncateList([])).toBe("none");
  expect(truncateList(["a", "b"])).toBe("a, b");
  expect(truncateList(["a", "b", "c", "d"], 2)).toBe("a, b and 2 more");
});
