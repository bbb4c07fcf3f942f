// Cases of the rule result-explained.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a fault left open": (c) => {
      c.build.tbd!.result!.modes = undefined;
      c.build.tbd!.result!.faults_open = ["Stops after an hour."];
    },
  },
  bad: {
    "a failure without a symptom": (c) => {
      c.build.tbd!.result!.outcome = "failed";
      c.build.tbd!.result!.modes = undefined;
    },
  },
} satisfies RuleCases;
