// Cases of the rule result-modes.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "one mode, told as a whole": (c) => {
      delete c.build.tbd!.result!.modes;
      c.build.tbd!.result!.symptoms = ["slow"];
    },
  },
  bad: {
    "a whole that worked, a mode that did not": (c) => {
      c.build.tbd!.result!.outcome = "worked";
    },
    "a whole that failed, modes that worked": (c) => {
      c.build.tbd!.result!.outcome = "failed";
      c.build.tbd!.result!.modes![0]!.outcome = "worked";
    },
    "a mode nothing is said of": (c) => {
      c.build.tbd!.modes!.push({ id: "night", firmware: "R1A" });
    },
  },
} satisfies RuleCases;
