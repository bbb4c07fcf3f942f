// Cases of the rule chain-slots.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a chain through some slots": (c) => {
      c.board["tb-1"]!.chains![0]!.slots = ["S2"];
    },
    "a card that names each chain": (c) => {
      c.bus.tb!.chains!.push({ id: "K", name: "Acknowledge" });
      c.card.tc!.chain = { G: "uses", K: "passes" };
    },
  },
  bad: {
    "a slot that is not there": (c) => {
      c.board["tb-1"]!.chains![0]!.slots = ["S1", "S3"];
    },
    "a slot twice": (c) => {
      c.board["tb-1"]!.chains![0]!.slots = ["S1", "S2", "S1"];
    },
    "a chain twice": (c) => {
      c.board["tb-1"]!.chains!.push({ chain: "G", slots: ["S2"], empty: "breaks" });
    },
    "a chain on a bus without one": (c) => {
      delete c.bus.tb!.chains;
      delete c.card.tc!.chain;
    },
    "a card that uses a chain the bus lacks": (c) => {
      delete c.bus.tb!.chains;
      delete c.board["tb-1"]!.chains;
    },
    "a card that names another chain": (c) => {
      c.card.tc!.chain = { G: "uses", H: "passes" };
    },
  },
} satisfies RuleCases;
