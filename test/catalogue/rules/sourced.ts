// Cases of the rule sourced.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "hearsay is a source": (c) => {
      c.card.tc!.sources = [{ id: "man", kind: "hearsay", says: "Club night." }];
    },
  },
  bad: {
    "a part without a source": (c) => {
      delete c.part["t-cable"]!.sources;
    },
    "a bus without a source": (c) => {
      delete c.bus.tb!.sources;
      c.bus.tb!.interrupts[1]!.share = "never";
    },
  },
} satisfies RuleCases;
