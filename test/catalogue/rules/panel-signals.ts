// Cases of the rule panel-signals.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "spare conductors": (c) => {
      c.card.tc!.panel![0]!.conductors = 10;
    },
  },
  bad: {
    "more signals than conductors": (c) => {
      c.card.tc!.panel![0]!.conductors = 1;
    },
  },
} satisfies RuleCases;
