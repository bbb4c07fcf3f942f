// Ids of choices are made and read in one place, and say the same both ways.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type ChoiceRef, choiceId, choiceOf, copyOfChoice } from "../../src/machine/index.js";

const all: readonly (readonly [string, ChoiceRef])[] = [
  ["revision", { kind: "revision" }],
  ["memory", { kind: "memory" }],
  ["mode:daily", { kind: "mode", mode: "daily" }],
  ["firmware:daily", { kind: "firmware", mode: "daily" }],
  ["on:daily:tern", { kind: "on", mode: "daily", card: "tern" }],
  ["card:tern", { kind: "card", card: "tern" }],
  ["slot:tern", { kind: "slot", card: "tern" }],
  ["card-revision:tern", { kind: "card-revision", card: "tern" }],
  ["setting:tern:J1", { kind: "setting", card: "tern", setting: "J1" }],
];

describe("the id of a choice", () => {
  it.each(all)("%s is written and read back", (id, ref) => {
    expect(choiceId(ref)).toBe(id);
    expect(choiceOf(id)).toEqual(ref);
    expect(copyOfChoice(id)).toBe("card" in ref ? "tern" : undefined);
  });

  it.each(["", "slot", "on:daily", "setting:tern", "colour:tern"])("%j is the id of none", (id) => {
    expect(choiceOf(id)).toBeUndefined();
  });

  it("is put together and taken apart nowhere else", () => {
    const kinds = [...new Set(all.map(([, ref]) => ref.kind))].join("|");
    const made = new RegExp(`\`(?:${kinds}):\\$\\{`);
    const read = new RegExp(`startsWith\\("(?:${kinds}):|\\b(?:id|choice|pin)\\.split\\(":"\\)`);
    const files = ["src", "templates"].flatMap((folder) =>
      readdirSync(folder, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name) && entry.name !== "choice-ref.ts")
        .map((entry) => join(entry.parentPath, entry.name)),
    );
    const found = files.flatMap((file) =>
      readFileSync(file, "utf8")
        .split("\n")
        .filter((line) => made.test(line) || read.test(line))
        .map((line) => `${file}: ${line.trim()}`),
    );
    expect(made.test(["id: `slot:", "{as}`"].join("$"))).toBe(true);
    expect(read.test('const [kind] = id.split(":")')).toBe(true);
    // An anchor of the matrix is an address of the site, not a choice.
    expect(found.filter((line) => !line.startsWith("src/pages/links.ts"))).toEqual([]);
  });
});
