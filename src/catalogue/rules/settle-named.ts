// A suspicion comes with the test that would settle it; else it stays one for ever.
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const settleNamed: Rule = {
  name: "settle-named",
  says: "A suspected conflict names the test that would settle it.",
  why: "A suspicion without a test stays one for ever, and every machine it touches stays unknown.",
  mend: "Say in settle what somebody with the cards has to try.",
  scope: ["conflict"],
  *check({ catalogue }): Iterable<Draft> {
    for (const c of catalogue.conflicts.values()) {
      const at = ref("conflict", c.id, c.status === "suspected" ? "status" : "settle");
      if (c.status === "suspected" && c.settle === undefined)
        yield {
          says: "The conflict is suspected, but nothing says how to settle it.",
          at,
          hint: "Add settle: what to try, and what would be seen either way.",
        };
      if (c.status !== "suspected" && c.settle !== undefined)
        yield {
          level: "warning",
          says: `The conflict is ${c.status}, yet still names a test to settle it.`,
          at,
          hint: "Leave settle out, and put what was found into evidence.",
        };
    }
  },
};
