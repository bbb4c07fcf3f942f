// Every finding that check can tell is explained, and what explains nothing is not there.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { explain, explanations, rules } from "../../src/catalogue/index.js";
import { readingCodes } from "../../src/records/index.js";
import { freshFolder, slotwright } from "../support/recorder.js";

const codes = explanations.map((e) => e.code as string);

it("explains every code of reading and every house rule, each once", () => {
  expect(codes).toEqual([...new Set(codes)]);
  expect(readingCodes.filter((code) => !codes.includes(code))).toEqual([]);
  expect(rules.map((rule) => `rule-${rule.name}`).filter((code) => !codes.includes(code))).toEqual([]);
});

it("explains every code that the sources of the commands give a finding", () => {
  const src = join(import.meta.dirname, "..", "..", "src");
  const files = ["catalogue", "cli"].flatMap((room) =>
    readdirSync(join(src, room), { recursive: true, encoding: "utf8" })
      .filter((f) => f.endsWith(".ts"))
      .map((f) => join(src, room, f)),
  );
  const given = files.flatMap((file) => {
    const text = readFileSync(file, "utf8");
    const made = [...text.matchAll(/findingOf\([\w.]+, "([\w-]+)"/g)].map((m) => `rule-${m[1]}`);
    return [...made, ...[...text.matchAll(/code: "((?:rule|yaml|file|shape)-[\w-]+)"/g)].map((m) => m[1] ?? "")];
  });
  expect(new Set(given).size).toBeGreaterThan(3);
  expect(given.filter((code) => !codes.includes(code))).toEqual([]);
});

describe.each(explanations)("$code", ({ meaning, why, mend }) => {
  it("says in whole sentences what it means, why it matters and what to do", () => {
    for (const text of [meaning, why, mend]) expect(text).toMatch(/^[A-Z0-9].{18,}\.$/s);
    expect(new Set([meaning, why, mend]).size).toBe(3);
  });
});

it("no two codes are told the same reason", () => {
  const reasons = explanations.map((e) => e.why);
  expect(reasons.filter((why, i) => reasons.indexOf(why) !== i)).toEqual([]);
});

it("takes a code as a finding shows it, or a house rule by its name", () => {
  expect(explain("rule-file-name")).toBe(explain("file-name"));
  expect(explain("shape-bad-word")?.code).toBe("shape-bad-word");
  expect(explain("file-nmae")).toBeUndefined();
});

describe("check --explain", () => {
  const ask = (...args: string[]) => slotwright(["check", "--explain", ...args], { folder: freshFolder() });

  it("prints what one finding means, without looking at any record", async () => {
    const { code, out } = await ask("rule-file-name");
    const rule = rules.find((r) => r.name === "file-name");
    expect(code).toBe(0);
    expect(out).toBe(`rule-file-name\n  ${rule?.says}\n  Why it matters: ${rule?.why}\n  To mend it: ${rule?.mend}`);
  });

  it("prints all of them, and each as data", async () => {
    const { out } = await ask("all");
    expect(codes.filter((code) => !out.split("\n").includes(code))).toEqual([]);
    expect(JSON.parse((await ask("yaml-tab", "--json")).out)).toEqual(explain("yaml-tab"));
    expect(JSON.parse((await ask("all", "--json")).out)).toEqual(explanations);
  });

  it.each([
    ["file-nmae", "Did you mean rule-file-name?"],
    ["shape-bad-wrod", "Did you mean shape-bad-word?"],
    ["zebra", "slotwright check --explain all"],
  ])("%s is no code: %s", async (asked, hint) => {
    const { code, err } = await ask(asked);
    expect(code).toBe(2);
    expect(err).toContain(hint);
  });
});
