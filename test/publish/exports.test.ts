// The exports: CSV that no spreadsheet runs, a feed that is well formed, JSON that keeps to the schema it names.
import { Ajv2020 } from "ajv/dist/2020.js";
import { parseDocument } from "htmlparser2";
import { describe, expect, it } from "vitest";
import type { BuildPage } from "../../src/pages/index.js";
import { feed } from "../../src/publish/exports/atom.js";
import { cell, csv } from "../../src/publish/exports/csv.js";
import { files, read } from "../pages/site-folder.js";

/** RFC 4180 the slow way: one character at a time. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [[]];
  let field = "";
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i]!;
    if (quoted && c === '"' && text[i + 1] === '"') {
      field += '"';
      i++;
    } else if (c === '"') quoted = !quoted;
    else if (!quoted && (c === "," || c === "\r")) {
      rows.at(-1)!.push(field);
      field = "";
      if (c === "\r") {
        i++;
        rows.push([]);
      }
    } else field += c;
  }
  return rows.slice(0, -1);
}

describe("CSV", () => {
  // Leading characters that spreadsheets take for a formula: OWASP, "CSV Injection".
  it.each(["=1+2", "+1", "-1+cmd", "@SUM(A1)", "\t=1", "\r=1", " =1"])("makes %j text", (text) => {
    expect(readCsv(csv(["x"], [[text]]))[1]![0]).toBe(`'${text}`);
  });

  it("leaves numbers and plain words alone", () => {
    expect(cell(-5)).toBe("-5");
    expect(cell("R5.1")).toBe("R5.1");
    expect(cell(undefined)).toBe("");
  });

  it("brings back every value it was given", () => {
    const values = ['say "hi"', "a,b", "two\r\nlines", "", "0xD0000"];
    expect(readCsv(csv(["a", "b", "c", "d", "e"], [values]))[1]).toEqual(values);
  });

  it("carries what is wrong with the records in every row, in a column behind the others", () => {
    const notice = "Made although one record could not be read: cards/a.yaml:3:1.";
    expect(
      readCsv(
        csv(
          ["a", "b"],
          [
            ["1", "2"],
            ["3", "4"],
          ],
          notice,
        ),
      ),
    ).toEqual([
      ["a", "b", "notice"],
      ["1", "2", notice],
      ["3", "4", notice],
    ]);
    // A table of nothing would say that there is nothing.
    expect(readCsv(csv(["a", "b"], [], notice))).toEqual([
      ["a", "b", "notice"],
      ["", "", notice],
    ]);
    expect(readCsv(csv(["a", "b"], [["1", "2"]]))).toEqual([
      ["a", "b"],
      ["1", "2"],
    ]);
  });

  it("of the site has as many fields in every row as in its head, and no cell begins a formula", () => {
    const tables = files.filter((f) => f.endsWith(".csv"));
    expect(tables.length).toBeGreaterThan(3);
    for (const name of tables) {
      const [head, ...rows] = readCsv(read(name));
      expect(rows.length, name).toBeGreaterThan(20);
      expect(
        rows.filter((r) => r.length !== head!.length),
        name,
      ).toEqual([]);
      expect(
        rows.flat().filter((v) => /^\s*[=+@-]/.test(v)),
        name,
      ).toEqual([]);
    }
  });
});

describe("JSON", () => {
  const schemas = files
    .filter((f) => f.startsWith("data/schema/"))
    .map((f) => [f.replace("data/schema/", ""), JSON.parse(read(f))] as const);
  const ajv = new Ajv2020({ strict: false, allErrors: true });
  for (const [name, schema] of schemas) ajv.addSchema({ ...schema, $id: `http://slotwright.invalid/${name}` });
  const judge = ajv.getSchema("http://slotwright.invalid/export.json")!;

  it.each(["data/records.json", "data/verdicts.json"])("%s keeps to its schema", (name) => {
    const value = JSON.parse(read(name));
    expect(value.version).toMatch(/^\d+\.\d+$/);
    expect(value.$schema).toBe("schema/export.json");
    expect(judge(value), JSON.stringify(judge.errors?.slice(0, 3))).toBe(true);
  });

  it("the schema refuses what does not belong", () => {
    const value = JSON.parse(read("data/verdicts.json"));
    value.verdicts[0].verdict = "probably";
    expect(judge(value)).toBe(false);
  });
});

describe("the feed", () => {
  const build = (over: Partial<BuildPage>) =>
    ({
      tested: true,
      href: "builds/x.html",
      name: "A & B <first>",
      date: "2024-05",
      by: "Nobody",
      answer: "It \u0001 works",
      mark: { word: "worked" },
      ...over,
    }) as BuildPage;

  it("escapes what it is given, dates to a moment, and leaves out builds without a result", () => {
    const text = feed([build({}), build({ href: "builds/q.html", tested: false })], { title: "Club", address: "https://example.org/" });
    expect(text).toContain("A &#38; B &#60;first&#62;: worked");
    expect(text).toContain("<updated>2024-05-01T00:00:00Z</updated>");
    expect(text).toContain('href="https://example.org/builds/x.html"');
    expect(text).not.toContain("q.html");
    expect(text).not.toContain("\u0001");
  });

  it("of the site holds each tested build once, newest first, with the elements RFC 4287 asks for", () => {
    const nodes = parseDocument(read("data/results.atom"), { xmlMode: true });
    type Node = { name?: string; children?: Node[]; data?: string };
    const feedNode = (nodes.children as unknown as Node[]).find((n) => n.name === "feed")!;
    const entries = feedNode.children!.filter((n) => n.name === "entry");
    const text = (n: Node): string => n.data ?? (n.children ?? []).map(text).join("");
    const of = (entry: Node, name: string) => entry.children!.filter((c) => c.name === name).map(text);
    expect(entries.length).toBeGreaterThan(40);
    for (const name of ["id", "title", "updated"])
      expect(
        entries.every((e) => of(e, name).length === 1),
        name,
      ).toBe(true);
    expect(new Set(entries.map((e) => of(e, "id")[0])).size).toBe(entries.length);
    const dates = entries.map((e) => of(e, "updated")[0]!);
    expect(dates).toEqual([...dates].sort().reverse());
  });
});
