// Cases of the rule tested-exactly.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a board with one revision": (c) => {
      delete c.build.tbd!.revision;
      c.board["tb-1"]!.revisions.pop();
      delete c.board["tb-1"]!.slots[1]!.revisions;
      delete c.card.tc!.needs!.boards;
      delete c.firmware.tm!.versions[1]!.boards;
    },
  },
  bad: {
    "which of two revisions": (c) => {
      c.build.tbd!.revision = ["A", "B"];
    },
    "a card that was on or off": (c) => {
      c.build.tbd!.modes![0]!.on_or_off = [c.build.tbd!.cards[0]!.card];
    },
    "no modes, no slot": (c) => {
      delete c.build.tbd!.modes;
      delete c.build.tbd!.result!.modes;
      c.build.tbd!.result!.symptoms = ["slow"];
      delete c.build.tbd!.cards[0]!.slot;
    },
  },
} satisfies RuleCases;
