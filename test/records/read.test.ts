// Reading files: what is good is read, what is bad is one clear finding, and one bad file never hides another.
import { describe, expect, test } from "vitest";
import { type Finding, formatFinding, readOne, readRecords } from "../../src/records/index.js";

const bytes = (text: string) => new TextEncoder().encode(text);
const line1 = "# yaml-language-server: $schema=../schema/club.json\n";
const club = `${line1}id: testers\nname: Testers\nabout: They test.\nlicence: CC0\n`;
const good = { file: "clubs/testers.yaml", content: bytes(club) };

/** Reads one bad club file beside a good one; the good one must always be read. */
function read(content: string | Uint8Array, file = "clubs/bad.yaml"): readonly Finding[] {
  const { records, findings } = readRecords([{ file, content: typeof content === "string" ? bytes(content) : content }, good]);
  expect(records.map((r) => r.record.id)).toContain("testers");
  return findings;
}
const told = (findings: readonly Finding[]) => findings.map((f) => `${f.code} ${f.at.line}:${f.at.column}`);

describe("bad input", () => {
  test.each<[string, string | Uint8Array, string]>([
    ["a key twice", `${club}name: Again\n`, "yaml-duplicate-key 6:1"],
    ["an anchor", `${club}notes: &a text\n`, "yaml-alias 6:8"],
    ["an alias", `${club}notes: *a\n`, "yaml-alias 6:8"],
    ["a tab", `${club}keepers:\n\t- Ann\n`, "yaml-tab 7:1"],
    ["a tag", `${club}notes: !secret text\n`, "yaml-tag 6:8"],
    ["a standard tag", `${club}notes: !!str text\n`, "yaml-tag 6:8"],
    ["a second document", `${club}---\n${club}`, "yaml-many-documents 6:1"],
    ["a directive", `%YAML 1.1\n---\n${club}`, "yaml-syntax 1:1"],
    ["UTF-16", new Uint8Array([0xff, 0xfe, 0x69, 0, 0x64, 0]), "file-encoding 1:1"],
    ["UTF-16 without a mark", new Uint8Array([0x69, 0, 0x64, 0]), "file-encoding 1:2"],
    ["bytes that are not UTF-8", new Uint8Array([...bytes(`${club}notes: `), 0xe9, 0x74, 0xe9]), "file-encoding 6:8"],
    ["an empty file", "", "file-empty 1:1"],
    ["blank lines only", "\n  \n", "file-empty 1:1"],
    ["comments only", `${line1}# nothing yet\n`, "file-empty 1:1"],
    ["a megabyte of nonsense", "x: [".repeat(262_144), "file-too-large 1:1"],
    ["brackets without end", "[".repeat(100_000), "yaml-syntax 1:1"],
    ["dashes without end", "- ".repeat(100_000), "yaml-syntax 1:1"],
    ["indentation without end", Array.from({ length: 400 }, (_, i) => `${" ".repeat(i)}a:`).join("\n"), "yaml-syntax 258:1"],
    ["an open quote", `${club}notes: "open\n`, "yaml-syntax 6:8"],
    ["an unknown field", `${club}foundd: 1987\n`, "shape-unknown-field 6:1"],
    ["__proto__", `${club}__proto__: {x: 1}\n`, "shape-unknown-field 6:1"],
    ["constructor", `${club}constructor: x\n`, "shape-unknown-field 6:1"],
    ["a wrong type", `${club}keepers: Ann\n`, "shape-wrong-type 6:10"],
    ["nothing after the colon", `${club}notes:\n`, "shape-wrong-type 6:1"],
    ["a list instead of a record", "- a\n- b\n", "shape-wrong-type 1:3"],
    ["a lone text", "hello\n", "shape-wrong-type 1:1"],
    ["old line ends", club.replaceAll("\n", "\r"), "file-encoding 1:52"],
    ["a complex key", `${club}? [a, b]\n: c\n`, "yaml-syntax 6:3"],
    ["a merge key", `${club}<<: {notes: x}\n`, "yaml-syntax 6:1"],
    ["a text with a colon", `${club}notes: see: below\n`, "yaml-syntax 6:8"],
  ])("%s is one finding", (_, content, expected) => {
    const findings = read(content).filter((f) => f.at.file === "clubs/bad.yaml");
    expect(told(findings)).toEqual([expected]);
    expect(findings[0]!.hint, "every finding says the next action").toBeTruthy();
  });

  test("an alias bomb is refused without being unfolded", () => {
    const bomb = ["a0: &a0 [x,x,x,x,x,x,x,x,x,x]"];
    for (let i = 1; i < 12; i++)
      bomb.push(
        `a${i}: &a${i} [${Array(10)
          .fill(`*a${i - 1}`)
          .join(",")}]`,
      );
    // Unfolded it is a list of 10^12 letters: a reader that unfolds it never comes back.
    expect(told(read(bomb.join("\n")))).toEqual(["yaml-alias 1:5"]);
  });

  test.each(["x\n", "'", "a: b: ", "? ", "&a ", "!", "a: [1,", "{a: ", "\\", '"\\u', "# x\n", "|", ">\n", "- - ", ": "])(
    "a file full of %j does not crash",
    (piece) => {
      expect(read(piece.repeat(Math.floor(60_000 / piece.length))).length).toBeGreaterThan(0);
    },
  );

  test("a file of a wrong folder or name says where it should go", () => {
    expect(read(club, "club/x.yaml").map((f) => [f.code, f.hint])).toEqual([["file-place", "Did you mean clubs/x.yaml?"]]);
    expect(read(club, "clubs/x.yml").map((f) => [f.code, f.hint])).toEqual([["file-place", "Rename it to x.yaml."]]);
    expect(read(club, "x.yaml").map((f) => f.code)).toEqual(["file-place"]);
  });

  test("a record may lie in a subfolder of its kind's folder; line 1 then climbs one step more", () => {
    expect(read(club.replace("../schema", "../../schema"), "clubs/borrowed/testers.yaml")).toEqual([]);
    expect(read(club, "clubs/borrowed/testers.yaml").map((f) => [f.code, f.expected])).toEqual([
      ["file-schema-line", "# yaml-language-server: $schema=../../schema/club.json"],
    ]);
  });

  test("at most twenty findings of one file are told, and how many more there are", () => {
    const findings = read(club + Array.from({ length: 500 }, (_, i) => `extra_${i}: 1\n`).join(""));
    expect(findings).toHaveLength(20);
    expect(findings.at(-1)!.hint).toContain("480 more");
  });
});

