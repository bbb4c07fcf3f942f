// Random damage to good files: reading never throws, never takes a record and an error from one file, and every
// place lies inside the file.
import fc from "fast-check";
import { expect, test } from "vitest";
import { formatFinding, type Kind, kinds, readRecords, writeRecord } from "../../src/records/index.js";
import { sample } from "../support/samples.js";

const texts = (Object.keys(kinds) as Kind[]).flatMap((kind) => sample(kind).map((record) => ({ kind, text: writeRecord(kind, record) })));
const pieces = [
  "\t",
  " ",
  "\n",
  "\r",
  ":",
  ": ",
  "- ",
  "[",
  "]",
  "{",
  "}",
  '"',
  "'",
  "#",
  "&a ",
  "*a",
  "!t ",
  "|",
  ">",
  "%",
  "---\n",
  "...\n",
  "\u0000",
  "\ud800",
  "\u2028",
  "ä",
  "0x",
  "~",
  "<<: ",
  "__proto__: ",
  "? ",
  "@",
  "`",
  "\\",
];
const edit = fc.record({ at: fc.nat(), cut: fc.nat(12), put: fc.constantFrom("", ...pieces) });

test("damaged files", () => {
  const seen = { records: 0, findings: 0 };
  fc.assert(
    fc.property(fc.nat(), fc.array(edit, { minLength: 1, maxLength: 4 }), fc.boolean(), (which, edits, crlf) => {
      const { kind, text } = texts[which % texts.length]!;
      let damaged = text;
      for (const { at, cut, put } of edits) {
        const start = at % (damaged.length + 1);
        damaged = damaged.slice(0, start) + put + damaged.slice(start + cut);
      }
      if (crlf) damaged = damaged.replaceAll(/\r?\n/g, "\r\n");
      const { records, findings } = readRecords([{ file: `${kinds[kind].folder}/x.yaml`, content: new TextEncoder().encode(damaged) }]);
      const errors = findings.filter((f) => f.level === "error");
      expect(records.length === 1).toBe(errors.length === 0);
      seen[records.length === 1 ? "records" : "findings"] += 1;
      const lines = damaged.split("\n");
      for (const f of findings) {
        expect(f.at.line).toBeGreaterThanOrEqual(1);
        expect(f.at.line).toBeLessThanOrEqual(lines.length);
        expect(f.at.column).toBeLessThanOrEqual((lines[f.at.line - 1]?.length ?? 0) + 2);
        expect(formatFinding(f)).toContain("x.yaml:");
        expect(f.hint).toBeTruthy();
      }
    }),
    { numRuns: 500, seed: 11 },
  );
  expect(seen.records).toBeGreaterThan(20);
  expect(seen.findings).toBeGreaterThan(150);
});

test("files that are not text at all", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), (content) => {
      const { records, findings } = readRecords([{ file: "cards/x.yaml", content }]);
      expect(records).toEqual([]);
      expect(findings.length).toBeGreaterThan(0);
    }),
    { numRuns: 400, seed: 12 },
  );
});
