// What a card is called on labels, drawings and sheets: as few words of its name as tell it from the other cards of the machine.
// Programs go on naming it by the id it has in the build.

import { type Catalogue, labelCopies } from "../../catalogue/index.js";
import type { Combination } from "../../planning/index.js";
import { entryOf } from "../../records/index.js";

export type Called = (as: string) => string;

export function calledIn(catalogue: Catalogue, combination: Combination): Called {
  const names = new Map(combination.cards.map((c) => [c.card, (catalogue.cards.get(c.card)?.name ?? c.card).split(" ")]));
  const short = (card: string): string => {
    const mine = entryOf(names, card);
    const others = [...names].filter(([id]) => id !== card).map(([, words]) => words);
    for (let n = 1; n < mine.length; n += 1) {
      const start = mine.slice(0, n).join(" ");
      if (others.every((words) => words.slice(0, n).join(" ") !== start)) return start;
    }
    return mine.join(" ");
  };
  const labels = labelCopies(combination.cards, short);
  return (as) => labels.get(as) ?? as;
}
