// The set of finding codes is closed: every code of reading is triggered by some file here.
import { expect, test } from "vitest";
import { type FindingCode, readingCodes, readRecords } from "../../src/records/index.js";

const head = "# yaml-language-server: $schema=../schema/club.json\n";
const good = `${head}id: x\nname: X\nabout: X.\nlicence: CC0\n`;
const fixtures: Readonly<Record<(typeof readingCodes)[number], string | Uint8Array>> = {
  "yaml-syntax": `${good}notes: "open`,
  "yaml-duplicate-key": `${good}name: Y\n`,
  "yaml-alias": `${good}notes: &a b\n`,
  "yaml-tab": `${good}keepers:\n\t- A\n`,
  "yaml-tag": `${good}notes: !x b\n`,
  "yaml-many-documents": `${good}---\nid: y\n`,
  "yaml-comment": `${good}notes: connector #2\n`,
  "file-encoding": new Uint8Array([0xff, 0xfe, 0x20, 0]),
  "file-empty": "",
  "file-too-large": `${good}notes: ${"x".repeat(300_000)}\n`,
  "file-place": good,
  "file-schema-line": good.slice(head.length),
  "shape-unknown-field": `${good}nots: x\n`,
  "shape-missing-field": good.replace("licence: CC0\n", ""),
  "shape-wrong-type": `${good}notes: [x]\n`,
  "shape-bad-word": `${good}sources:\n  - {id: a, kind: rumour, says: x}\n`,
  "shape-bad-value": good.replace("id: x", "id: X Y"),
};

test.each(readingCodes)("%s has a fixture", (code) => {
  const file = code === "file-place" ? "club/x.yaml" : "clubs/x.yaml";
  expect(readRecords([{ file, content: fixtures[code] }]).findings.map((f) => f.code)).toEqual([code]);
});

test("a code that is not in the set does not compile", () => {
  // @ts-expect-error not a code
  const code: FindingCode = "yaml-odd";
  expect(readingCodes).not.toContain(code);
});
