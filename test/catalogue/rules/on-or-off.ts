// Cases of the rule on-or-off.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a card that contacts switch": (c) => {
      c.build.tbd!.modes!.push({ id: "night", firmware: "R1A", cards: [], on_or_off: ["tc"] });
      delete c.build.tbd!.result;
    },
  },
  bad: {
    "on, and on or off": (c) => {
      c.build.tbd!.modes!.push({ id: "night", firmware: "R1A", cards: ["tc"], on_or_off: ["tc"] });
      delete c.build.tbd!.result;
    },
    "nothing switches it": (c) => {
      delete c.card.tc!.enable;
      c.build.tbd!.modes!.push({ id: "night", firmware: "R1A", cards: [], on_or_off: ["tc"] });
      delete c.build.tbd!.result;
    },
  },
} satisfies RuleCases;
