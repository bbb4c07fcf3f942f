// A bus without boards or cards is reached from no page; it is a slip of an id, or a leftover.
import { linkedId, usesOf } from "../lookups.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const reached: Rule = {
  name: "reached",
  says: "Every bus is used by some board or card.",
  why: "A bus nobody uses is a slip of an id somewhere else, or a leftover.",
  mend: "Correct the id in the board or card that should name it, or delete the record.",
  scope: ["bus"],
  *check({ catalogue }): Iterable<Draft> {
    for (const id of catalogue.buses.keys()) {
      const bus = linkedId(catalogue, "bus", id);
      if (bus === undefined || usesOf(catalogue, "bus", bus).length > 0) continue;
      yield {
        level: "warning",
        says: "No board or card names this bus.",
        at: ref("bus", id, "id"),
        hint: "Add the board it belongs to, or delete it.",
      };
    }
  },
};
