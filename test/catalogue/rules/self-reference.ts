// Cases of the rule self-reference.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a card that needs another": (c) => {
      c.card.other = {
        ...c.card.tc!,
        id: "other",
        name: "Other card",
        model: "other",
        needs: { ...c.card.tc!.needs!, cards: [{ any_of: ["tc"], why: "Its clock." }] },
      };
    },
  },
  bad: {
    "a card that needs itself": (c) => {
      c.card.tc!.needs!.cards = [{ any_of: ["tc"], why: "Its clock." }];
    },
    "a firmware that takes its own place": (c) => {
      c.firmware.tm!.replaces = ["tm"];
    },
  },
} satisfies RuleCases;
