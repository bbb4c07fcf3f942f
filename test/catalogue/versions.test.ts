// Spans over the declared order, against a slow twin that lists the versions of a span by hand.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { featuresOf, inRange, memoryNeeded, rangeText, runsOn, versionIndex } from "../../src/catalogue/index.js";
import type { Firmware, FirmwareRange } from "../../src/records/index.js";
import { sample } from "../support/samples.js";

const [tm] = sample("firmware");
const [board] = sample("board");
// The spelling misleads on purpose: only the order of the list counts.
const order = ["R2", "R10", "R4A", "R4", "R5.1", "R5"];
const family: Firmware = { ...tm!, id: "f", versions: order.map((id) => ({ id, image: { size: "unknown", crc32: "unknown" } })) };

function listed(span: FirmwareRange): readonly string[] {
  let left = [...order];
  if (span.from !== undefined) left = left.slice(left.indexOf(span.from));
  if (span.upTo !== undefined) left = left.filter((v) => order.indexOf(v) <= order.indexOf(span.upTo!));
  if (span.before !== undefined) left = left.filter((v) => order.indexOf(v) < order.indexOf(span.before!));
  if (span.only) left = left.filter((v) => span.only!.includes(v));
  return left.filter((v) => !span.except?.includes(v));
}

test("a span holds the versions between its ends, in the declared order", () => {
  const version = fc.constantFrom(...order);
  const some = fc.uniqueArray(version, { minLength: 1, maxLength: 3 });
  const span = fc.record(
    { family: fc.constant("f"), from: version, upTo: version, before: version, except: some, only: some },
    { requiredKeys: ["family"] },
  );
  const seen = { empty: 0, some: 0 };
  fc.assert(
    fc.property(span, (s) => {
      const held = order.filter((v) => inRange(family, v, s));
      expect(held).toEqual(listed(s));
      seen[held.length === 0 ? "empty" : "some"] += 1;
    }),
    { numRuns: 1000, seed: 4 },
  );
  expect(Math.min(seen.empty, seen.some)).toBeGreaterThan(100);
});

test("a span of another family, and a version nobody declared, hold nothing", () => {
  expect(inRange(family, "R4", { family: "other" })).toBe(false);
  expect(inRange(family, "R7", { family: "f" })).toBe(false);
  expect(versionIndex(family, "R7")).toBe(-1);
});

describe("in words", () => {
  test.each<[Omit<FirmwareRange, "family">, string]>([
    [{ from: "R4", upTo: "R5.1" }, "R4 to R5.1"],
    [{ from: "R4", upTo: "R4" }, "R4 alone"],
    [{ only: ["R5.1"] }, "R5.1 alone"],
    [{ only: ["R4", "R5"] }, "R4, R5"],
    [{ from: "R5" }, "from R5"],
    [{ upTo: "R4A" }, "up to R4A"],
    [{ before: "R5" }, "before R5"],
    [{ from: "R4", before: "R5" }, "from R4, before R5"],
    [{ from: "R4", except: ["R5"] }, "from R4, but not R5"],
    [{}, "any version"],
  ])("%j is %s", (span, words) => {
    expect(rangeText({ family: "f", ...span })).toBe(words);
  });
});

test("features come and go with versions", () => {
  const versions = [
    { ...family.versions[0]!, adds: ["disk", "tape"] },
    { ...family.versions[1]!, removes: ["tape"] },
    { ...family.versions[2]!, adds: ["net"] },
  ];
  const of = (v: string) => [...featuresOf({ ...family, versions }, v)];
  expect([of("R2"), of("R10"), of("R4A"), of("R99")]).toEqual([["disk", "tape"], ["disk"], ["disk", "net"], []]);
});

test("a version runs on the boards it names itself, else on those of its family", () => {
  const [r1, r1a] = tm!.versions;
  expect([runsOn(tm!, r1!, board!, "A"), runsOn(tm!, r1a!, board!, "A"), runsOn(tm!, r1a!, board!, "B")]).toEqual([true, false, true]);
  expect([memoryNeeded(r1!), memoryNeeded(r1a!)]).toEqual([0, 256 * 1024]);
});
