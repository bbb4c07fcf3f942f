// Every id a record names is the id of a record.
import { kinds, nearest, quoteText, truncateList } from "../../records/index.js";
import { allOf } from "../catalogue.js";
import { namings } from "../names.js";
import type { Draft, Rule } from "../rule.js";

export const danglingReference: Rule = {
  name: "dangling-reference",
  says: "Every id a record names is the id of a record of that kind.",
  why: "Whatever hangs on that name is left out of every answer.",
  mend: "Correct the id, or add the record it should lead to.",
  scope: ["board", "firmware", "card", "conflict", "build"],
  *check({ catalogue, failed }): Iterable<Draft> {
    for (const { from, kind, id } of namings(catalogue)) {
      const of = allOf(catalogue, kind);
      if (of.has(id) || failed(kind, id)) continue;
      const near = nearest(id, of.keys());
      yield {
        says: `There is no ${kind} ${id}.`,
        at: from,
        expected: `the id of a ${kind}: ${truncateList([...of.keys()], 6, quoteText)}`,
        actual: id,
        hint: near ? `Did you mean ${quoteText(near)}?` : `Add ${kinds[kind].folder}/${id}.yaml, or correct the id.`,
      };
    }
  },
};
