// Cases of the rule on-or-off.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a card that contacts switch": (c) => {
      c.build.tbd!.modes!.push({ id: "night", firmware: "R1A", cards: [], on_or_off: ["tc"] });
      c.build.tbd!.result = undefined;
    },
  },
  bad: {
    "on, and on or off": (c) => {
      c.build.tbd!.modes!.push({ id: "night", firmware: "R1A", cards: ["tc"], on_or_off: ["tc"] });
      c.build.tbd!.result = undefined;
    },
    "nothing switches it": (c) => {
      c.card.tc!.enable = undefined;
      c.build.tbd!.modes!.push({ id: "night", firmware: "R1A", cards: [], on_or_off: ["tc"] });
      c.build.tbd!.result = undefined;
    },
  },
} satisfies RuleCases;
