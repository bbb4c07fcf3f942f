// A test that did not go well says what was seen: it is how the next person finds it.
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const resultExplained: Rule = {
  name: "result-explained",
  says: "A test that failed or worked only partly says what was seen.",
  why: "The next person finds the test by what they see on their own bench.",
  mend: "Say in symptoms what was seen, in plain words.",
  scope: ["build"],
  *check({ catalogue }): Iterable<Draft> {
    for (const build of catalogue.builds.values()) {
      const r = build.result;
      if (!r || r.outcome === "worked") continue;
      const seen = r.symptoms || r.faults_open || r.open_question || r.modes?.some((m) => m.symptoms || m.notes);
      if (seen) continue;
      yield {
        says: `The test ${r.outcome === "failed" ? "failed" : "went only partly well"}, but nothing says what was seen.`,
        at: ref("build", build.id, "result", "outcome"),
        hint: "Add symptoms in the words people would search for.",
      };
    }
  },
};
