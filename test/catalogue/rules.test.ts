// Every house rule against a record that keeps it and a record that breaks it; the set of rules is complete.
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { rules } from "../../src/catalogue/index.js";
import { formatFinding, kinds } from "../../src/records/index.js";
import { linkClub, testClub } from "../support/club.js";
import type { Change, RuleCases } from "../support/rule-cases.js";

const folder = join(import.meta.dirname, "rules");
const names = readdirSync(folder).flatMap((file) => /^(.+)\.ts$/.exec(file)?.[1] ?? []);
const cases = new Map<string, RuleCases>();
for (const name of names) cases.set(name, ((await import(`./rules/${name}.ts`)) as { default: RuleCases }).default);

const findings = (change: Change) => {
  const club = testClub();
  change(club);
  return linkClub(club).findings;
};

test("the small club keeps every rule", () => {
  expect(findings(() => {})).toEqual([]);
});

test("every rule has cases and no cases lack a rule; names are file names and scopes are kinds", () => {
  expect([...cases.keys()].sort()).toEqual(rules.map((r) => r.name).sort());
  expect(new Set(rules.map((r) => r.name)).size).toBe(rules.length);
  for (const rule of rules) {
    expect(rule.says, rule.name).toMatch(/\.$/);
    expect(rule.scope.length, rule.name).toBeGreaterThan(0);
    for (const kind of rule.scope) expect(Object.keys(kinds)).toContain(kind);
  }
});

describe.each([...cases])("%s", (name, { good, bad }) => {
  test("has a good and a bad record", () => {
    expect(Object.keys(good).length).toBeGreaterThan(0);
    expect(Object.keys(bad).length).toBeGreaterThan(0);
  });

  test.each(Object.entries(good))("lets through: %s", (_, change) => {
    expect(findings(change).map(formatFinding)).toEqual([]);
  });

  test.each(Object.entries(bad))("tells: %s", (_, change) => {
    const told = findings(change);
    expect([...new Set(told.map((f) => f.code))], told.map(formatFinding).join("\n")).toEqual([`rule-${name}`]);
    for (const f of told) {
      expect(f.hint, "every finding says the next action").toMatch(/[.?]$/);
      expect(rules.find((r) => r.name === name)!.scope, "a rule speaks only of the kinds it names").toContain(
        (Object.keys(kinds) as (keyof typeof kinds)[]).find((k) => f.at.file.startsWith(`${kinds[k].folder}/`)),
      );
      expect(f.at.text, "the place is a line of the file").toBeTruthy();
      expect(f.says, "findings do not shout").not.toContain("!");
    }
  });

  test("in these words", async () => {
    const told = Object.entries(bad).map(([title, change]) => [`# ${title}`, ...findings(change).map(formatFinding)].join("\n"));
    await expect(`${told.join("\n\n")}\n`).toMatchFileSnapshot(`./rules/${name}.txt`);
  });
});
