// Cases of the rule build-settings.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "positions that go together": (c) => {
      c.build.tbd!.cards[0]!.settings = { J1: "310", J2: "2" };
      delete c.build.tbd!.result!.conflicts;
    },
  },
  bad: {
    "positions that do not": (c) => {
      c.build.tbd!.cards[0]!.settings = { J1: "310", J2: "3" };
      delete c.build.tbd!.result!.conflicts;
    },
  },
} satisfies RuleCases;
