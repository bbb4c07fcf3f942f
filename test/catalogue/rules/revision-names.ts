// Cases of the rule revision-names.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a revision the card has": (c) => {
      c.card.tc!.power[0]!.revisions = ["1"];
    },
  },
  bad: {
    "of a board, in a span of boards": (c) => {
      c.firmware.tm!.boards = [{ board: "tb-1", revisions: ["A", "B", "C"] }];
    },
    "of a board, in its own slot": (c) => {
      c.board["tb-1"]!.slots[0]!.revisions = ["D"];
    },
    "of a card, in a conflict": (c) => {
      c.conflict.tx!.when.cards![0]!.revisions = ["2"];
    },
    "of a card that declares none": (c) => {
      const { revisions: _, ...tc } = c.card.tc!;
      c.card.other = {
        ...tc,
        id: "other",
        name: "Other card",
        model: "other",
        power: [{ rail: "+5", worst_A: 1, revisions: ["1"] }],
      };
    },
  },
} satisfies RuleCases;
