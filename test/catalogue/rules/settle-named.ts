// Cases of the rule settle-named.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a confirmed conflict": (c) => {
      c.conflict.tx!.status = "confirmed";
      delete c.conflict.tx!.settle;
      c.conflict.tx!.evidence[0]!.grade = "bench";
    },
  },
  bad: {
    "a suspicion nobody can settle": (c) => {
      delete c.conflict.tx!.settle;
    },
    "a test for what is settled": (c) => {
      c.conflict.tx!.status = "disproved";
    },
  },
} satisfies RuleCases;
