// One mode run as two, with a switch: some cards off in the one, others off in the other, so that every card is on in one of them at least.
// The fewest cards off are tried first; a way that works is not widened. What was not tried is told as such.

import { modesOf, switchable } from "../../catalogue/index.js";
import type { Compiled } from "../../encoding/index.js";
import { choiceId, editsToModes, type ResolvedBuild, type ResolvedMode, withChoice, withSecondMode } from "../../machine/index.js";
import type { Build } from "../../records/index.js";
import type { Budget, ChoiceSets } from "../../solver/index.js";
import type { OwnersChoice, Repair, RepairsComplete } from "./answer.js";
import { attempt, provenHopeless } from "./attempt.js";

/** The cards of one mode shared out between two: those off in the first, those off in the second. No card is off in both. */
interface Split {
  readonly first: readonly string[];
  readonly second: readonly string[];
}

/** Most builds tried for one answer; each costs a whole search. */
const mostTried = 40;

/** What running it in more modes would bring, and how far that was looked into. */
export interface MoreModes {
  readonly repairs: readonly Repair[];
  readonly complete: Omit<RepairsComplete, "givingUp">;
}

/** `sets` are the smallest sets of choices to give up, `kept` the choices that must not be given up. */
export function secondModes(compiled: Compiled, sets: ChoiceSets, kept: ReadonlySet<string>, budget?: Budget): MoreModes {
  const { modes, cards } = compiled.question;
  const steps = { left: mostTried };
  const searches = modes.map((mode): Search => {
    const names = cards.filter((c) => mode.enabled.has(c.as) && !mode.free?.has(c.as) && switchable(c.card)).map((c) => c.as);
    const pin = compiled.choices.find((c) => c.told.kind === "firmware" && c.told.mode === mode.id)?.told;
    return { compiled, mode, names, pin, sets, steps, budget };
  });
  const found = searches.map((search) => twoModesOf(search, kept));
  const most = Math.max(0, ...searches.map((s) => s.names.length));
  // With no version chosen, a card alone cannot be shared out; with two, two modes can do whatever more modes can.
  const fewest = searches.some((s) => s.pin) ? 1 : 2;
  return {
    repairs: found.flatMap((f) => f.repairs),
    complete: {
      twoModes: most < fewest ? "no-help" : found.every((f) => f.complete) ? "all" : "some",
      moreModes: most <= fewest ? "no-help" : "none",
      ways: "no-help",
    },
  };
}

interface Search {
  readonly compiled: Compiled;
  readonly mode: ResolvedMode;
  /** Cards on in the mode that a switch can turn off. */
  readonly names: readonly string[];
  /** The version chosen for the mode. */
  readonly pin: OwnersChoice | undefined;
  readonly sets: ChoiceSets;
  readonly steps: { left: number };
  readonly budget?: Budget | undefined;
}

interface Splits {
  readonly repairs: readonly Repair[];
  readonly worked: readonly Split[];
  readonly complete: boolean;
}

/**
 * Where a version is chosen for the mode, it is kept in the first of the two, and the second may have every card on. Only then is it tried
 * what giving the version up as well would bring, unless giving it up alone would help, or it is what the question is about.
 */
function twoModesOf(search: Search, kept: ReadonlySet<string>): Splits {
  const { compiled, mode, names, pin, sets } = search;
  const leaving = leavingOutIsEasier(compiled.question) ? sets : undefined;
  const smallest = leaving ? cardsGivenUp(search) : names.map((as) => ({ cards: [as], version: false }));
  const anyVersion = [...smallest.map((s) => s.cards), ...(pin && !leaving ? [[]] : [])];
  const some = (cards: readonly string[]) => cards.length > 0;
  const free = pairsOf(anyVersion.filter(some), anyVersion.filter(some), true);
  if (!pin) return searchSplits(search, free, [], (split) => [split, []]);
  const chosen = smallest.filter((s) => !s.version).map((s) => s.cards);
  const keeping = searchSplits(search, pairsOf(chosen, anyVersion, false), [], (split) => [
    withChoice(split, choiceId({ kind: "firmware", mode: mode.id }), mode.firmware),
    [],
  ]);
  if (kept.has(pin.id) || sets.sets.some((set) => set.length === 1 && set[0] === pin.id)) return keeping;
  const giving = searchSplits(search, free, keeping.worked, (split) => [split, [pin]]);
  return { repairs: [...keeping.repairs, ...giving.repairs], worked: [], complete: keeping.complete && giving.complete };
}

type Make = (split: Build) => readonly [build: Build, gives: readonly OwnersChoice[]];

