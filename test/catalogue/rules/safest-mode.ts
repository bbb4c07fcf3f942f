// Cases of the rule safest-mode.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "none is the safest": (c) => {
      delete c.build.tbd!.modes![0]!.safest;
    },
  },
  bad: {
    "two are the safest": (c) => {
      c.build.tbd!.modes!.push({ id: "night", firmware: "R1A", safest: true });
      c.build.tbd!.result!.modes!.push({ mode: "night", outcome: "worked" });
    },
  },
} satisfies RuleCases;
