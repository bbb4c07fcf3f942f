// What lies in the owner's drawer: how many of one card. Those that stand in the machine count besides, since they are in use already.
import type { Build } from "../records/index.js";

/** How many of this card the owner says are at hand. An id by itself is one. */
export function countAtHand({ at_hand }: Pick<Build, "at_hand">, card: string): number {
  return (at_hand?.cards ?? []).reduce((sum, entry) => {
    if (typeof entry === "string") return entry === card ? sum + 1 : sum;
    return entry.card === card ? sum + entry.count : sum;
  }, 0);
}

/** The build with this many of a card at hand; with none, nothing is said of it. */
export function withCountAtHand(build: Build, card: string, count: number): Build {
  const { cards: before = [], ...hand } = build.at_hand ?? {};
  const others = before.filter((entry) => (typeof entry === "string" ? entry : entry.card) !== card);
  const cards = count < 1 ? others : [...others, count === 1 ? card : { card, count }];
  const { at_hand: _, ...rest } = build;
  const now = cards.length > 0 ? { ...hand, cards } : hand;
  return Object.keys(now).length > 0 ? { ...rest, at_hand: now } : rest;
}
