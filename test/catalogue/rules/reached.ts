// Cases of the rule reached.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a bus with a board alone": (c) => {
      c.bus.other = { ...c.bus.tb!, id: "other", name: "Other bus" };
      c.board.b2 = { ...c.board["tb-1"]!, id: "b2", name: "B2 board", model: "b2", bus: "other" };
      c.firmware.tm!.boards.push({ board: "b2" });
    },
  },
  bad: {
    "a bus nobody uses": (c) => {
      c.bus.other = { ...c.bus.tb!, id: "other", name: "Other bus" };
    },
  },
} satisfies RuleCases;
