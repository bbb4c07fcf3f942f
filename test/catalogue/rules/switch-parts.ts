// Cases of the rule switch-parts.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "each as what it is": (c) => {
      c.build.tbd!.switch = { device: "t-27c256", switch: "t-switch", connector: "t-plug", cable: "t-cable" };
    },
  },
  bad: {
    "a cable as the switch": (c) => {
      c.build.tbd!.switch = { switch: "t-cable" };
    },
    "a switch as the device": (c) => {
      c.build.tbd!.switch = { device: "t-switch" };
    },
  },
} satisfies RuleCases;
