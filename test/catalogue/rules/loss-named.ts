// Cases of the rule loss-named.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a remedy with a loss": (c) => {
      c.conflict.tx!.remedies = [{ says: "Slow it down.", leaves: "degrades", loss: "Speed.", costs: "jumper" }];
    },
  },
  bad: {
    "a conflict that degrades": (c) => {
      delete c.conflict.tx!.loss;
    },
    "a loss where nothing works": (c) => {
      c.conflict.tx!.effect = "blocks";
    },
    "a remedy that leaves a loss": (c) => {
      c.conflict.tx!.remedies![0]!.leaves = "degrades";
    },
  },
} satisfies RuleCases;
