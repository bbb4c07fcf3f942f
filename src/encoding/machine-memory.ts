// How much main memory the machine has in a mode: what the board carries, and what cards add.
import { claimSites, mayBeMain } from "../catalogue/index.js";
import { knowsMemory } from "../machine/index.js";
import { bytes, itemAt, listed } from "../records/index.js";
import type { Literal } from "../solver/index.js";
import { cardTakings, type ResourceClaim } from "./claims.js";
import { always, eachCard, type Frame, holdsIn, withMemory } from "./frame.js";

/** Bytes that cards add where the literals hold: for sure, and at most. */
interface Added {
  readonly literals: readonly Literal[];
  readonly sure: number;
  readonly most: number;
}

/** Whether a statement about the amount holds for every amount from one to another, for none, or for some of them. */
export type Holds = (from: number, to: number) => "yes" | "no" | "perhaps";

export const lessThan =
  (least: number): Holds =>
  (from, to) =>
    to < least ? "yes" : from >= least ? "no" : "perhaps";
export const between =
  (least: number, most: number): Holds =>
  (from, to) =>
    from >= least && to <= most ? "yes" : to < least || from > most ? "no" : "perhaps";
export const moreThan =
  (most: number): Holds =>
  (from, to) =>
    from > most ? "yes" : to <= most ? "no" : "perhaps";

/** The states of the machine in which the statement holds for sure, and those in which it may, without the memory of one card. */
export function memoryHolds(
  frame: Frame,
  mode: number,
  holds: Holds,
  without?: number,
): { readonly sure: readonly Literal[][]; readonly perhaps: readonly Literal[][] } {
  const states = addedBy(frame, mode, without);
  const where = (answer: "yes" | "perhaps") =>
    states.flatMap(({ literals, sure, most }) => {
      const fitted = withMemory(frame, (m) => holds(m + sure, m + most) === answer);
      return fitted.values.length === 0 ? [] : [[...literals, fitted]];
    });
  return { sure: where("yes"), perhaps: where("perhaps") };
}

/** What cards add in a mode, state by state: exactly one of the states is that of the machine. */
function addedBy(frame: Frame, mode: number, without: number | undefined): readonly Added[] {
  let all: readonly Added[] = [{ literals: [], sure: 0, most: 0 }];
  const parts = memoryOfCards(frame);
  for (const { at } of eachCard(frame)) {
    const own = at === without ? [] : parts.filter((part) => part.taken.card === at);
    if (own.length === 0) continue;
    const states = statesOf(frame, mode, at, own);
    all = all.flatMap((a) =>
      states.map((b) => ({ literals: [...a.literals, ...b.literals], sure: a.sure + b.sure, most: a.most + b.most })),
    );
  }
  const { board, build } = frame.question;
  if (board.memory !== "none" || build.memory === undefined) return all;
  // Of a board without memory of its own the build names what there is in all; where its cards have more, there may be more.
  const named = bytes(build.memory);
  return all.map(({ literals, most }) => ({ literals, sure: 0, most: Math.max(0, most - named) }));
}

/** How much there is is written down: on the board, in the build, or on cards where the board says that it has none. */
export function knowsMachineMemory({ question }: Frame): boolean {
  const onCards = () =>
    question.cards.some(({ card }) => claimSites(card).some(({ claims }) => listed(claims.memory).some((w) => w.main === true)));
  return knowsMemory(question) || (question.board.memory === "none" && onCards());
}

interface Part {
  readonly taken: ResourceClaim;
  readonly sure: number;
  readonly most: number;
}

const kept = new WeakMap<Frame, readonly Part[]>();

function memoryOfCards(frame: Frame): readonly Part[] {
  const before = kept.get(frame);
  if (before) return before;
  const made = cardTakings(frame).flatMap((taken): Part[] => {
    const of = (test: (is: ReturnType<typeof mayBeMain>) => boolean) =>
      listed(taken.claims.memory).reduce((sum, w) => sum + (test(mayBeMain(w)) ? bytes(w.size) : 0), 0);
    const part = { taken, sure: of((is) => is === "yes"), most: of((is) => is !== "no") };
    return part.most > 0 ? [part] : [];
  });
  kept.set(frame, made);
  return made;
}

/** The values of each variable that the parts speak of, put into classes that no part tells apart; a state for every choice of classes. */
function statesOf(frame: Frame, mode: number, at: number, parts: readonly Part[]): readonly Added[] {
  const held = holdsIn(frame, mode, at, "memory");
  const conditions = parts
    .map(({ taken, sure, most }) => ({ sure, most, when: [...taken.when, held] }))
    .filter(({ when }) => !when.includes(undefined));
  const literals = conditions.flatMap(({ when }) => when.filter((l): l is Literal => l !== undefined && !always(frame, l)));
  const variables = [...new Set(literals.map((l) => l.variable))];
  let cells: readonly (readonly Literal[])[] = [[]];
  for (const variable of variables) {
    const about = literals.filter((l) => l.variable === variable);
    const classes = new Map<string, number[]>();
    for (let value = 0; value < itemAt(frame.variables, variable).size; value++) {
      const key = about.map((l) => (l.values.includes(value) ? "1" : "0")).join("");
      classes.set(key, [...(classes.get(key) ?? []), value]);
    }
    cells = cells.flatMap((cell) => [...classes.values()].map((values) => [...cell, { variable, values }]));
  }
  return cells.map((cell) => {
    const inside = (l: Literal | undefined) =>
      l !== undefined && (always(frame, l) || cell.some((c) => c.variable === l.variable && c.values.every((v) => l.values.includes(v))));
    const there = conditions.filter(({ when }) => when.every(inside));
    return { literals: cell, sure: there.reduce((n, c) => n + c.sure, 0), most: there.reduce((n, c) => n + c.most, 0) };
  });
}
