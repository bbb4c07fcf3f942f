// The part of slotwright burn that asks about a card's own ROM: --card-rom <card>=<file>.
import type { Catalogue } from "../../catalogue/index.js";
import { type CardRom, cardRom, type NamedBytes } from "../../images/index.js";
import { nearest } from "../../records/index.js";
import { UsageError } from "../usage-error.js";

export type TriedRom = CardRom & { readonly file: string };

/** None when the file could not be read; that was said already. */
export function tryCardRom(word: string, cards: Catalogue["cards"], open: (file: string) => readonly NamedBytes[]): TriedRom[] {
  const at = word.indexOf("=");
  const [id, file] = [word.slice(0, at), word.slice(at + 1)];
  if (at < 1 || file === "") throw new UsageError(`--card-rom ${word} cannot be read.`, "Write --card-rom <card>=<file>.");
  const all = [...cards.values()];
  const card = all.find((c) => c.id === id);
  if (!card) {
    const near = nearest(
      id,
      all.map((c) => c.id),
    );
    throw new UsageError(`The records hold no card ${id}.`, near ? `Did you mean ${near}?` : "Name it as its record does.");
  }
  return open(file).map(({ name, bytes }) => {
    const tried = cardRom(card, bytes);
    if (!tried)
      throw new UsageError(
        `The record of ${card.name} names no option ROM.`,
        "Where it has one, add is: option-rom to its memory window; without one there is no header to look for.",
      );
    return { ...tried, file: name };
  });
}
