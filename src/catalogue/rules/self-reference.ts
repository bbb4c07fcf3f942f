// No record needs, replaces or mates with itself.
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const selfReference: Rule = {
  name: "self-reference",
  says: "No card needs itself and no firmware takes its own place.",
  why: "A thing cannot be waited for, needed or replaced by itself; the id is a slip.",
  mend: "Write the id of the other record.",
  scope: ["card", "firmware"],
  *check({ catalogue }): Iterable<Draft> {
    const hint = "Name another one, or leave it out.";
    for (const card of catalogue.cards.values())
      for (const [i, need] of (card.needs?.cards ?? []).entries()) {
        const j = need.any_of.indexOf(card.id);
        if (j >= 0) yield { says: "The card is said to need itself.", at: ref("card", card.id, "needs", "cards", i, "any_of", j), hint };
      }
    for (const family of catalogue.firmware.values()) {
      const i = family.replaces?.indexOf(family.id) ?? -1;
      if (i >= 0) yield { says: "The firmware is said to take its own place.", at: ref("firmware", family.id, "replaces", i), hint };
    }
  },
};