/** Tries the seeds and whatever is wider than those that fail, by size; nothing wider than what is known to work. */
function searchSplits(search: Search, seeds: readonly Split[], known: readonly Split[], make: Make): Splits {
  const { compiled, mode, names, pin, sets, steps, budget } = search;
  const { build } = compiled.question;
  const easier = leavingOutIsEasier(compiled.question);
  const repairs: Repair[] = [];
  const worked = [...known];
  const seen = new Set<string>();
  const bySize: Split[][] = [];
  const add = (split: Split) => {
    const key = JSON.stringify([[...split.first].sort(), [...split.second].sort()]);
    const size = split.first.length + split.second.length;
    if (!seen.has(key)) bySize[size] = [...(bySize[size] ?? []), split];
    seen.add(key);
  };
  seeds.forEach(add);
  let complete = easier ? sets.complete : true;
  for (let size = 0; size <= names.length; size++)
    for (const split of bySize[size] ?? []) {
      if (worked.some((w) => within(w, split) || (!(pin && known.length === 0) && within(w, turned(split))))) continue;
      // A mode with nothing on serves nobody.
      if ([split.first, split.second].some((off) => off.length === mode.enabled.size)) continue;
      if (steps.left <= 0) return { repairs, worked, complete: false };
      steps.left--;
      const [changed, gives] = make(withSecondMode(build, mode.id, split.first, split.second));
      const tried = attempt(compiled, changed, budget);
      if (tried === "stopped") complete = false;
      else if (tried !== "ruled-out") {
        const { verdict, count, exact } = tried;
        const says = describe(search, split, gives);
        repairs.push({ kind: "second-mode", gives, says, verdict, count, exact, edits: editsToModes(modesOf(changed)), build: changed });
        worked.push(split);
        continue;
      }
      const rest = names.filter((as) => !split.first.includes(as) && !split.second.includes(as));
      // Off in both, the others stand in nobody's way: where even that is hopeless, no wider split can help.
      const [bare] = make(withSecondMode(build, mode.id, [...split.first, ...rest], [...split.second, ...rest]));
      if (rest.length === 0 || (easier && provenHopeless(compiled, bare, budget))) continue;
      for (const as of rest) {
        add({ ...split, first: [...split.first, as] });
        add({ ...split, second: [...split.second, as] });
      }
    }
  return { repairs, worked, complete };
}

/**
 * True when a machine without a card can do whatever it can do with the card switched off. Not so where a card may be needed by another, or
 * where an empty slot cuts a priority chain.
 */
function leavingOutIsEasier({ board, cards }: ResolvedBuild): boolean {
  return board.chains === undefined && cards.every((c) => c.card.needs?.cards === undefined);
}

/** The smallest sets that give up nothing but such cards, and perhaps the version chosen for the mode. */
function cardsGivenUp({ sets, compiled, pin, names }: Search): { readonly cards: readonly string[]; readonly version: boolean }[] {
  const told = new Map(compiled.choices.map((c) => [c.id, c.told]));
  return sets.sets.flatMap((set) => {
    const others = set.filter((id) => id !== pin?.id).map((id) => told.get(id));
    const cards = others.flatMap((c) => (c?.kind === "card" && c.card !== undefined && names.includes(c.card) ? [c.card] : []));
    return cards.length === others.length ? [{ cards, version: others.length < set.length }] : [];
  });
}

/** Sets of the one kind with sets of the other that share no card with them; with `once`, not the same two again the other way round. */
function pairsOf(firsts: readonly (readonly string[])[], seconds: readonly (readonly string[])[], once: boolean): Split[] {
  return firsts.flatMap((first, i) =>
    seconds.slice(once ? i + 1 : 0).flatMap((second) => (first.some((as) => second.includes(as)) ? [] : [{ first, second }])),
  );
}

function turned({ first, second }: Split): Split {
  return { first: second, second: first };
}

function within(a: Split, b: Split): boolean {
  return a.first.every((as) => b.first.includes(as)) && a.second.every((as) => b.second.includes(as));
}

function describe({ compiled, mode, pin }: Search, { first, second }: Split, gives: readonly OwnersChoice[]): string {
  const { cards, family } = compiled.question;
  const off = (names: readonly string[]) =>
    names.length === 0 ? "every card on" : `${names.map((as) => cards.find((c) => c.as === as)?.card.name ?? as).join(" and ")} off`;
  if (!pin) return `Run it in two modes with a switch: one with ${off(first)}, one with ${off(second)}.`;
  if (gives.length > 0)
    return `Run it in two modes with a switch, neither under ${family.name} ${mode.firmware}: one with ${off(first)}, one with ${off(second)}.`;
  return `Run it in two modes with a switch: one under ${family.name} ${mode.firmware} with ${off(first)}, one under other firmware with ${off(second)}.`;
}
