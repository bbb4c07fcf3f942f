// Cases of the rule bench-date.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "the year of the release": (c) => {
      c.firmware.tm!.versions[1]!.date = "1990-06";
      c.build.tbd!.result!.date = "1990";
    },
  },
  bad: {
    "a day that lies ahead": (c) => {
      c.build.tbd!.result!.date = "2000-01-02";
    },
    "before the release of the firmware": (c) => {
      c.firmware.tm!.versions[1]!.date = "1991";
    },
    "before the card revision": (c) => {
      c.card.tc!.revisions![0]!.date = "1992-01";
    },
    "before the board revision": (c) => {
      c.build.tbd!.revision = "B";
      c.board["tb-1"]!.revisions[1]!.date = "1995";
    },
  },
} satisfies RuleCases;
