// The field "Add a card" finds what the site's search finds: the judged questions that a card serves, typed into it.
import { describe, expect, it } from "vitest";
import { matching, type Offer } from "../../src/planner/ui/Combobox.js";
import { findCards } from "../../src/planner/worker/find-cards.js";
import { afterwards, english, french, german, type Judged } from "../publish/judged-queries.js";
import { demo } from "../support/demo.js";

const catalogue = demo();
const offers = [...catalogue.cards.values()].map(
  (c): Offer => ({ id: c.id, name: c.name, more: `${c.maker} ${c.model}, ${c.does.join(", ")}` }),
);
const forCards = (asked: readonly Judged[]) => asked.filter(({ useful }) => useful.every((end) => end.startsWith("cards/")));
const first = (typed: string) => matching(offers, typed)[0]?.id ?? findCards(catalogue, typed)[0];

describe("the field that adds a card", () => {
  it.each([
    ["English", [...english, ...afterwards], 0.95],
    ["German and French", [...german, ...french], 0.85],
  ] as const)("offers a useful card first, asked in %s", (_, all, share) => {
    const asked = forCards(all);
    const wrong = asked.filter(({ asked: typed, useful }) => !useful.includes(`cards/${first(typed)}`));
    expect(asked.length).toBeGreaterThan(7);
    expect(1 - wrong.length / asked.length, wrong.map((w) => `${w.asked}: ${first(w.asked)}`).join("; ")).toBeGreaterThanOrEqual(share);
  });

  it("offers nothing for what is no card", () => {
    expect(findCards(catalogue, "zzzz qqqq")).toEqual([]);
  });
});
