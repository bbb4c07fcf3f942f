// Cases of the rule slot-lines.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "an edge that lists no lines": (c) => {
      c.board["tb-1"]!.slots[1]!.interrupts = ["I2", "I3"];
    },
    "another name of a line of the edge": (c) => {
      c.board["tb-1"]!.slots[0]!.interrupts = ["I9"];
    },
  },
  bad: {
    "an interrupt line that is not on the edge": (c) => {
      c.bus.tb!.edges[0]!.interrupts = ["I2"];
      c.board["tb-1"]!.slots[0]!.interrupts = ["I2", "I3"];
    },
    "a channel that is not on the edge": (c) => {
      c.bus.tb!.edges[0]!.dma = [];
      c.board["tb-1"]!.slots[0]!.dma = ["1"];
    },
  },
} satisfies RuleCases;
