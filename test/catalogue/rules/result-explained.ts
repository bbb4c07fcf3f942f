// Cases of the rule result-explained.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a fault left open": (c) => {
      delete c.build.tbd!.result!.modes;
      c.build.tbd!.result!.faults_open = ["Stops after an hour."];
    },
  },
  bad: {
    "a failure without a symptom": (c) => {
      c.build.tbd!.result!.outcome = "failed";
      delete c.build.tbd!.result!.modes;
    },
  },
} satisfies RuleCases;
