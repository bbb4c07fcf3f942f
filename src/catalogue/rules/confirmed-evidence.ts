// Confirmed means somebody saw it on the bench or read it in a paper; hearsay alone is a suspicion.
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const confirmedEvidence: Rule = {
  name: "confirmed-evidence",
  says: "A confirmed conflict rests on a bench test or a document, and a bench test says when or names its build.",
  why: "A confirmed conflict rules machines out; hearsay must not.",
  mend: "Add the test or the document with its date, or set the status to suspected.",
  scope: ["conflict"],
  *check({ catalogue }): Iterable<Draft> {
    for (const c of catalogue.conflicts.values()) {
      if (c.status === "confirmed" && c.evidence.every((e) => e.grade === "reported"))
        yield {
          says: "The conflict is called confirmed, but rests on reports alone.",
          at: ref("conflict", c.id, "status"),
          related: [{ says: "The evidence.", at: ref("conflict", c.id, "evidence") }],
          hint: "Write suspected, with the test that would settle it, or add the bench test or the paper.",
        };
      for (const [i, e] of c.evidence.entries()) {
        if (e.grade === "bench" && e.date === undefined && e.build === undefined)
          yield {
            says: "A bench test without a date or a tested build cannot be looked up.",
            at: ref("conflict", c.id, "evidence", i, "grade"),
            hint: "Add date, or build; or grade it reported.",
          };
      }
    }
  },
};
