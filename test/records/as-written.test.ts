// Hints about numbers: they quote what stands in the file, and where a unit stands they say the value in the unit of the field.
import { expect, test } from "vitest";
import { type Finding, formatFinding, type Kind, kinds, readRecords, writeRecord } from "../../src/records/index.js";
import { sample } from "../support/samples.js";

/** What is told of a sample record in which one text is written otherwise. */
function told(kind: Kind, id: string, from: string | RegExp, to: string): readonly Finding[] {
  const record = sample(kind).find((r) => r.id === id);
  if (!record) throw new Error(`no sample ${kind} ${id}`);
  const text = writeRecord(kind, record);
  const spoilt = text.replace(from, to);
  if (spoilt === text) throw new Error(`${String(from)} stands nowhere in ${id}:\n${text}`);
  return readRecords([{ file: `${kinds[kind].folder}/${id}.yaml`, content: spoilt }]).findings;
}

const one = (findings: readonly Finding[]) => {
  expect(findings.map(formatFinding)).toHaveLength(1);
  return findings[0];
};

test.each([
  ["+9", '"+9"'],
  ["1.10", '"1.10"'],
  ["00123456", '"00123456"'],
  ["12E45678", '"12E45678"'],
  ["0x300", '"0x300"'],
  ["0o17", '"0o17"'],
  [".inf", '".inf"'],
  ["True", '"True"'],
  ["~", '"~"'],
])("a text that is read as something else is quoted as it stands: %s", (written, quoted) => {
  const finding = one(told("card", "tc", /^model: .*$/m, `model: ${written}`));
  expect(finding?.hint).toContain(`${quoted}.`);
  if (/^[+0-9.]/.test(written)) expect(finding?.actual).toBe(`the number ${written}`);
});

test.each([
  ["0.12345678901234567", "0.12345678901234566", "0.123456789012346"],
  ["0.30000000000000001", "0.3", "0.3"],
  ["2.000000000000000001", "2", "2"],
])("a figure with more digits than are kept is told as it would be read: %s", (written, read, short) => {
  const finding = one(told("card", "tc", /idle_A: [0-9.]+/, `idle_A: ${written}`));
  expect(finding?.says).toBe(`idle_A has more digits than are kept: ${written} would be read as ${read}.`);
  expect(finding?.hint).toBe(`Write it in 15 digits at most: ${short}.`);
});

test.each(["0.350", "35e-2", "+0.35", "0.123456789012345", "1E-1", "000.5"])("a figure that is read whole is none: %s", (written) => {
  expect(told("card", "tc", /idle_A: [0-9.]+/, `idle_A: ${written}`)).toEqual([]);
});

test("a checksum keeps its zeros", () => {
  const finding = one(told("firmware", "tm", /crc32: 89abcdef/, "crc32: 00123456"));
  expect(finding?.hint).toBe('Put it in quotes, so that it is read as text: "00123456".');
});

test.each([
  ["1.10", "1.1"],
  ["007", "7"],
  ["+5", "5"],
  ["0x10", "16"],
])("a name that would be read as another is refused: %s", (name, value) => {
  const finding = one(told("card", "tc", 'J1: "310"', `${name}: "310"`));
  expect(finding).toMatchObject({ code: "yaml-syntax", says: `The name ${name} would be read as ${value}.` });
  expect(finding?.hint).toBe(`Put it in quotes: "${name}".`);
});

test("a value under a name of digits is quoted as it stands", () => {
  const finding = one(told("card", "tc", 'J1: "310"', "1: 05"));
  expect(finding?.hint).toContain('"05".');
});

