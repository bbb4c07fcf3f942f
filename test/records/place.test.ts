// Places: line and column of values, counted by the parser, with every kind of line end.
import { describe, expect, test } from "vitest";
import { formatFinding, place } from "../../src/records/index.js";

const text = ["id: a", "list:", "  - x: 0x10", "    y: [p, 'q r']", "deep:", "  k~e/y: last"].join("\n");

describe.each([
  ["LF", text],
  ["LF and a last line end", `${text}\n`],
  ["CRLF", text.replaceAll("\n", "\r\n")],
])("with %s", (_, source) => {
  test.each<[string, number, number, number, string]>([
    ["/id", 1, 5, 1, "id: a"],
    ["/list/0/x", 3, 8, 4, "  - x: 0x10"],
    ["/list/0/y/1", 4, 12, 5, "    y: [p, 'q r']"],
    ["/deep/k~0e~1y", 6, 10, 4, "  k~e/y: last"],
    // A block is shown by its key; what does not exist, by what is around it.
    ["/list", 2, 1, 4, "list:"],
    ["/deep/missing", 5, 1, 4, "deep:"],
    ["/list/0/z", 3, 5, 1, "  - x: 0x10"],
    ["", 1, 1, 2, "id: a"],
  ])("%s", (pointer, line, column, span, shown) => {
    expect(place("f.yaml", source, pointer)).toEqual({ file: "f.yaml", pointer, line, column, span, text: shown });
  });

  test("the key of a value", () => {
    expect(place("f.yaml", source, "/deep/k~0e~1y", { on: "key" })).toMatchObject({ line: 6, column: 3, span: 5 });
  });
});

test("a tab before the value keeps the caret in line", () => {
  const at = place("f.yaml", "a:\t value\n", "/a");
  expect(at).toMatchObject({ line: 1, column: 5 });
  const [, source, caret] = formatFinding({ code: "yaml-syntax", level: "error", says: "x", at }).split("\n");
  expect(source).toBe("    1 | a:\t value");
  expect(caret).toBe("      |   \t ^^^^^");
});

test("a very long line is shown around the caret", () => {
  const at = place("f.yaml", `a: "${"x".repeat(500)}"\nb: [${"1, ".repeat(300)}oops]\n`, "/b/300");
  const [, source, caret] = formatFinding({ code: "yaml-syntax", level: "error", says: "x", at }).split("\n");
  expect(source!.length).toBeLessThan(120);
  expect(source!.slice(caret!.indexOf("^"), caret!.lastIndexOf("^") + 1)).toBe("oops");
});
