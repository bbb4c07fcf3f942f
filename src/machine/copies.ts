// Copies put in and taken out: what else of a build changes with them, so that no mode comes to mean another card than it did.
import { cardsOn, cardsOnOrOff, copyName, findCopies, numberedName } from "../catalogue/index.js";
import type { Build, Mode, Wishes } from "../records/index.js";

/** A name for one more copy of a card: none while it is the only one, else the card's id with the next free number. */
export function nameForCopy(build: Pick<Build, "cards" | "modes">, card: string): string | undefined {
  const taken = new Set([
    ...build.cards.map(copyName),
    ...(build.modes ?? []).flatMap((m) => [...(m.cards ?? []), ...(m.on_or_off ?? [])]),
  ]);
  if (!taken.has(card) && !build.cards.some((c) => c.card === card)) return undefined;
  for (let n = 2; ; n += 1) {
    const name = numberedName(card, n);
    if (!taken.has(name)) return name;
  }
}

/**
 * The build with one more card, free in every choice, and on wherever some card is on: a mode in which all is off stays so.
 * `as` is its name; left out, it gets one that no other bears.
 */
export function withCard(build: Build, card: string, as = nameForCopy(build, card)): Build {
  const added = { card, ...(as === undefined || as === card ? {} : { as }) };
  const name = copyName(added);
  const cards = [...build.cards, added];
  return withModesOn({ ...build, cards }, build, (on) => (on.length === 0 ? on : [...on, name]));
}

/** The build without a copy; a mode that named it has one card less on. */
export function withoutCard(build: Build, as: string): Build {
  const cards = build.cards.filter((c) => copyName(c) !== as);
  const { wishes: before, ...rest } = build;
  const wishes = before && wishesWithin({ ...rest, cards }, before);
  return withModesOn({ ...rest, cards, ...(wishes ? { wishes } : {}) }, build, (on) => on.filter((name) => name !== as));
}

/** What is left of wishes when some of the cards they name are gone; undefined when nothing is. */
function wishesWithin({ cards }: Build, { together, always, alone, ways_at_most: most }: Wishes): Wishes | undefined {
  const left = (names: readonly string[] | undefined) => names?.filter((name) => findCopies(cards, name).length > 0) ?? [];
  const groups = (together ?? []).flatMap((wish) => {
    const { cards: _, ...firmware } = wish;
    const names = left(wish.cards);
    return names.length > 0 ? [{ ...wish, cards: names }] : Object.keys(firmware).length > 0 ? [firmware] : [];
  });
  const lists = { always: left(always), alone: left(alone) };
  const now: Wishes = {
    ...(groups.length > 0 ? { together: groups } : {}),
    ...(lists.always.length > 0 ? { always: lists.always } : {}),
    ...(lists.alone.length > 0 ? { alone: lists.alone } : {}),
    ...(most === undefined ? {} : { ways_at_most: most }),
  };
  return Object.keys(now).length > 0 ? now : undefined;
}

/** The build's modes with what was on in them before, as `change` has it now; of which cards it does not matter stays, of those still there. */
function withModesOn(build: Build, before: Build, change: (on: readonly string[]) => readonly string[]): Build {
  if (!before.modes) return build;
  const there = build.cards.map(copyName);
  const modes = before.modes.map((mode): Mode => {
    const { cards, on_or_off, ...rest } = mode;
    const on = cardsOn(before.cards, mode).map(copyName);
    // Left out, the list means every card; a card of which it does not matter is taken out of it again by the other list.
    const listed = cards && cardsOn(before.cards, { cards }).map(copyName);
    const open = cardsOnOrOff(before.cards, mode).map(copyName);
    const kept =
      on_or_off &&
      named(
        build,
        on_or_off,
        open,
        open.filter((name) => there.includes(name)),
      );
    return {
      ...rest,
      ...(cards && listed ? { cards: named(build, cards, listed, on.length === 0 ? change(on) : change(listed)) } : {}),
      ...(kept && kept.length > 0 ? { on_or_off: kept } : {}),
    };
  });
  return { ...build, modes };
}

/** Names in the build for the wanted copies. A list that meant `was` and means what is wanted already is left as it was written. */
function named(build: Build, written: readonly string[], was: readonly string[], wanted: readonly string[]): string[] {
  const means = (names: readonly string[]) => {
    const now = new Set(names.flatMap((name) => findCopies(build.cards, name)).map(copyName));
    return now.size === wanted.length && wanted.every((name) => now.has(name));
  };
  const kept = written.filter((name) => findCopies(build.cards, name).length > 0 && (was.includes(name) ? wanted.includes(name) : true));
  const added = wanted.filter((name) => !was.includes(name));
  return [...([kept, [...kept, ...added]].find(means) ?? wanted)];
}
