// A lead has as many conductors as it has signals to carry.
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const panelSignals: Rule = {
  name: "panel-signals",
  says: "A lead's signals are no more than its conductors.",
  why: "A signal without a conductor cannot be wired.",
  mend: "Correct the number of conductors, or the list of signals.",
  scope: ["card"],
  *check({ catalogue }): Iterable<Draft> {
    for (const card of catalogue.cards.values())
      for (const [i, p] of (card.panel ?? []).entries()) {
        if (!p.signals || p.signals.length <= p.conductors) continue;
        yield {
          says: `The lead has ${p.conductors === 1 ? "one conductor" : `${p.conductors} conductors`} for ${p.signals.length} signals.`,
          at: ref("card", card.id, "panel", i, "conductors"),
          related: [{ says: "The signals.", at: ref("card", card.id, "panel", i, "signals") }],
          hint: "Correct the number: a cable chosen by it would be one wire short.",
        };
      }
  },
};
