// Cases of the rule bus-names.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "another name of a line": (c) => {
      c.card.tc!.settings![1]!.positions[0]!.interrupts = [{ line: "I9" }];
    },
  },
  bad: {
    "a line the bus lacks": (c) => {
      c.card.tc!.settings![1]!.positions[1]!.interrupts = [{ line: "I33" }];
    },
    "a channel the bus lacks": (c) => {
      c.board["tb-1"]!.fixed[0]!.dma = [{ channel: "7" }];
    },
    "a rail the bus lacks": (c) => {
      c.card.tc!.power[0]!.rail = "+12";
    },
    "a rail needed that the bus lacks": (c) => {
      c.card.tc!.needs!.rails = ["+5", "-5"];
    },
    "an edge the bus lacks": (c) => {
      c.board["tb-1"]!.slots[1]!.edge = "lang";
    },
    "an address space the bus lacks": (c) => {
      c.board["tb-1"]!.fixed[0]!.memory = [{ base: 0xb8000, size: "4K", space: "A24" }];
    },
    "an overlay line the bus lacks": (c) => {
      c.bus.tb!.overlay_lines = [{ id: "OVER", says: "Silences what yields to it." }];
      c.board["tb-1"]!.fixed[0]!.memory = [{ base: 0xb8000, size: "4K", yields_to: ["OVER", "OVRE"] }];
    },
    "an edge of the bus that fits an unknown slot": (c) => {
      c.bus.tb!.edges[1]!.fits = ["long", "extra"];
    },
  },
} satisfies RuleCases;
