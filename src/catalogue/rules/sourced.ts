// A record says where its facts come from; a fact without a source cannot be weighed.
import { allOf } from "../catalogue.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const sourced: Rule = {
  name: "sourced",
  says: "A record of things says where its facts come from.",
  why: "Somebody will burn a device or buy a card by this record, and must be able to see what it rests on.",
  mend: "Add sources: a manual's page, a measurement, a letter. Hearsay is a source too, and says so.",
  scope: ["bus", "board", "firmware", "card", "part"],
  *check({ catalogue }): Iterable<Draft> {
    for (const kind of this.scope) {
      for (const record of allOf(catalogue, kind).values()) {
        if (record.sources) continue;
        yield {
          says: "Nothing says where the facts of this record come from.",
          at: ref(kind, record.id, "id"),
          hint: "Add sources: a manual page, a measurement, a letter; hearsay is a source too, and says so.",
        };
      }
    }
  },
};
