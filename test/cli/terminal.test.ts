// Colour only where a person looks at a terminal and did not ask for none; long sentences broken at words.
import { expect, it } from "vitest";
import { mayColour, styled, wrapped } from "../../src/cli/printing/terminal.js";

it("uses colour on a terminal only, and never against NO_COLOR", () => {
  expect(mayColour(true, {})).toBe(true);
  expect(mayColour(false, {})).toBe(false);
  expect(mayColour(true, { NO_COLOR: "1" })).toBe(false);
  expect(mayColour(true, { NO_COLOR: "" })).toBe(true);
  expect(mayColour(true, { TERM: "dumb" })).toBe(false);
  expect(mayColour(false, { FORCE_COLOR: "1" })).toBe(true);
  expect(mayColour(false, { FORCE_COLOR: "1", NO_COLOR: "1" })).toBe(false);
});

it("leaves text as it is without colour", () => {
  expect(styled({ colour: false }, "bold", "x")).toBe("x");
  expect(styled({ colour: true }, "bold", "x")).toBe("\u001b[1mx\u001b[22m");
});

it("breaks at words and sets the further lines in", () => {
  expect(wrapped("one two three", 7, "  ")).toBe("one two\n  three");
  expect(wrapped("incomprehensibilities", 5, "")).toBe("incomprehensibilities");
  expect(wrapped("", 5, "")).toBe("");
});
