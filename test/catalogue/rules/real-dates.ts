// Cases of the rule real-dates.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a leap day": (c) => {
      c.conflict.tx!.evidence[0]!.date = "1988-02-29";
    },
  },
  bad: {
    "a source of next year": (c) => {
      c.card.tc!.sources![0]!.date = "2001";
    },
    "a thirteenth month": (c) => {
      c.conflict.tx!.evidence[0]!.date = "1988-13";
    },
    "no leap day": (c) => {
      c.build.tbd!.result!.date = "1990-02-29";
    },
  },
} satisfies RuleCases;
