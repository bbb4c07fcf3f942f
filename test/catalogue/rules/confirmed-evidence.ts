// Cases of the rule confirmed-evidence.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a paper": (c) => {
      c.conflict.tx!.status = "confirmed";
      delete c.conflict.tx!.settle;
      c.conflict.tx!.evidence.push({ grade: "documented", says: "Errata sheet." });
    },
  },
  bad: {
    "confirmed by hearsay": (c) => {
      c.conflict.tx!.status = "confirmed";
      delete c.conflict.tx!.settle;
    },
    "a bench test nobody can look up": (c) => {
      c.conflict.tx!.evidence.push({ grade: "bench", says: "Seen." });
    },
  },
} satisfies RuleCases;
