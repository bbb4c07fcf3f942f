// A machine with so many ways to run, and nothing said of what is on in which: whether a card is on in a way is a hole like its slot. So the
// ways share slots, jumpers, revisions and wiring, and one search is exact over all of them at once.

import { type Compiled, eachCard, type Frame, holds, ofRevision, runsVersion } from "../../encoding/index.js";
import { type ResolvedBuild, running } from "../../machine/index.js";
import { itemAt } from "../../records/index.js";
import type { Constraint, Cost, Literal, Problem, Solution, Variable } from "../../solver/index.js";
import { openMachine } from "./open-machine.js";
import type { Wish } from "./wishes.js";

export interface OpenWays {
  readonly compiled: Compiled;
  /** Variables of the frame, and after them one for each wish that some way is to grant: which way does. */
  readonly variables: readonly Variable[];
  readonly wishes: readonly { readonly wish: Wish; readonly rules: readonly Constraint[]; readonly by?: number }[];
  /** Tells ways apart that could change places: they stand in the order of their firmware, then of what is on. */
  readonly order: readonly Constraint[];
  /** The number of cards that are off, over all ways. */
  readonly off: Cost;
}

/** The question with `count` modes, in each of which any card that can be switched off may be on or off. */
export function openWays(question: ResolvedBuild, wishes: readonly Wish[], count: number): OpenWays {
  const compiled = openMachine(question, count);
  const { frame } = compiled;
  const variables = [...frame.variables];
  const told = wishes.map((wish) => {
    if (wish.kind !== "together") return { wish, rules: keeping(frame, wish, wishes) };
    const by = variables.push({ name: `granted:${wish.id}`, size: count }) - 1;
    return { wish, rules: granting(frame, wish, by), by };
  });
  const on = frame.on.flatMap((cards) => cards.flatMap((v) => v ?? []));
  return {
    compiled,
    variables,
    wishes: told,
    order: inOrder(frame),
    off: { terms: on.map((variable) => ({ variable, weights: [1, 0] })) },
  };
}

/** One of the problems of the machine, with every wish, or only those named, as rules of it. */
export function asked(open: OpenWays, problem: Problem, only: (wish: Wish) => boolean = () => true): Problem {
  const wished = open.wishes.filter(({ wish }) => only(wish)).flatMap(({ rules }) => rules);
  return { variables: open.variables, rules: [...problem.rules, ...open.order, ...wished] };
}

const indexOf = (frame: Frame, as: string) => frame.question.cards.findIndex((c) => c.as === as);

/** The card is on in this way; undefined when it is in every way, since nothing switches it off. */
export function isOn(frame: Frame, way: number, as: string): Literal | undefined {
  const variable = frame.on[way]?.[indexOf(frame, as)];
  return variable === undefined ? undefined : { variable, values: [1] };
}

/** The way that `by` names has all that is wished. */
function granting(frame: Frame, wish: Extract<Wish, { kind: "together" }>, by: number): Constraint[] {
  return frame.question.modes.flatMap((_, way) => {
    const had = [
      ...wish.cards.flatMap((as) => isOn(frame, way, as) ?? []),
      ...(wish.firmware === undefined ? [] : [runsVersion(frame, way, (v) => v === wish.firmware)]),
    ];
    const another = { variable: by, values: frame.question.modes.flatMap((_m, w) => (w === way ? [] : [w])) };
    return had.map((literal): Constraint => ({ kind: "clause", literals: [another, literal] }));
  });
}

function keeping(frame: Frame, wish: Exclude<Wish, { kind: "together" }>, all: readonly Wish[]): Constraint[] {
  const ways = frame.question.modes.map((_, way) => way);
  const on = ways.flatMap((way) => isOn(frame, way, wish.card) ?? []);
  switch (wish.kind) {
    case "card":
      return on.length === 0 ? [] : [{ kind: "clause", literals: on }];
    case "always":
      return on.map((literal): Constraint => ({ kind: "unary", ...literal }));
    case "alone":
      return ways.flatMap((way) => apart(frame, way, wish.card, all));
    default:
      return wish satisfies never;
  }
}

/** Where the card is on, no other is that could be off, but for those that are to be on always. */
function apart(frame: Frame, way: number, as: string, all: readonly Wish[]): Constraint[] {
  const here = isOn(frame, way, as);
  return eachCard(frame).flatMap(({ at, asked }): Constraint[] => {
    const other = isOn(frame, way, asked.as);
    if (asked.as === as || !other || all.some((w) => w.kind === "always" && w.card === asked.as)) return [];
    // A revision that nothing switches off is in nobody's power.
    const anyway = running(asked, { ...itemAt(frame.question.modes, way), enabled: new Set() });
    const could = ofRevision(frame, at, (r) => !anyway.includes(r));
    return [{ kind: "forbid", literals: [...(here ? [here] : []), other, could] }];
  });
}

/** Most cards that the order of ways looks at, so that its sums stay exact. */
const mostOrdered = 36;

/** Each way comes no later in the order of firmware, then of what is on, than the next: one sum of both. */
function inOrder(frame: Frame): Constraint[] {
  const { versions, modes } = frame.question;
  const places = (way: number) => (frame.on[way] ?? []).flatMap((v) => v ?? []).slice(0, mostOrdered);
  const rank = (way: number, sign: number) => {
    const on = places(way);
    return [
      { variable: itemAt(frame.firmware, way), weights: [...versions, undefined].map((_, v) => sign * v * 2 ** on.length) },
      ...on.map((variable, at) => ({ variable, weights: [0, sign * 2 ** at] })),
    ];
  };
  return modes.slice(1).map((_, way): Constraint => ({ kind: "linear", terms: [...rank(way, 1), ...rank(way + 1, -1)], max: 0 }));
}

/** What is on in each way of a solution, by the names of the copies, in the order of the build. */
export function cardsOnIn(frame: Frame, solution: Solution): readonly (readonly string[])[] {
  return frame.question.modes.map((_, way) =>
    eachCard(frame)
      .filter(({ asked }) => {
        const on = isOn(frame, way, asked.as);
        return on === undefined || holds(on, solution);
      })
      .map(({ asked }) => asked.as),
  );
}
