// Switches: how many terminals, what is joined where. Terminal counts and pairs: drawings of a public symbol library; wafers, timing
// words and the binary code: common practice.
import { describe, expect, it } from "vitest";
import type { Switch } from "../../../src/records/index.js";
import { isUniform, sectionsOf } from "../../../src/switching/contacts/sections.js";
import { demo } from "../../wiring/support/demo.js";

const { parts } = demo();
const switchOf = (id: string): Switch => {
  const part = parts.get(id);
  if (part?.type !== "switch") throw new Error(`no switch ${id}`);
  return part;
};

it.each([
  ["toggle-spst", 2],
  ["toggle-dpst", 4],
  ["toggle-spdt", 3],
  ["toggle-spdt-centre-off", 3],
  ["toggle-dpdt", 6],
  ["toggle-4pdt", 12],
  ["rotary-1x12", 13],
  ["rotary-2x6", 14],
  ["rotary-3x4", 15],
  ["rotary-4x3", 16],
  ["dip-x8", 16],
  ["coded-rotary-bcd", 5],
])("%s has %i terminals", (id, terminals) => expect(switchOf(id).terminals).toHaveLength(terminals));

it.each([
  ["rotary-1x12", 1, 12],
  ["rotary-2x6", 2, 6],
  ["rotary-3x4", 3, 4],
  ["rotary-4x3", 4, 3],
  ["toggle-dpdt", 2, 2],
  ["toggle-4pdt", 4, 2],
])("%s falls into %i sections of one hub and %i throws", (id, poles, ways) => {
  const sections = sectionsOf(switchOf(id));
  expect(sections).toHaveLength(poles);
  expect(isUniform(sections, ways)).toBe(true);
  for (const s of sections) {
    expect(s.throws).toHaveLength(ways);
    expect(s.hub).toMatch(/C$/);
  }
});

describe("a coded switch", () => {
  it("in real code joins the common to each figure whose bit is set", () => {
    const [section] = sectionsOf(switchOf("coded-rotary-bcd"));
    for (const t of section!.throws) {
      for (let k = 0; k < 10; k += 1) expect([k, t.terminal, t.closed.has(k)]).toEqual([k, t.terminal, (k & Number(t.terminal)) !== 0]);
    }
  });
  it("in complement code does the reverse", () => {
    const [section] = sectionsOf(switchOf("coded-rotary-hex-complement"));
    for (const t of section!.throws) {
      for (let k = 0; k < 16; k += 1) expect(t.closed.has(k)).toBe((k & Number(t.terminal)) === 0);
    }
  });
});

it("a DIP switch joins pin n to pin 2m + 1 - n", () => {
  const part = switchOf("dip-x4");
  for (const [position, pairs] of Object.entries(part.closes)) {
    expect(pairs.map(([a, b]) => Number(a) + Number(b))).toEqual(pairs.map(() => 9));
    expect(pairs.map(([a]) => Number(a))).toEqual([...position].flatMap((on, i) => (on === "1" ? [i + 1] : [])));
  }
});

it("a centre-off toggle joins nothing in the middle", () => {
  const [section] = sectionsOf(switchOf("toggle-spdt-centre-off"));
  expect(section!.throws.map((t) => [...t.closed])).toEqual([[0], [2]]);
});
