// Whose records these are stands on every page, in every export and on every sheet; two answers to that are none.
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const oneClub: Rule = {
  name: "one-club",
  says: "A folder of records has one club record.",
  why: "Pages, sheets and exports name one club and its terms; a second record stands nowhere.",
  mend: "Keep the record of the club whose folder this is, and delete the other.",
  scope: ["club"],
  *check({ catalogue }): Iterable<Draft> {
    const { club } = catalogue;
    if (!club) return;
    for (const [key, file] of catalogue.files) {
      const [kind, id] = key.split("/");
      if (kind !== "club" || id === undefined || id === club.id) continue;
      yield {
        says: `This is a second club record; pages and exports go by that of ${club.name}, and this one stands nowhere.`,
        at: ref("club", id, "id"),
        related: [{ says: "The club record that is gone by.", at: ref("club", club.id, "id") }],
        hint: `Keep the one whose records these are: delete ${file}, or the other.`,
      };
    }
  },
};
