// What a card is called at the bench: short, and never the same for two.
import { expect, it } from "vitest";
import type { Catalogue } from "../../src/catalogue/index.js";
import type { Combination } from "../../src/planning/index.js";
import { calledIn } from "../../src/switching/demand/called.js";

function names(cards: Readonly<Record<string, string>>, placed: readonly (readonly [card: string, as: string])[]): string[] {
  const catalogue = { cards: new Map(Object.entries(cards).map(([id, name]) => [id, { id, name }])) } as unknown as Catalogue;
  const combination = { cards: placed.map(([card, as]) => ({ card, as })) } as unknown as Combination;
  const called = calledIn(catalogue, combination);
  return placed.map(([, as]) => called(as));
}

it("takes one word where that is enough, and more where two names begin alike", () => {
  const cards = { t: "Tallow bus tracer", a: "Crake bus extender", b: "Crake disk controller", c: "Crake" };
  const all = Object.keys(cards).map((id) => [id, id] as const);
  expect(names(cards, all)).toEqual(["Tallow", "Crake bus", "Crake disk", "Crake"]);
  expect(names(cards, [["a", "a"]])).toEqual(["Crake"]);
});

it("adds the name in the build where one card is there twice", () => {
  expect(
    names({ m: "Marram paged memory board" }, [
      ["m", "lower"],
      ["m", "upper"],
    ]),
  ).toEqual(["Marram (lower)", "Marram (upper)"]);
});

it("leaves a name nobody knows as it is", () => {
  expect(calledIn({ cards: new Map() } as unknown as Catalogue, { cards: [] } as unknown as Combination)("x")).toBe("x");
});
