// What a plain word means in a record file, against the published standard.
// Source: YAML Ain't Markup Language (YAML) version 1.2.2, section 10.3 "Core Schema", the table of 10.3.2 and
// its example; values only.
import { describe, expect, test } from "vitest";
import { parse } from "../../../src/records/parse.js";

const read = (text: string) => (parse("x.yaml", `a: ${text}\n`).value as { a: unknown } | undefined)?.a;

describe("tag resolution of the core schema", () => {
  test.each<[string, unknown]>([
    ["null", null],
    ["", null],
    ["~", null],
    ['""', ""],
    ["true", true],
    ["True", true],
    ["false", false],
    ["FALSE", false],
    ["0", 0],
    ["0o7", 7],
    ["0x3A", 58],
    ["-19", -19],
    ["0.", 0],
    ["-0.0", -0],
    [".5", 0.5],
    ["+12e03", 12_000],
    ["-2E+05", -200_000],
    [".inf", Number.POSITIVE_INFINITY],
    ["-.Inf", Number.NEGATIVE_INFINITY],
    ["+.INF", Number.POSITIVE_INFINITY],
    [".NAN", Number.NaN],
  ])("%s", (text, value) => {
    expect(read(text)).toBe(value);
  });

  // What older YAML read as something else, and the core schema reads as text or as a decimal number.
  test.each<[string, unknown]>([
    ["yes", "yes"],
    ["no", "no"],
    ["on", "on"],
    ["off", "off"],
    ["1:30", "1:30"],
    ["010", 10],
    ["0b11", "0b11"],
    ["1_000", "1_000"],
    ["1987-05-21", "1987-05-21"],
    ["R5.1", "R5.1"],
  ])("%s is not what older versions made of it", (text, value) => {
    expect(read(text)).toBe(value);
  });
});
