// Cases of the rule enable-releases.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "what it needs": (c) => {
      c.card.tc!.enable!.releases = ["firmware", "features", "clock", "memory-size", "chain", "dma"];
    },
  },
  bad: {
    "ports it does not claim": (c) => {
      c.card.tc!.settings![0]!.positions = [{ id: "300" }, { id: "310" }];
    },
    "a card it does not need": (c) => {
      c.card.tc!.enable!.releases = ["io", "cards"];
    },
  },
} satisfies RuleCases;
