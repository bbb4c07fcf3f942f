// Two conflicts under the same conditions are one conflict told twice, or one that contradicts the other.
import type { Conflict } from "../../records/index.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const conflictDoubles: Rule = {
  name: "conflict-doubles",
  says: "Two conflicts of one class do not hold under the very same conditions.",
  why: "The same thing told twice counts twice, and the two can come to contradict each other.",
  mend: "Put both into one record, or say under which other condition the second holds.",
  scope: ["conflict"],
  *check({ catalogue }): Iterable<Draft> {
    const first = new Map<string, Conflict>();
    for (const c of catalogue.conflicts.values()) {
      const key = `${c.class} ${canonical(c.when)}`;
      const other = first.get(key);
      if (!other) {
        first.set(key, c);
        continue;
      }
      const related = [{ says: `${other.id} has the same conditions.`, at: ref("conflict", other.id, "when") }];
      const clash = (["status", "effect"] as const).find((f) => c[f] !== other[f]);
      if (clash) {
        yield {
          says: `Under the same conditions ${other.id} says ${other[clash]}, and this one says ${c[clash]}.`,
          at: ref("conflict", c.id, clash),
          related: [...related, { says: "What it says.", at: ref("conflict", other.id, clash) }],
          hint: "Find out which one is right, or write down the condition in which they differ.",
        };
      } else {
        yield {
          says: `${other.id} is the same conflict.`,
          at: ref("conflict", c.id, "when"),
          related,
          hint: "Put the symptoms and the evidence of both into one record.",
        };
      }
    }
  },
};

/** Conditions without regard to the order in which they are written. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).sort().join(",")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  return `{${Object.entries(value)
    .map(([k, v]) => `${k}:${canonical(typeof v === "string" ? [v] : v)}`)
    .sort()
    .join(",")}}`;
}
