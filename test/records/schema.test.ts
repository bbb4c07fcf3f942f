// What is made from the schemas: the files editors read, the field guide, the writer.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { fieldGuide, jsonSchemas, type Kind, kinds, readOne, readRecords, writeRecord } from "../../src/records/index.js";
import { sample } from "../support/samples.js";

const all = Object.keys(kinds) as Kind[];
const data = join(import.meta.dirname, "..", "..", "data");

test("data/schema holds the schemas as they are now (npm run schema writes them)", () => {
  const folder = join(data, "schema");
  expect(readdirSync(folder).sort()).toEqual(all.map((k) => `${k}.json`).sort());
  for (const kind of all) {
    // Windows may have changed the line ends on checkout.
    const file = readFileSync(join(folder, `${kind}.json`), "utf8").replaceAll("\r\n", "\n");
    expect(file, kind).toBe(`${JSON.stringify(jsonSchemas()[kind], null, 2)}\n`);
  }
});

describe("the writer", () => {
  test.each(all)("a %s read back is the same record", (kind) => {
    for (const record of sample(kind)) {
      const text = writeRecord(kind, record);
      const file = `${kinds[kind].folder}/${record.id}.yaml`;
      expect(readRecords([{ file, content: text }])).toMatchObject({ findings: [], records: [{ record }] });
      expect(readOne(kind, text).record).toEqual(record);
    }
  });

  test("fields stand in the order of the schema, addresses in hex, whatever order they came in", () => {
    const [card] = sample("card");
    const { id, ...rest } = card!;
    const text = writeRecord("card", { ...rest, id } as typeof card & object);
    expect(text).toBe(writeRecord("card", card!));
    expect(text).toContain("{base: 0x300, size: 8}");
    expect(text).toContain("size: 0x4000");
    expect(text.split("\n").slice(0, 3)).toEqual(["# yaml-language-server: $schema=../schema/card.json", "id: tc", "name: Test card"]);
  });

  test("texts that look like something else are quoted", () => {
    const [firmware] = sample("firmware");
    const version = { ...firmware!.versions[0]!, id: "5", date: "1987", image: { size: 1024, crc32: "12345678" } };
    const record = { ...firmware!, name: "yes: no", notes: "# not a comment\n\n* two lines", versions: [version] };
    expect(readOne("firmware", writeRecord("firmware", record)).record).toEqual(record);
  });
});

describe("the field guide", () => {
  const guide = fieldGuide();
  const rows = (kind: Kind) => guide.find((g) => g.kind === kind)!.fields;

  test("has every kind, and words and a description for every field", () => {
    expect(guide.map((g) => g.kind)).toEqual(all);
    for (const { fields } of guide) for (const f of fields) expect(f.words && f.description, f.path).toBeTruthy();
  });

  test("names fields by path, and marks facts and what is required", () => {
    expect(rows("board").find((f) => f.path === "slots[].longest_mm")).toMatchObject({ required: false, fact: true, depth: 1 });
    expect(rows("card").find((f) => f.path === "settings[].positions[].io[].base")).toMatchObject({ required: true, fact: false });
    expect(rows("part").find((f) => f.path === "(switch) closes")).toBeTruthy();
  });
});
