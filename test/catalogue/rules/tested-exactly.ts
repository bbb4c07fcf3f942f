// Cases of the rule tested-exactly.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a board with one revision": (c) => {
      c.build.tbd!.revision = undefined;
      c.board["tb-1"]!.revisions.pop();
      c.board["tb-1"]!.slots[1]!.revisions = undefined;
      c.card.tc!.needs!.boards = undefined;
      c.firmware.tm!.versions[1]!.boards = undefined;
    },
  },
  bad: {
    "which of two revisions": (c) => {
      c.build.tbd!.revision = ["A", "B"];
    },
    "no modes, no slot": (c) => {
      c.build.tbd!.modes = undefined;
      c.build.tbd!.result!.modes = undefined;
      c.build.tbd!.result!.symptoms = ["slow"];
      c.build.tbd!.cards[0]!.slot = undefined;
    },
  },
} satisfies RuleCases;
