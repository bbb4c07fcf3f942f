// A bus without boards or cards, and a firmware without boards, are reached from no page but the lists.
import { linkedId, usesOf } from "../lookups.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const reached: Rule = {
  name: "reached",
  says: "Every bus and firmware family is used by some board or card.",
  scope: ["bus", "firmware"],
  *check({ catalogue }): Iterable<Draft> {
    for (const kind of ["bus", "firmware"] as const)
      for (const id of (kind === "bus" ? catalogue.buses : catalogue.firmware).keys()) {
        const users = usesOf(catalogue, kind, linkedId(catalogue, kind, id)!).filter((r) => r.id !== id);
        if (users.length > 0) continue;
        yield {
          level: "warning",
          says: `No board or card names this ${kind === "bus" ? "bus" : "firmware"}.`,
          at: ref(kind, id, "id"),
          hint: "Add the board it belongs to, or delete it.",
        };
      }
  },
};
