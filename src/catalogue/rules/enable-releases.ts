// A card lets go, when off, only of what it takes or needs when on.
import { type Card, listed } from "../../records/index.js";
import { claimSites } from "../claims.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

type Release = NonNullable<Card["enable"]>["releases"][number];

export const enableReleases: Rule = {
  name: "enable-releases",
  says: "A card that is switched off releases only what it claims or needs.",
  why: "A card that is said to let go of what it never held makes room on paper that is not there.",
  mend: "Take the entry out of releases, or add the claim it lets go of.",
  scope: ["card"],
  *check({ catalogue }): Iterable<Draft> {
    for (const card of catalogue.cards.values()) {
      for (const [i, what] of (card.enable?.releases ?? []).entries()) {
        if (holds(card, what)) continue;
        yield {
          says: `The card is said to release ${what} when off, but claims and needs none.`,
          at: ref("card", card.id, "enable", "releases", i),
          hint: "Leave it out, or add what the card takes or needs.",
        };
      }
    }
  },
};

function holds(card: Card, what: Release): boolean {
  const needs = card.needs ?? {};
  switch (what) {
    case "io":
    case "memory":
    case "interrupts":
    case "dma":
      return claimSites(card).some((s) => s.claims[what] === "unknown" || listed<unknown>(s.claims[what]).length > 0);
    case "firmware":
    case "features":
    case "cards":
      return needs[what] !== undefined;
    case "clock":
      return needs.clock_at_most_MHz !== undefined;
    case "memory-size":
      return needs.memory_at_least !== undefined || needs.memory_at_most !== undefined;
    case "chain":
      return [card.chain ?? []]
        .flatMap((c) => (typeof c === "string" ? [c] : Object.values(c)))
        .some((w) => w === "uses" || w === "breaks");
  }
}
