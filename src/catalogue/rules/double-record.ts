// Two records of one thing split what is known of it; each tells half.
import { allOf } from "../catalogue.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const doubleRecord: Rule = {
  name: "double-record",
  says: "One thing has one record: no two boards or cards of one maker and model, no two records of a kind with one name.",
  why: "What is known of the thing is split between two records, and an answer sees half of it.",
  mend: "Put both into one record, or name what tells the two things apart.",
  scope: ["bus", "board", "firmware", "card", "conflict", "build", "part"],
  *check({ catalogue }): Iterable<Draft> {
    for (const kind of this.scope) {
      const seen = new Map<string, string>();
      for (const record of allOf(catalogue, kind).values()) {
        const made = "model" in record ? [record.maker, record.model] : [record.name];
        const key = made
          .join(" ")
          .toLowerCase()
          .replaceAll(/[\s-]+/g, " ");
        const other = seen.get(key);
        if (other === undefined) {
          seen.set(key, record.id);
          continue;
        }
        const field = "model" in record ? "model" : "name";
        yield {
          says: `${other} is a record of ${made.join(" ")} already.`,
          at: ref(kind, record.id, field),
          related: [{ says: "The other record.", at: ref(kind, other, field) }],
          hint: "Put both into one record, or name what tells them apart; revisions belong into one record.",
        };
      }
    }
  },
};
