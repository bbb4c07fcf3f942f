// A way in a line of words: under which firmware, on which revision, where the cards go.
import type { Combination } from "../../planning/index.js";
import { sizeText } from "../../records/index.js";
import { type AppContext, cardName } from "./app-context.js";

export function headOf(c: Combination): string {
  const memory = c.memory ? `, ${sizeText(c.memory)}` : "";
  const firmware = [...new Set(c.modes.map((m) => m.firmware))];
  return `${firmware.join(" and ")} on revision ${c.revision}${memory}`;
}

/** So many cards are named; the ways tell of all. */
const named = 6;

/**
 * "R5.1 on revision D1, 640K: Gannet fixed-disk controller in any of 4 long slots." What is better proven than by the rules is so in its
 * own slot alone.
 */
export function howWords(app: AppContext, c: Combination): string {
  const cards = c.cards
    .slice(0, named)
    .map((p) => `${cardName(app, p.as)} in ${c.evidence === "inferred" ? (p.slots.length === 1 ? p.slot : p.freedom) : p.slot}`);
  const more = c.cards.length - cards.length;
  return `${headOf(c)}${cards.length > 0 ? `: ${cards.join(", ")}${more > 0 ? `, and ${more} more` : ""}` : ""}.`;
}
