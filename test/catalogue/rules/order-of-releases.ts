// Cases of the rule order-of-releases.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "follows the one before it": (c) => {
      c.firmware.tm!.versions[1]!.follows = "R1";
    },
  },
  bad: {
    "a release that stands after it": (c) => {
      c.firmware.tm!.versions[0]!.follows = "R1A";
    },
    "a release that is not there": (c) => {
      c.firmware.tm!.versions[1]!.follows = "R2";
    },
    itself: (c) => {
      c.firmware.tm!.versions[1]!.follows = "R1A";
    },
  },
} satisfies RuleCases;
