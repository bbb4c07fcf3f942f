// Cases of the rule order-of-dates.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "dates as exact as is known": (c) => {
      c.firmware.tm!.versions[0]!.date = "1986-05";
      c.firmware.tm!.versions[1]!.date = "1986";
    },
  },
  bad: {
    "a version older than the one before it": (c) => {
      c.firmware.tm!.versions[1]!.date = "1985-12";
    },
    "a board revision older than the one before it": (c) => {
      c.board["tb-1"]!.revisions[1]!.date = "1984";
    },
    "a card revision older than the one before it": (c) => {
      c.card.tc!.revisions = [
        { id: "1", tell: "No mark.", date: "1988" },
        { id: "2", tell: "A 2.", date: "1987" },
      ];
    },
  },
} satisfies RuleCases;
