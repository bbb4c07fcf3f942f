// Cases of the rule circulating-size.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "half an image": (c) => {
      c.firmware.tm!.versions[1]!.circulating = [{ as: "even-half", size: "16K", crc32: "11112222" }];
    },
    "a bad dump of any length": (c) => {
      c.firmware.tm!.versions[1]!.circulating = [{ as: "bad-dump", size: "5K", crc32: "11112222" }];
    },
  },
  bad: {
    "held twice, but not twice as long": (c) => {
      c.firmware.tm!.versions[1]!.circulating![0]!.size = "32K";
    },
    "an overdump that is no longer": (c) => {
      c.firmware.tm!.versions[1]!.circulating = [{ as: "overdump", size: "32K", crc32: "11112222" }];
    },
    "the image itself": (c) => {
      c.firmware.tm!.versions[1]!.circulating = [{ as: "byte-swapped", size: "32K", crc32: "0123abcd" }];
    },
  },
} satisfies RuleCases;
