// Some board takes the card, and what the card asks for some machine can give.
import { bytes } from "../../records/index.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const cardHasPlace: Rule = {
  name: "card-has-place",
  says: "Some board has a slot for the card, and its needs do not exclude one another.",
  why: "A card that fits nowhere can be planned by nobody; one of its needs is mostly a slip.",
  mend: "Correct the edge or the need that excludes every board, or add the board it was made for.",
  scope: ["card"],
  *check({ catalogue }): Iterable<Draft> {
    if (catalogue.boards.size === 0) return;
    for (const card of catalogue.cards.values()) {
      const at = (...path: (string | number)[]) => ref("card", card.id, ...path);
      const bus = catalogue.buses.get(card.bus);
      const edge = bus?.edges.find((e) => e.id === card.edge);
      const { memory_at_least: least, memory_at_most: most, boards } = card.needs ?? {};
      if (least !== undefined && most !== undefined && bytes(least) > bytes(most)) {
        const related = [{ says: "The most it can stand.", at: at("needs", "memory_at_most") }];
        yield {
          says: "The card needs more memory than it can stand.",
          at: at("needs", "memory_at_least"),
          related,
          hint: "Correct the one or the other.",
        };
      }
      if (!bus || !edge) continue;
      for (const [i, m] of (boards ?? []).entries()) {
        const board = catalogue.boards.get(m.board);
        if (!board || board.bus === card.bus) continue;
        const related = [{ says: `${board.name} has the bus ${board.bus}.`, at: ref("board", board.id, "bus") }];
        yield {
          says: `The card is made for ${card.bus} and does not go into ${board.name}.`,
          at: at("needs", "boards", i, "board"),
          related,
          hint: "Correct the board, or the bus of the card.",
        };
      }
      for (const [i, span] of (card.needs?.firmware ?? []).entries()) {
        const family = catalogue.firmware.get(span.family);
        if (!family) continue;
        const theirs = family.boards.map((m) => catalogue.boards.get(m.board));
        if (theirs.some((b) => !b || b.bus === card.bus)) continue;
        const related = [{ says: "The boards it runs on.", at: ref("firmware", span.family, "boards") }];
        const says = `${family.name} runs on no board with the bus of this card.`;
        yield { says, at: at("needs", "firmware", i, "family"), related, hint: "Correct the family, or the bus of the card." };
      }
      const takes = [...catalogue.boards.values()].some((b) => b.bus === card.bus && b.slots.some((s) => edge.fits.includes(s.edge)));
      if (!takes)
        yield {
          level: "warning",
          says: "No board on record has a slot for this card.",
          at: at("edge"),
          hint: "Add the board, or correct the bus or the edge.",
        };
    }
  },
};
