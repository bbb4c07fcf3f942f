// Cases of the rule current-figures.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "unknown is no figure": (c) => {
      c.card.tc!.power[0]!.worst_A = "unknown";
    },
  },
  bad: {
    "idle above the worst case": (c) => {
      c.card.tc!.power[0]!.idle_A = 0.9;
    },
    "mA written as A": (c) => {
      c.card.tc!.power = [{ rail: "+5", worst_A: 350 }];
    },
    "a board that overloads its supply": (c) => {
      c.board["tb-1"]!.rails[0]!.board_A = 6;
    },
  },
} satisfies RuleCases;
