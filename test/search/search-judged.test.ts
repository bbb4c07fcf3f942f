// The search held against questions judged by hand: the first find must serve the one who asked.
import { describe, expect, it } from "vitest";
import { finder } from "../../src/search/find.js";
import { afterwards, english, french, german, type Judged } from "../publish/judged-queries.js";
import { entries } from "../publish/search-entries.js";

const { find } = finder(entries);
const pageOf = (href: string | undefined) => href?.replace(/\.html$/, "") ?? "nothing";

function missed(queries: readonly Judged[]): readonly string[] {
  return queries.flatMap(({ asked, useful }) => {
    const finds = find(asked).map((h) => pageOf(h.entry.href));
    const at = finds.findIndex((page) => useful.includes(page));
    return at === 0 ? [] : [`${asked}: ${finds[0] ?? "nothing"}${at > 0 ? ` (served at ${at + 1})` : " (never served)"}`];
  });
}

describe("the first find", () => {
  it("of every judged question is a page there is", () => {
    const pages = new Set(entries.map((e) => pageOf(e.href)));
    expect([...english, ...german, ...french, ...afterwards].flatMap((q) => q.useful).filter((page) => !pages.has(page))).toEqual([]);
  });

  it.each([
    ["English", english, 0.95],
    ["German", german, 0.85],
    ["French", french, 0.85],
    ["words that nothing was tuned on", afterwards, 0.75],
  ] as const)("serves who asks in %s", (_, queries, share) => {
    const not = missed(queries);
    if (process.env.SHOW) console.log(`${queries.length - not.length} of ${queries.length}\n${not.join("\n")}`);
    expect(1 - not.length / queries.length, not.join("\n")).toBeGreaterThanOrEqual(share);
  });
});
