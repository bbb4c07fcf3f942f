// Cases of the rule none-and-settings.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "left to the settings": (c) => {
      c.card.tc!.claims = [{ io: "settings", memory: "none", interrupts: "settings", dma: "settings" }];
    },
    "none on one revision": (c) => {
      c.card.tc!.claims = [
        { io: "settings", memory: "none", interrupts: "settings", dma: "settings" },
        { revisions: ["1"], io: "none", memory: "none", interrupts: "none", dma: "none" },
      ];
    },
  },
  bad: {
    "ports: none, and a jumper sets them": (c) => {
      c.card.tc!.claims = [{ io: "none", memory: "none", interrupts: "settings", dma: "settings" }];
    },
    "memory: none, and one position is not known": (c) => {
      c.card.tc!.claims = [{ io: "settings", memory: "none", interrupts: "settings", dma: "settings" }];
      c.card.tc!.settings![0]!.positions[0]!.memory = "unknown";
    },
    "nothing at all, and a jumper sets ports": (c) => {
      c.card.tc!.claims = "none";
    },
  },
} satisfies RuleCases;
