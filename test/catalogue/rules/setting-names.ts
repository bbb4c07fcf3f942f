// Cases of the rule setting-names.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a list of positions": (c) => {
      c.conflict.tx!.when.cards![0]!.settings = { J1: ["300", "310"] };
    },
  },
  bad: {
    "a claim under a position that is not there": (c) => {
      c.card.tc!.claims = [{ when: { J1: "330" }, memory: [{ base: 0xd0000, size: 0x4000 }] }];
    },
    "a conflict about a position that is not there": (c) => {
      c.conflict.tx!.when.cards![0]!.settings = { J1: ["300", "320"] };
    },
    "a default that is not there": (c) => {
      c.card.tc!.settings![0]!.default = "320";
    },
  },
} satisfies RuleCases;
