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
      delete c.bus.tb!.chain;
      delete c.card.tc!.chain;
    },
    "a card that uses a chain the bus lacks": (c) => {
      delete c.bus.tb!.chain;
      delete c.board["tb-1"]!.chain;
    },
  },
} satisfies RuleCases;
