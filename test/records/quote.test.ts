// A text written as quoteText has it is read back as that text, in a block and in a list on one line; names stay as they are.
import fc from "fast-check";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { quoteText } from "../../src/records/index.js";

const readBack = (text: string) => parse(`a: ${quoteText(text)}\nb: [${quoteText(text)}, x]\n`, { version: "1.2" }) as unknown;

test.each([
  "1234",
  "1.10",
  "0x10",
  "0o7",
  "true",
  "NULL",
  "~",
  "+5",
  "-12",
  "1e5",
  "1.",
  ".5",
  ".inf",
  "-.INF",
  ".nan",
  "",
  "- x",
  "a: b",
  "a #b",
  "...",
])("%j", (text) => {
  expect(readBack(text)).toEqual({ a: text, b: [text, "x"] });
});

test.each(["S1", "R4A", "2K", "tallow-bus-tracer", "J3/J4", "1e", "0x", "Null1", "27C256", "a b"])("%s needs no quotes", (name) => {
  expect(quoteText(name)).toBe(name);
});

test("any text, and any name made of digits and marks", () => {
  const names = fc.string({ unit: fc.constantFrom(..."0123456789xoeEnulNiftra+-._~/ #:"), maxLength: 6 });
  fc.assert(
    fc.property(fc.oneof(names, fc.string({ maxLength: 12 })), (text) => {
      expect(readBack(text)).toEqual({ a: text, b: [text, "x"] });
    }),
    { numRuns: 3000, seed: 11 },
  );
});
