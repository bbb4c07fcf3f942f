// Cases of the rule remedy-costs.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "cheapest first": (c) => {
      c.conflict.tx!.remedies!.push({ says: "Fit a switch.", leaves: "nothing", costs: "part", part: "t-switch" });
    },
  },
  bad: {
    "a jumper after a trace cut": (c) => {
      c.conflict.tx!.remedies!.unshift({ says: "Cut the trace.", leaves: "nothing", costs: "trace-cut" });
    },
    "a part for the price of a jumper": (c) => {
      c.conflict.tx!.remedies![0]!.part = "t-switch";
    },
  },
} satisfies RuleCases;
