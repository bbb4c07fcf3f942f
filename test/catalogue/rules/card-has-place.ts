// Cases of the rule card-has-place.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a card for some board": (c) => {
      c.card.tc!.edge = "long";
      c.build.tbd!.cards[0]!.slot = "S2";
    },
  },
  bad: {
    "no board has its slot": (c) => {
      c.bus.tb!.edges.push({ id: "wide", name: "Wide", fits: ["wide"] });
      c.card.tc!.edge = "wide";
      c.build.tbd!.cards[0]!.slot = undefined;
    },
    "a board with another bus": (c) => {
      c.bus.other = { ...c.bus.tb!, id: "other" };
      c.board.b2 = { ...c.board["tb-1"]!, id: "b2", bus: "other" };
      c.firmware.tm!.boards.push({ board: "b2" });
      c.card.tc!.needs!.boards!.push({ board: "b2" });
    },
    "more memory than it can stand": (c) => {
      c.card.tc!.needs!.memory_at_most = "128K";
    },
  },
} satisfies RuleCases;
