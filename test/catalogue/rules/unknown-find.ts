// Cases of the rule unknown-find.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a plain unknown": (c) => {
      c.card.tc!.room.height_mm = "unknown";
    },
  },
  bad: {
    "unknown, and no way to find out": (c) => {
      c.card.tc!.room.height_mm = { is: "unknown", source: "man" };
    },
    "known, and how to find out": (c) => {
      c.card.tc!.room.height_mm = { is: 100, find: "Measure it." };
    },
  },
} satisfies RuleCases;
