// A text read once is not parsed again; one that changed, or stands elsewhere, is.
import { expect, it } from "vitest";
import { readRecords } from "../../src/records/index.js";

const line = "# yaml-language-server: $schema=../schema/club.json\n";
const text = (name: string) => `${line}id: testers\nname: ${name}\nabout: They test.\nlicence: CC0-1.0\n`;
const file = "clubs/testers.yaml";
const one = (content: string | Uint8Array, as = file) => readRecords([{ file: as, content }]);

it("gives the same record for the same text, however it came", () => {
  const first = one(text("First"));
  expect(first.findings).toEqual([]);
  expect(one(text("First"))).toEqual(first);
  expect(one(text("First")).records[0]!.record).toBe(first.records[0]!.record);
  expect(one(new TextEncoder().encode(text("First"))).records[0]!.record).toBe(first.records[0]!.record);
});

it("reads a text of the same length anew, and the old one again as it was", () => {
  const names = (content: string) => one(content).records.map(({ record }) => (record as { name: string }).name);
  expect(names(text("First"))).toEqual(["First"]);
  expect(names(text("Third"))).toEqual(["Third"]);
  expect(names(text("First"))).toEqual(["First"]);
});

it("names the file the text stands in, and judges it as the kind of that folder", () => {
  const spoilt = text("First").replace("licence", "license");
  const place = (as: string) => one(spoilt, as).findings.map((f) => f.at.file);
  expect(new Set(place(file))).toEqual(new Set([file]));
  expect(new Set(place("clubs/others.yaml"))).toEqual(new Set(["clubs/others.yaml"]));
  expect(one(text("First")).records).toHaveLength(1);
  expect(one(text("First"), "buses/testers.yaml").records).toEqual([]);
});

it("tells of a byte order mark whether or not the text was read before", () => {
  const codes = (content: string) => one(content).findings.map((f) => f.code);
  expect([codes(text("First")), codes(`\ufeff${text("First")}`), codes(text("First"))]).toEqual([[], ["file-encoding"], []]);
});

it("lets nobody change what others read", () => {
  const { record } = one(text("First")).records[0]!;
  expect(() => Object.assign(record, { name: "Changed" })).toThrow(TypeError);
});
