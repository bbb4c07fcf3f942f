// Cases of the rule chain-slots.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a chain through some slots": (c) => {
      c.board["tb-1"]!.chain = ["S2"];
    },
  },
  bad: {
    "a slot that is not there": (c) => {
      c.board["tb-1"]!.chain = ["S1", "S3"];
    },
    "a slot twice": (c) => {
      c.board["tb-1"]!.chain = ["S1", "S2", "S1"];
    },
    "a chain on a bus without one": (c) => {
      c.bus.tb!.chain = undefined;
      c.card.tc!.chain = undefined;
    },
    "a card that uses a chain the bus lacks": (c) => {
      c.bus.tb!.chain = undefined;
      c.board["tb-1"]!.chain = undefined;
    },
  },
} satisfies RuleCases;
