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
    "firmware of boards with another bus": (c) => {
      c.bus.other = { ...c.bus.tb!, id: "other", name: "Other bus" };
      c.board.b2 = { ...c.board["tb-1"]!, id: "b2", name: "Other board", model: "Two", bus: "other", firmware: ["tm2"] };
      const image = c.firmware.tm!.versions[0]!.image;
      c.firmware.tm2 = { ...c.firmware.tm!, id: "tm2", name: "Other monitor", boards: [{ board: "b2" }], versions: [{ id: "R1", image }] };
      c.card.tc!.needs!.firmware!.push({ family: "tm2", from: "R1" });
    },
    "no board has its slot": (c) => {
      c.bus.tb!.edges.push({ id: "wide", name: "Wide", fits: ["wide"] });
      c.card.tc!.edge = "wide";
      delete c.build.tbd!.result;
      delete c.build.tbd!.cards[0]!.slot;
    },
    "a board with another bus": (c) => {
      c.bus.other = { ...c.bus.tb!, id: "other", name: "Other bus" };
      c.board.b2 = { ...c.board["tb-1"]!, id: "b2", name: "B2 board", model: "b2", bus: "other" };
      c.firmware.tm!.boards.push({ board: "b2" });
      c.card.tc!.needs!.boards!.push({ board: "b2" });
    },
    "more memory than it can stand": (c) => {
      c.card.tc!.needs!.memory_at_most = "128K";
    },
  },
} satisfies RuleCases;
