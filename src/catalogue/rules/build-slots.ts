// Two cards do not stand in one slot, and a card stands only in a slot its edge fits.
import { itemAt } from "../../records/index.js";
import { copyName } from "../copies.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const buildSlots: Rule = {
  name: "build-slots",
  says: "In a build, a slot holds one card, and one whose edge fits it.",
  why: "Two cards do not go into one slot, and a card does not go into a slot of another edge; the record describes no machine.",
  mend: "Correct the slot of one of the cards.",
  scope: ["build"],
  *check({ catalogue }): Iterable<Draft> {
    for (const build of catalogue.builds.values()) {
      const board = catalogue.boards.get(build.board);
      const lists = [
        { cards: build.cards, path: ["cards"] },
        { cards: build.stands?.cards ?? [], path: ["stands", "cards"] },
      ];
      for (const { cards, path } of lists) {
        for (const [i, c] of cards.entries()) {
          if (c.slot === undefined) continue;
          const at = ref("build", build.id, ...path, i, "slot");
          const first = cards.findIndex((o) => o.slot === c.slot);
          if (first < i) {
            yield {
              says: `${copyName(c)} and ${copyName(itemAt(cards, first))} both stand in slot ${c.slot}.`,
              at,
              related: [{ says: "The other one.", at: ref("build", build.id, ...path, first, "slot") }],
              hint: "Correct one of the slots, or leave one out when it is not known.",
            };
            continue;
          }
          const slot = board?.slots.find((s) => s.id === c.slot);
          const card = catalogue.cards.get(c.card);
          const edge = catalogue.buses.get(board?.bus ?? "")?.edges.find((e) => e.id === card?.edge);
          if (!board || !slot || !card || card.bus !== board.bus || !edge || edge.fits.includes(slot.edge)) continue;
          yield {
            says: `${card.name} has a ${card.edge} edge, which does not go into the ${slot.edge} slot ${slot.id}.`,
            at,
            related: [
              { says: "The card's edge.", at: ref("card", card.id, "edge") },
              { says: "The slot.", at: ref("board", board.id, "slots", board.slots.indexOf(slot), "edge") },
            ],
            hint: "Correct the slot; if the card really stood there, correct the edge of the card or the slot.",
          };
        }
      }
    }
  },
};
