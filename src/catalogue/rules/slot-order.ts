// Slots stand in the order of their places, no two in one place.

import { meetRevisions } from "../claims.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const slotOrder: Rule = {
  name: "slot-order",
  says: "Slots are listed in the order of their positions, no two in one position.",
  why: "Neighbours, and cards that take two slots, are judged by these positions.",
  mend: "Number the slots as they stand in the row, each place once.",
  scope: ["board"],
  *check({ catalogue }): Iterable<Draft> {
    for (const board of catalogue.boards.values())
      for (const [i, slot] of board.slots.entries()) {
        const before = board.slots[i - 1];
        if (!before || !meetRevisions(slot.revisions, before.revisions) || slot.position > before.position) continue;
        yield {
          says:
            slot.position === before.position
              ? `${slot.id} and ${before.id} are in the same position.`
              : `${slot.id} (position ${slot.position}) stands after ${before.id} (position ${before.position}).`,
          at: ref("board", board.id, "slots", i, "position"),
          related: [{ says: "The slot before it.", at: ref("board", board.id, "slots", i - 1, "position") }],
          hint: "Number the slots along the board from 1; neighbours differ by 1.",
        };
      }
  },
};