describe("good input", () => {
  test("CRLF, no last line end, and Windows paths are read", () => {
    const crlf = club.replaceAll("\n", "\r\n").trimEnd().replace("testers", "others");
    const { records, findings } = readRecords([{ file: "data\\clubs\\others.yaml", content: bytes(crlf) }]);
    expect(findings).toEqual([]);
    expect(records[0]).toMatchObject({ kind: "club", file: "data/clubs/others.yaml", record: { id: "others" } });
  });

  test("a byte order mark is a warning, and the record is read", () => {
    const { records, findings } = readRecords([
      { file: "clubs/testers.yaml", content: new Uint8Array([0xef, 0xbb, 0xbf, ...bytes(club)]) },
    ]);
    expect(records).toHaveLength(1);
    expect(findings.map((f) => `${f.code} ${f.level}`)).toEqual(["file-encoding warning"]);
  });

  test("a missing schema line is a warning with the line to add", () => {
    const { records, findings } = readRecords([{ file: "clubs/testers.yaml", content: club.slice(line1.length) }]);
    expect(records).toHaveLength(1);
    expect(findings).toMatchObject([{ code: "file-schema-line", level: "warning", expected: line1.trim() }]);
  });

  test("a pasted record needs no schema line", () => {
    const { record, findings } = readOne("club", club.slice(line1.length));
    expect(record?.name).toBe("Testers");
    expect(findings).toEqual([]);
  });

  test("long reading tells how far it is", () => {
    const told: string[] = [];
    const many = Array.from({ length: 450 }, (_, i) => ({ file: `clubs/c${i}.yaml`, content: "" }));
    readRecords(many, (done, of) => told.push(`${done} of ${of}`));
    expect(told).toEqual(["200 of 450", "400 of 450"]);
  });

  test("the order of files does not matter", () => {
    const a = { file: "clubs/a.yaml", content: club.replace("testers", "a") };
    expect(readRecords([good, a])).toEqual(readRecords([a, good]));
  });
});

test("a finding prints with its source line and a caret under the value", () => {
  const [finding] = read(`${club}keepers: Ann\n`);
  expect(formatFinding(finding!)).toBe(
    [
      "clubs/bad.yaml:6:10: error: keepers should be a list with at least one entry, each text. [shape-wrong-type]",
      "    6 | keepers: Ann",
      "      |          ^^^",
      "    expected: a list with at least one entry, each text",
      '    found:    the text "Ann"',
      "    next: Write it as a list: [Ann].",
    ].join("\n"),
  );
});
