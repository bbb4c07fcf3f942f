// A slot cannot have lines its edge has no contact for.

import { itemAt } from "../../records/index.js";
import { lineId } from "../lines.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const slotLines: Rule = {
  name: "slot-lines",
  says: "The lines and channels that reach a slot are on its edge.",
  why: "A line without a contact reaches no card, and a card that needs it would be planned into that slot.",
  mend: "Correct the lines of the slot, or the edge.",
  scope: ["board"],
  *check({ catalogue }): Iterable<Draft> {
    for (const board of catalogue.boards.values()) {
      const bus = catalogue.buses.get(board.bus);
      for (const [i, slot] of board.slots.entries()) {
        const at = bus?.edges.findIndex((e) => e.id === slot.edge) ?? -1;
        if (!bus || at < 0) continue;
        const edge = itemAt(bus.edges, at);
        for (const field of ["interrupts", "dma"] as const) {
          // An edge that lists none is an edge nobody has described yet.
          if (edge[field] === undefined) continue;
          const on = new Set(edge[field].map((n) => lineId(bus, n) ?? n));
          for (const [j, name] of (slot[field] ?? []).entries()) {
            const id = field === "interrupts" ? lineId(bus, name) : bus.dma?.find((d) => d.id === name)?.id;
            if (id === undefined || on.has(id)) continue;
            yield {
              says: `${name} is not on the ${edge.id} edge of slot ${slot.id}.`,
              at: ref("board", board.id, "slots", i, field, j),
              expected: [...on].join(", ") || "none",
              related: [{ says: `The ${edge.id} edge is described here.`, at: ref("bus", bus.id, "edges", at, field) }],
              hint: "Take it out of the slot's list, or add it to the edge of the bus.",
            };
          }
        }
      }
    }
  },
};
