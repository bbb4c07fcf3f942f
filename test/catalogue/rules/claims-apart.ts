// Cases of the rule claims-apart.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "the same ports in two positions": (c) => {
      c.card.tc!.settings![0]!.positions[1]!.io = [{ base: 0x300, size: 8 }];
    },
    "on two revisions of the card": (c) => {
      c.card.tc!.revisions!.push({ id: "2", tell: "A 2." });
      c.card.tc!.claims = [
        { revisions: ["1"], io: [{ base: 0x200, size: 8 }] },
        { revisions: ["2"], io: [{ base: 0x204, size: 8 }] },
      ];
    },
  },
  bad: {
    "ports of one position": (c) => {
      c.card.tc!.settings![0]!.positions[0]!.io = [
        { base: 0x300, size: 8 },
        { base: 0x306, size: 2 },
      ];
    },
    "two fixed claims": (c) => {
      c.card.tc!.claims = [{ memory: [{ base: 0xd0000, size: "16K" }] }, { memory: [{ base: 0xd2000, size: "16K" }] }];
    },
    "one line under two names": (c) => {
      c.card.tc!.claims = [{ interrupts: [{ line: "I2" }, { line: "I9" }] }];
    },
  },
} satisfies RuleCases;
