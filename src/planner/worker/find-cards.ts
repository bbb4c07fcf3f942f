// Cards found as the site's search finds them: synonyms, typing errors, words of other languages, numbers in any spelling.
import type { Catalogue } from "../../catalogue/index.js";
import { entriesOfRecords, type RecordEntry } from "../../pages/index.js";
import { type Finder, finder } from "../../search/index.js";

const finders = new WeakMap<Catalogue, Finder<RecordEntry>>();

function finderOf(catalogue: Catalogue): Finder<RecordEntry> {
  const cards = entriesOfRecords(catalogue).filter((entry) => entry.of.kind === "card");
  // Every one of them is a card, so that word tells none from another.
  const made = finders.get(catalogue) ?? finder(cards.map((card) => ({ ...card, names: [...card.names, "card"] })));
  finders.set(catalogue, made);
  return made;
}

/** Ids of the cards that what was typed could mean, the likeliest first. */
export function findCards(catalogue: Catalogue, typed: string): readonly string[] {
  return finderOf(catalogue)
    .find(typed)
    .map(({ entry }) => entry.of.id);
}
