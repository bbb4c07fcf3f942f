// Cases of the rule file-name.
import type { RuleCases } from "../../support/rule-cases.js";

export default {
  good: {
    "a file named after its id": (c) => {
      c.files["card/tc"] = "tc";
    },
  },
  bad: {
    "a file named otherwise": (c) => {
      c.files["card/tc"] = "test-card";
    },
  },
} satisfies RuleCases;
