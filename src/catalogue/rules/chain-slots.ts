// The priority chain runs through slots the board has, once through each.
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { noSuch } from "../say.js";

export const chainSlots: Rule = {
  name: "chain-slots",
  says: "The priority chain runs once through slots the board has, on a bus that has a chain.",
  why: "Which card is served first, and where a gap breaks the chain, is judged along this list.",
  mend: "Name each slot of the chain once, most urgent first, and only slots the board has.",
  scope: ["board", "card"],
  *check({ catalogue }): Iterable<Draft> {
    for (const board of catalogue.boards.values()) {
      const chain = board.chain ?? [];
      const slots = board.slots.map((s) => s.id);
      for (const [i, id] of chain.entries()) {
        const at = ref("board", board.id, "chain", i);
        if (!slots.includes(id)) yield noSuch("slot", id, slots, at, ref("board", board.id, "slots"));
        else if (chain.indexOf(id) < i) yield { says: `The chain runs through slot ${id} twice.`, at, hint: "Name each slot once." };
      }
      const bus = catalogue.buses.get(board.bus);
      if (board.chain && bus && !bus.chain) {
        yield {
          says: `The board gives a priority chain, but ${bus.name} has none.`,
          at: ref("board", board.id, "chain"),
          related: [{ says: "The bus is described here.", at: ref("bus", bus.id, "id") }],
          hint: "Describe the chain in the bus record, or leave it out here.",
        };
      }
    }
    for (const card of catalogue.cards.values()) {
      const bus = catalogue.buses.get(card.bus);
      if (card.chain !== "uses" || !bus || bus.chain) continue;
      yield {
        says: `The card uses the priority chain, but ${bus.name} has none.`,
        at: ref("card", card.id, "chain"),
        related: [{ says: "The bus is described here.", at: ref("bus", bus.id, "id") }],
        hint: "Describe the chain in the bus record, or leave it out here.",
      };
    }
  },
};
