// Wishes: what the owner wants of a machine that may be run in several ways, one wish an item. A wish is granted by some way (a card that is
// to be on, things that are to be had together) or kept by every way (a card that is always on, a card that is only on by itself).
import { cardsOn, copyName, findCopies, modesOf, switchable } from "../../catalogue/index.js";
import { choiceId, type ResolvedBuild } from "../../machine/index.js";
import type { Build, Wishes } from "../../records/index.js";

export type Wish =
  /** The card is on in some way. */
  | { readonly kind: "card"; readonly id: string; readonly card: string }
  /** Some way has all these cards on, and runs the version if one is named. */
  | { readonly kind: "together"; readonly id: string; readonly cards: readonly string[]; readonly firmware?: string }
  /** The card is on in every way. */
  | { readonly kind: "always"; readonly id: string; readonly card: string }
  /** Where the card is on, every other card that can be switched off is off, but for those that are always on. */
  | { readonly kind: "alone"; readonly id: string; readonly card: string };

/** Wishes that one way grants by itself, so that the way can be named after them. */
export type Granted = Extract<Wish, { kind: "card" | "together" }>;

export function isGranted(wish: Wish): wish is Granted {
  return wish.kind === "card" || wish.kind === "together";
}

/** What the build says is wanted: its wishes; where it has none, its modes taken as such. A version chosen for its only mode is one always. */
function writtenWishes({ wishes, modes = [], cards }: Build): Wishes {
  const [only] = modes;
  if (modes.length === 1 && only?.firmware !== undefined)
    return { ...wishes, together: [...(wishes?.together ?? []), { firmware: only.firmware }] };
  if (wishes || modes.length < 2) return wishes ?? {};
  return {
    together: modes.map((mode) => ({
      cards: cardsOn(cards, mode).map(copyName),
      ...(mode.firmware === undefined ? {} : { firmware: mode.firmware }),
    })),
  };
}

/**
 * Every wish, those that others grant already left out; in the order of the build, those of groups before those of single cards. Changed over
 * by hand, a card that nothing can switch off may be taken out, so that to have it is a wish like any other.
 */
export function wishesOf({ build, cards }: ResolvedBuild, byHand = false): readonly Wish[] {
  const { together = [], always = [], alone = [] } = writtenWishes(build);
  const named = (names: readonly string[]) => [...new Set(names.flatMap((name) => findCopies(build.cards, name).map(copyName)))];
  const fixed = new Set(named(always));
  // What nothing can switch off is on in every way as it is.
  const offAtTimes = new Set(cards.filter((c) => (byHand || switchable(c.card)) && !fixed.has(c.as)).map((c) => c.as));
  const groups = together
    .map((wish, at) => ({
      kind: "together" as const,
      id: `together:${at}`,
      cards: named(wish.cards ?? []),
      ...(wish.firmware === undefined ? {} : { firmware: wish.firmware }),
    }))
    .filter((wish) => wish.firmware !== undefined || wish.cards.length > 1);
  const widest = groups.filter((one, at) => !groups.some((other, i) => i !== at && grants(other, one, i < at)));
  // Modes that are written down say which cards are wanted at all.
  const wanted = new Set((build.wishes ? [{}] : modesOf(build)).flatMap((mode) => cardsOn(build.cards, mode).map(copyName)));
  const single = cards.filter((c) => wanted.has(c.as) && offAtTimes.has(c.as) && !widest.some((g) => g.cards.includes(c.as)));
  return [
    ...widest,
    ...single.map(({ as }): Wish => ({ kind: "card", id: choiceId({ kind: "card", card: as }), card: as })),
    ...named(always).map((card): Wish => ({ kind: "always", id: `always:${card}`, card })),
    ...named(alone).map((card): Wish => ({ kind: "alone", id: `alone:${card}`, card })),
  ];
}

/** A way that has the one has the other; of two that are equal, the earlier has the later. */
function grants(one: Extract<Wish, { kind: "together" }>, other: Extract<Wish, { kind: "together" }>, earlier: boolean): boolean {
  if (other.firmware !== undefined && other.firmware !== one.firmware) return false;
  if (!other.cards.every((as) => one.cards.includes(as))) return false;
  return earlier || one.cards.length > other.cards.length || one.firmware !== other.firmware;
}

export function mostWays({ build }: ResolvedBuild): number | undefined {
  return build.wishes?.ways_at_most;
}