test.each([
  ["length_mm: ", "16 cm", "Write it in mm: 160."],
  ["length_mm: ", "6.5 in", "Write it in mm: 165.1."],
  ["length_mm: ", "120 mm", "Write the number alone: 120."],
  ["length_mm: ", "120,5", "Write a point in place of the decimal comma: 120.5."],
  ["length_mm: ", "1,120", "Write the number without a comma, in mm: 1120, or 1.120 if it is a decimal comma."],
  ["length_mm: ", '"120"', "Write it without quotes: 120."],
  ["length_mm: ", "3 spans", "Write the number alone, in mm."],
  ["idle_A: ", "350 mA", "Write it in A: 0.35."],
  ["idle_A: ", "0.5 A", "Write the number alone: 0.5."],
  ["base: ", "300h", "Write hexadecimal with 0x in front: 0x300, which is 768."],
  ["base: ", "30h", "Write hexadecimal with 0x in front: 0x30, which is 48."],
  ["base: ", "$D0000", "Write hexadecimal with 0x in front: 0xD0000, which is 851968."],
  ["base: ", "D0000", "If it is hexadecimal, write it with 0x in front: 0xD0000."],
  ["base: ", '"0xD0000"', "Write it without quotes: 0xD0000."],
  ["base: ", '"300"', "Write it without quotes: 0x300 if it is hexadecimal, 300 if it is not."],
  ["base: ", "640K", "Write 0xA0000, which is 640K."],
])("on a card, %s%s: %s", (field, written, hint) => {
  const finding = one(told("card", "tc", new RegExp(`${field}[^,}\\n]+`), field + written));
  expect(finding?.hint).toBe(hint);
});

test.each([
  ["2 KB", "Write 2K, which is 2048 bytes."],
  ["2k", "Write 2K, which is 2048 bytes."],
  ["0.5 MB", "Write 512K, which is 524288 bytes."],
  ["512 Kbit", "Write 64K, which is 65536 bytes."],
  ["300 bytes", "Write 300, which is 300 bytes."],
  ["4000h", "Write hexadecimal with 0x in front: 0x4000, which is 16384 bytes."],
  ["1.5 bytes", "1.5 bytes is 1.5 bytes, and a whole number stands here."],
])("a size of %s: %s", (written, hint) => {
  const finding = one(told("card", "tc", /size: 0x4000/, `size: ${written}`));
  expect(finding?.hint).toBe(hint);
});

test("a clock in kHz", () => {
  expect(one(told("board", "tb-1", /clock_MHz: .*$/m, "clock_MHz: 3580 kHz"))?.hint).toBe("Write it in MHz: 3.58.");
});

test("hours are no hexadecimal, and minutes become hours only when they are whole ones", () => {
  const hours = (written: string) => one(told("build", "tbd", /hours: .*$/m, `hours: ${written}`))?.hint;
  expect(hours("40h")).toBe("Write the number alone: 40.");
  expect(hours("2 days")).toBe("Write it in h: 48.");
  expect(hours("30 min")).toBe("30 min is 0.5 h, and a whole number stands here.");
});

test.each([
  ["poles: ", "3 poles", "Write the number alone: 3."],
  ["poles: ", "2K", "Write the number in full: 2048, if K stands for 1024."],
  ["poles: ", "10h", "Write hexadecimal with 0x in front: 0x10, which is 16."],
])("a count, %s%s: %s", (field, written, hint) => {
  const part = sample("part").find((p) => p.type === "switch");
  expect(one(told("part", part?.id ?? "", new RegExp(`${field}.*$`, "m"), field + written))?.hint).toBe(hint);
});

test("a resistor as it is marked", () => {
  const ohms = (written: string) => {
    const resistor = { id: "r", name: "R", type: "resistor" as const, ohms: 1 };
    const text = writeRecord("part", resistor).replace("ohms: 1", `ohms: ${written}`);
    return one(readRecords([{ file: "parts/r.yaml", content: text }]).findings)?.hint;
  };
  expect(ohms("4k7")).toBe("Write it in ohm: 4700.");
  expect(ohms("10k")).toBe("Write it in ohm: 10000.");
  expect(ohms("470R")).toBe("Write the number alone: 470.");
});
