// Cases of the rule build-slots.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a card with a long edge in a long slot": (c) => {
      c.card.tc!.edge = "long";
      c.build.tbd!.cards[0]!.slot = "S2";
    },
  },
  bad: {
    "two cards in one slot": (c) => {
      c.build.tbd!.cards.push({ card: "tc", slot: "S1" });
    },
    "a long card in a short slot": (c) => {
      c.card.tc!.edge = "long";
    },
  },
} satisfies RuleCases;
