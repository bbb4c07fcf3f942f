// A chain runs through slots the board has, once through each, and is one the bus has.
import type { Board, Bus } from "../../records/index.js";
import { chainsNamed } from "../chains.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { noSuch } from "../say.js";

export const chainSlots: Rule = {
  name: "chain-slots",
  says: "A chain runs once through slots the board has, and boards and cards name the chains of their bus.",
  why: "Which card is served first, and where a gap breaks the chain, is judged along this list.",
  mend: "Name each chain by its id on the bus and each of its slots once, served first to last, and only slots the board has.",
  scope: ["board", "card"],
  *check({ catalogue }): Iterable<Draft> {
    for (const board of catalogue.boards.values()) yield* ofBoard(board, catalogue.buses.get(board.bus));
    for (const card of catalogue.cards.values()) {
      const bus = catalogue.buses.get(card.bus);
      if (!bus) continue;
      const ids = (bus.chains ?? []).map((c) => c.id);
      for (const id of chainsNamed(card))
        if (!ids.includes(id))
          yield noSuch(`chain of ${bus.name}`, id, ids, ref("card", card.id, "chain", id), ref("bus", bus.id, "chains"));
      if (card.chain !== "uses" || bus.chains) continue;
      yield {
        says: `The card uses a chain, but ${bus.name} has none.`,
        at: ref("card", card.id, "chain"),
        related: [{ says: "The bus is described here.", at: ref("bus", bus.id, "id") }],
        hint: "Describe the chain in the bus record, or leave it out here.",
      };
    }
  },
};

function* ofBoard(board: Board, bus: Bus | undefined): Iterable<Draft> {
  const slots = board.slots.map((s) => s.id);
  const known = bus?.chains?.map((c) => c.id) ?? [];
  const chains = board.chains ?? [];
  for (const [c, { chain: id, slots: order }] of chains.entries()) {
    const named = ref("board", board.id, "chains", c, "chain");
    if (bus && !known.includes(id)) yield noSuch(`chain of ${bus.name}`, id, known, named, ref("bus", bus.id, "chains"));
    else if (chains.findIndex((other) => other.chain === id) < c)
      yield { says: `Chain ${id} is led twice.`, at: named, hint: "Put all its slots into one list." };
    for (const [i, slot] of order.entries()) {
      const at = ref("board", board.id, "chains", c, "slots", i);
      if (!slots.includes(slot)) yield noSuch("slot", slot, slots, at, ref("board", board.id, "slots"));
      else if (order.indexOf(slot) < i) yield { says: `The chain runs through slot ${slot} twice.`, at, hint: "Name each slot once." };
    }
  }
}
