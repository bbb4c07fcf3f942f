// The page of all findings holds what check --explain prints, each finding at an address of its own.
import { expect, it } from "vitest";
import { explanations } from "../../src/catalogue/index.js";
import { findingsPage } from "../../src/pages/findings.js";
import { pages } from "./built.js";

function built(name: string) {
  const page = pages.find((p) => p.name === name);
  if (!page) throw new Error(`the built site has no page ${name}`);
  return page;
}

it("lists every finding once, in one of its groups", () => {
  const listed = findingsPage().groups.flatMap((group) => group.findings);
  expect(listed.map((f) => f.code).sort()).toEqual(explanations.map((f) => f.code).sort());
  for (const group of findingsPage().groups) expect(group.findings.length, group.title).toBeGreaterThan(0);
});

it("stands in the built site, with a place to lead to for each code, reached from the page about the data", () => {
  const page = built("data/findings.html");
  for (const { code, meaning, why, mend } of explanations) {
    const entry = page.all.find((e) => e.attributes.id === code);
    for (const text of [code, meaning, why, mend]) expect(entry?.text, code).toContain(text.replace(/\s+/g, " "));
  }
  const links = built("data/index.html")
    .find("a")
    .map((a) => a.attributes.href);
  expect(links.some((href) => href?.endsWith("findings.html"))).toBe(true);
});
