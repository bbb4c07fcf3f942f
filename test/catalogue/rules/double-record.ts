// Cases of the rule double-record.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "another model": (c) => {
      c.card.other = { ...c.card.tc!, id: "other", model: "TC-2" };
    },
  },
  bad: {
    "one model in two records": (c) => {
      c.card.other = { ...c.card.tc!, id: "other", name: "Test card, again", model: "tc" };
    },
    "one name in two records": (c) => {
      c.part.p2 = { ...c.part["t-cable"]!, id: "p2" };
    },
  },
} satisfies RuleCases;
