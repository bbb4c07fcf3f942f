// Copies: the cards of one machine, told apart by name, and which of them a mode switches on. All code that reads a name in a build
// asks here. A name is first the name of a copy: what it was given with `as`, or its card's id when it was given none. Only when no copy
// is called so does a card's id mean every copy of that card.
//
//   cards: [{card: loop}, {card: loop, as: second}]              "loop" is the first of them, "second" the other
//   cards: [{card: loop, as: left}, {card: loop, as: right}]     "loop" is both
import type { Build, BuildCard, Mode } from "../records/index.js";

/** A card of a machine, as far as names go: in a build, a question or a combination. */
type Copy = Pick<BuildCard, "card" | "as">;

export function copyName(copy: Copy): string {
  return copy.as ?? copy.card;
}

/** The copies a name means; none when it means nothing here. */
export function findCopies<T extends Copy>(cards: readonly T[], name: string): readonly T[] {
  const called = cards.filter((c) => copyName(c) === name);
  return called.length > 0 ? called : cards.filter((c) => c.card === name);
}

/** The copies a mode switches on: all when it lists none, no card when its list is empty; never one of which it does not matter. */
export function cardsOn<T extends Copy>(cards: readonly T[], mode: Pick<Mode, "cards" | "on_or_off">): readonly T[] {
  const open = new Set(cardsOnOrOff(cards, mode));
  const on = mode.cards && new Set(mode.cards.flatMap((name) => findCopies(cards, name)));
  return cards.filter((c) => (on?.has(c) ?? true) && !open.has(c));
}

/** The copies of which it does not matter whether they are on in the mode. */
export function cardsOnOrOff<T extends Copy>(cards: readonly T[], mode: Pick<Mode, "on_or_off">): readonly T[] {
  const open = new Set((mode.on_or_off ?? []).flatMap((name) => findCopies(cards, name)));
  return cards.filter((c) => open.has(c));
}

/** The longest name a copy may bear. */
const longest = 40;

/** The name of one more copy that nobody named: the card's id with a number, cut where it would be too long. */
export function numberedName(card: string, n: number): string {
  const end = `-${n}`;
  return `${card.slice(0, longest - end.length)}${end}`;
}

/** The name says no more than which card it is: its id, or its id with a number. */
function isNumbered(name: string, card: string): boolean {
  const number = Number(name.slice(name.lastIndexOf("-") + 1));
  return name === card || (Number.isInteger(number) && number > 1 && name === numberedName(card, number));
}

/** The one way to run a machine whose build names no modes: every card on. */
export const defaultMode: Mode = { id: "always", name: "Everyday" };

export function modesOf(build: Pick<Build, "modes">): readonly Mode[] {
  return build.modes ?? [defaultMode];
}

/**
 * What each copy is called, by its name: the card's own name when the machine has one of it, else with what tells it apart,
 * "Lightship loop interface (left)". A copy that was given no name, or only a number, is told by its place: "(first)".
 */
export function labelCopies(cards: readonly Copy[], nameOf: (card: string) => string): ReadonlyMap<string, string> {
  const label = (copy: Copy): string => {
    const alike = cards.filter((c) => c.card === copy.card);
    if (alike.length === 1) return nameOf(copy.card);
    const place = places[alike.indexOf(copy)];
    const given = isNumbered(copyName(copy), copy.card) ? undefined : copyName(copy);
    const free = place !== undefined && !alike.some((c) => copyName(c) === place);
    return `${nameOf(copy.card)} (${given ?? (free ? place : copyName(copy))})`;
  };
  return new Map(cards.map((c) => [copyName(c), label(c)]));
}

const places = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"];

/**
 * The copies of one machine and of another that are the same card in both, by name: first those of one name, then what is left, in order.
 * Each copy of either is taken once.
 */
export function pairCopies<T extends Copy>(cards: readonly Copy[], others: readonly T[]): ReadonlyMap<string, T> {
  const left = [...others];
  const pairs = new Map<string, T>();
  const take = (copy: Copy, fits: (other: T) => boolean) => {
    const at = pairs.has(copyName(copy)) ? -1 : left.findIndex((o) => o.card === copy.card && fits(o));
    for (const other of at < 0 ? [] : left.splice(at, 1)) pairs.set(copyName(copy), other);
  };
  for (const copy of cards) take(copy, (o) => copyName(o) === copyName(copy));
  for (const copy of cards) take(copy, () => true);
  return pairs;
}
