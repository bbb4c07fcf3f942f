// Lists that are in order of age have dates that do not run backwards.

import type { Kind } from "../../records/index.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const orderOfDates: Rule = {
  name: "order-of-dates",
  says: "Revisions and firmware versions stand oldest first, so their dates do not run backwards.",
  why: "Older and younger are read off the order of the list, in every range of versions.",
  mend: "Put the list in order of age, or correct the date.",
  scope: ["board", "firmware", "card"],
  *check({ catalogue }): Iterable<Draft> {
    for (const b of catalogue.boards.values()) yield* backwards("board", b.id, "revisions", b.revisions);
    for (const c of catalogue.cards.values()) yield* backwards("card", c.id, "revisions", c.revisions ?? []);
    for (const f of catalogue.firmware.values()) yield* backwards("firmware", f.id, "versions", f.versions);
  },
};

function* backwards(
  kind: Kind,
  id: string,
  list: string,
  things: readonly { readonly id: string; readonly date?: string }[],
): Iterable<Draft> {
  let last: { readonly i: number; readonly id: string; readonly date: string } | undefined;
  for (const [i, thing] of things.entries()) {
    if (thing.date === undefined) continue;
    if (last && before(thing.date, last.date)) {
      yield {
        says: `${thing.id} (${thing.date}) stands after ${last.id} (${last.date}), which is younger.`,
        at: ref(kind, id, list, i, "date"),
        related: [{ says: `${last.id} is dated here.`, at: ref(kind, id, list, last.i, "date") }],
        hint: "The order of the list counts: move the entry, or correct the date.",
      };
    }
    last = { i, id: thing.id, date: thing.date };
  }
}

/** True when one date is surely before the other; dates are as exact as is known. */
function before(a: string, b: string): boolean {
  const n = Math.min(a.length, b.length);
  return a.slice(0, n) < b.slice(0, n);
}
