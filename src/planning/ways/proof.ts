// Why fewer ways cannot do. The plainest proof names wishes of which no two fit into one way, as many as there are ways: each needs a way of
// its own. Where there is none, a smallest set of wishes that fewer ways cannot grant, found by searching every division.

import { cardIn, type Frame, modeKept } from "../../encoding/index.js";
import type { ResolvedBuild } from "../../machine/index.js";
import { itemAt } from "../../records/index.js";
import { type Budget, type Choice, type Constraint, decide, oneReason } from "../../solver/index.js";
import type { Fact, OwnersChoice } from "../answer/answer.js";
import { factsAgainst } from "../answer/reasons.js";
import { asked, type OpenWays, openWays } from "./open-ways.js";
import { type Granted, isGranted, type Wish } from "./wishes.js";

/** Wishes that so many ways cannot grant together, with what else of the owner's choices has a part in it, and facts that make it so. */
export interface NotGranted {
  readonly ways: number;
  /** Ids of the wishes; without any one of them the rest could be granted. */
  readonly wishes: readonly string[];
  readonly choices: readonly OwnersChoice[];
  readonly facts: readonly Fact[];
}

export type FewerProof =
  /** There is no smaller number than one. */
  | { readonly kind: "one-way" }
  /** No two of these wishes fit into one way, so each needs its own. One entry of `pairs` for every two of them. */
  | { readonly kind: "apart"; readonly wishes: readonly string[]; readonly pairs: readonly NotGranted[] }
  /** Every division into one way fewer was searched, and none grants these. */
  | { readonly kind: "searched"; readonly against: NotGranted }
  /** Not proven: so many ways may do, or the search ended before it was known. */
  | { readonly kind: "not-proven"; readonly ways: number; readonly because: "unknown-facts" | "budget" };

/** Why `fewest` - 1 ways cannot do, given that this is so; `apart` are the most wishes that need a way each. */
export function proofOf(
  question: ResolvedBuild,
  wishes: readonly Wish[],
  fewest: number,
  apart: readonly Granted[],
  budget?: Budget,
): FewerProof {
  if (fewest === 1) return { kind: "one-way" };
  const own = apart.length < fewest ? undefined : apart.slice(0, fewest);
  if (own) {
    const single = openWays(question, wishes, 1);
    const pairs = own.flatMap((one, at) => own.slice(at + 1).map((other) => notGranted(single, (w) => w === one || w === other, budget)));
    if (pairs.every((pair) => pair !== "stopped"))
      return { kind: "apart", wishes: own.map((w) => w.id), pairs: pairs as readonly NotGranted[] };
  }
  const against = notGranted(openWays(question, wishes, fewest - 1), () => true, budget);
  return against === "stopped" ? { kind: "not-proven", ways: fewest - 1, because: "budget" } : { kind: "searched", against };
}

/** The most wishes of which no two fit into one way, whatever the missing facts turn out to be: so many ways it takes at least. */
export function eachItsOwn(single: OpenWays, wishes: readonly Wish[], budget?: Budget): readonly Granted[] {
  const granted = wishes.filter(isGranted);
  const apart = granted.map((one, at) =>
    granted.map((other, i) => {
      if (i <= at) return false;
      const pair = asked(single, single.compiled.possible, (w) => !isGranted(w) || w === one || w === other);
      return decide(pair, budget).kind === "none";
    }),
  );
  const fight = (a: number, b: number) => itemAt(itemAt(apart, a), b) || itemAt(itemAt(apart, b), a);
  const grow = (chosen: readonly number[], from: number): readonly number[] => {
    let most = chosen;
    for (let next = from; next < granted.length; next++) {
      if (!chosen.every((c) => fight(c, next))) continue;
      const whole = grow([...chosen, next], next + 1);
      if (whole.length > most.length) most = whole;
    }
    return most;
  };
  return grow([], 0).map((at) => itemAt(granted, at));
}

/** A smallest set of the wishes looked at, kept and granted, that these ways cannot grant, whatever the missing facts turn out to be. */
export function notGranted(open: OpenWays, looked: (wish: Wish) => boolean, budget?: Budget): NotGranted | "stopped" {
  const { compiled, variables } = open;
  const { frame } = compiled;
  // The ways are what is asked about, so none of them is given up.
  const kept = frame.firmware.map((_, way): Constraint => ({ kind: "unary", ...modeKept(frame, way) }));
  const facts = { variables, rules: [...compiled.facts.rules, ...kept, ...open.order] };
  const wished = open.wishes
    .filter(({ wish }) => !isGranted(wish) || looked(wish))
    .map(({ wish, rules }): Choice => ({ id: wish.id, rules: [...standing(frame, wish), ...rules] }));
  const pins = compiled.choices.filter((c) => c.told.kind !== "mode");
  // What comes first is left out where it can be: what the owner pinned, then other cards, and the wishes only where they have no part.
  const choices: Choice[] = [...pins.filter((c) => c.told.kind !== "card"), ...pins.filter((c) => c.told.kind === "card"), ...wished].map(
    (c, at) => ({ ...c, id: `${at}` }),
  );
  const set = oneReason(facts, choices, budget);
  if (set === undefined || set === "stopped") return "stopped";
  const chosen = new Set(set.map(Number));
  const inOrder = [...pins.filter((c) => c.told.kind !== "card"), ...pins.filter((c) => c.told.kind === "card")];
  const problem = { variables, rules: [...facts.rules, ...set.flatMap((id) => itemAt(choices, Number(id)).rules)] };
  return {
    ways: frame.firmware.length,
    wishes: wished.filter((_, at) => chosen.has(inOrder.length + at)).map((c) => c.id),
    choices: inOrder.filter((_, at) => chosen.has(at)).map((c) => c.told),
    facts: factsAgainst(compiled, problem, budget).facts,
  };
}

/** A card that is to be on stands in the machine. */
function standing(frame: Frame, wish: Wish): Constraint[] {
  const cards = wish.kind === "together" ? wish.cards : [wish.card];
  return frame.question.cards.flatMap((c, at): Constraint[] => (cards.includes(c.as) ? [{ kind: "unary", ...cardIn(frame, at) }] : []));
}
