// Dates are days of the calendar; a rule about order would judge 1987-13 in silence.

import { type Kind, kinds, must } from "../../records/index.js";
import { allOf } from "../catalogue.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const realDates: Rule = {
  name: "real-dates",
  says: "A date is a day (or month) the calendar has, and does not lie ahead.",
  why: "Order in time is judged by dates, and a day that does not exist has none.",
  mend: "Correct the date; leave the day or the month out when it is not known.",
  scope: ["board", "firmware", "card", "conflict", "build", "part", "bus", "club"],
  *check({ catalogue, today }): Iterable<Draft> {
    for (const kind of Object.keys(kinds) as Kind[])
      for (const record of allOf(catalogue, kind).values())
        for (const { path, date } of dates(record, [])) {
          const [y, m = 1, d = 1] = date.split("-").map(Number);
          const day = new Date(Date.UTC(must(y, "the year of a date"), m - 1, d));
          if (day.getUTCMonth() === m - 1 && day.getUTCDate() === d) {
            // An exception runs until a day ahead; the day of a test has a rule of its own.
            const ahead = today !== undefined && date > today.slice(0, date.length) && path.at(-1) === "date" && path[0] !== "result";
            if (ahead) yield { says: `${date} lies ahead.`, at: ref(kind, record.id, ...path), hint: "Correct the date." };
            continue;
          }
          yield {
            says: `There is no day ${date}.`,
            at: ref(kind, record.id, ...path),
            expected: "year, month, day: 1987-05-21",
            hint: "Correct it; leave out the day or the month when it is not known.",
          };
        }
  },
};

function* dates(value: unknown, path: readonly (string | number)[]): Iterable<{ path: readonly (string | number)[]; date: string }> {
  if (typeof value !== "object" || value === null) return;
  for (const [key, inner] of Object.entries(value)) {
    const here = [...path, Array.isArray(value) ? Number(key) : key];
    if ((key === "date" || key === "until") && typeof inner === "string") yield { path: here, date: inner };
    else yield* dates(inner, here);
  }
}
