// Cases of the rule option-rom-step.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "registers between two steps": (c) => {
      c.card.tc!.claims = [{ memory: [{ base: 0xd0400, size: "1K", is: "registers" }] }];
    },
  },
  bad: {
    "a ROM between two steps": (c) => {
      c.card.tc!.claims = [{ memory: [{ base: 0xd0400, size: "8K", is: "option-rom" }] }];
    },
    "a ROM with an odd length": (c) => {
      c.card.tc!.claims = [{ memory: [{ base: 0xd0800, size: 1100, is: "option-rom" }] }];
    },
  },
} satisfies RuleCases;
