// Cases of the rule settle-named.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a confirmed conflict": (c) => {
      c.conflict.tx!.status = "confirmed";
      c.conflict.tx!.settle = undefined;
      c.conflict.tx!.evidence[0]!.grade = "bench";
    },
  },
  bad: {
    "a suspicion nobody can settle": (c) => {
      c.conflict.tx!.settle = undefined;
    },
    "a test for what is settled": (c) => {
      c.conflict.tx!.status = "disproved";
    },
  },
} satisfies RuleCases;
