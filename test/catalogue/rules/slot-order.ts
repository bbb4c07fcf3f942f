// Cases of the rule slot-order.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a gap between two slots": (c) => {
      c.board["tb-1"]!.slots[1]!.position = 4;
    },
  },
  bad: {
    "two slots in one position": (c) => {
      c.board["tb-1"]!.slots[1]!.position = 1;
    },
    "slots in another order": (c) => {
      c.board["tb-1"]!.slots[0]!.position = 3;
    },
  },
} satisfies RuleCases;
