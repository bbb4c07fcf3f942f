// An unknown fact written at length says how to find it out: that is what the long form is for.
import { allOf } from "../catalogue.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const unknownFind: Rule = {
  name: "unknown-find",
  says: "An unknown fact written as {is: unknown} says how to find it out; a known one needs no such note.",
  why: "The long form is there to say how a missing fact can be found out; somebody may have a meter at hand.",
  mend: "Add find, or write the plain word unknown.",
  scope: ["bus", "board", "firmware", "card", "part"],
  *check({ catalogue }): Iterable<Draft> {
    for (const kind of this.scope)
      for (const record of allOf(catalogue, kind).values())
        for (const { path, is, find } of facts(record, [])) {
          if (is === "unknown" && find === undefined)
            yield {
              says: "The fact is unknown, and nothing says how to find it out.",
              at: ref(kind, record.id, ...path, "is"),
              hint: "Add find: what to measure, which marking to read.",
            };
          if (is !== "unknown" && find !== undefined)
            yield {
              level: "warning",
              says: "The fact is known, yet says how to find it out.",
              at: ref(kind, record.id, ...path, "find"),
              hint: "Leave find out, or name it as the source.",
            };
        }
  },
};

function* facts(
  value: unknown,
  path: readonly (string | number)[],
): Iterable<{ path: readonly (string | number)[]; is: unknown; find: unknown }> {
  if (typeof value !== "object" || value === null) return;
  // Windows have a field `is` as well, which says what answers there; a fact has nothing but is, source and find.
  if ("is" in value && Object.keys(value).every((k) => ["is", "source", "find"].includes(k))) {
    yield { path, is: value.is, find: "find" in value ? value.find : undefined };
    return;
  }
  for (const [key, inner] of Object.entries(value)) yield* facts(inner, [...path, Array.isArray(value) ? Number(key) : key]);
}
