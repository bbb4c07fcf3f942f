// Cases of the rule feature-names.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "dropped after it came": (c) => {
      c.firmware.tm!.versions.push({ id: "R2", removes: ["disk"], image: { size: "32K", crc32: "unknown" } });
    },
  },
  bad: {
    "a feature nobody declared": (c) => {
      c.firmware.tm!.versions[1]!.adds = ["disk", "tape"];
    },
    "needed by a card, declared nowhere": (c) => {
      c.card.tc!.needs!.features = ["disc"];
    },
    "dropped before it came": (c) => {
      c.firmware.tm!.versions[0]!.removes = ["disk"];
    },
    "added twice": (c) => {
      c.firmware.tm!.versions[0]!.adds = ["disk"];
    },
  },
} satisfies RuleCases;
