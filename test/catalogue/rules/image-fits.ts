// Cases of the rule image-fits.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "an image held several times": (c) => {
      c.firmware.tm!.versions[0]!.image.size = "8K";
    },
  },
  bad: {
    "an image longer than the window": (c) => {
      c.firmware.tm!.versions[0]!.image.size = "64K";
    },
    "an image that does not fill the window evenly": (c) => {
      c.firmware.tm!.versions[0]!.image.size = "24K";
    },
  },
} satisfies RuleCases;
