// The ways of a machine with one switch: from what is wanted to the fewest ways that grant it, why fewer cannot, and every division of the
// cards among them. What is claimed was searched to its end; what hangs on a missing fact is told as such.

import { testedOn } from "../../encoding/index.js";
import type { ResolvedBuild } from "../../machine/index.js";
import { itemAt } from "../../records/index.js";
import { type Budget, decide, type Problem, type Solution } from "../../solver/index.js";
import type { Verdict } from "../answer/answer.js";
import { evidenceRank } from "../answer/evidence.js";
import { atMostLevel, conditionalFrom } from "../answer/verdict.js";
import { type Division, divisionOf } from "./division.js";
import { divide } from "./divisions.js";
import { asked, cardsOnIn, type OpenWays, openWays } from "./open-ways.js";
import { eachItsOwn, type FewerProof, type NotGranted, notGranted, proofOf } from "./proof.js";
import { type Granted, isGranted, mostWays, type Wish, wishesOf } from "./wishes.js";

/** What a switch can do for the wishes. */
export interface Switched {
  /**
   * - `found`: in `fewest` ways it works for certain.
   * - `perhaps`: in `fewest` ways it may work; missing facts decide.
   * - `none`: in no number of ways, whatever the missing facts turn out to be.
   * - `stopped`: the budget ended before this was known.
   */
  readonly outcome: "found" | "perhaps" | "none" | "stopped";
  readonly wishes: readonly Wish[];
  /** The fewest ways known to do. */
  readonly fewest?: number;
  /** Fewer ways were wished for than are needed. */
  readonly tooMany: boolean;
  /** Why fewer than `fewest` cannot do. */
  readonly fewer?: FewerProof;
  /** Of no number of ways: wishes that cannot be granted. */
  readonly against?: NotGranted;
  /** Best first. In each way as many cards are on as can be. */
  readonly divisions: readonly Division[];
  /** There are no others in so many ways. */
  readonly divisionsComplete: boolean;
}

export interface SwitchedOptions {
  readonly most: number;
  /** Divisions without their combinations. */
  readonly brief: boolean;
  readonly budget: Budget;
}

export function withSwitch(question: ResolvedBuild, { most, brief, budget }: SwitchedOptions): Switched {
  const wishes = wishesOf(question);
  const found = search(question, wishes, budget);
  const nothing = { wishes, tooMany: false, divisions: [], divisionsComplete: false } as const;
  if (found.kind === "none") {
    const against = notGranted(found.open, () => true, budget);
    return against === "stopped" ? { ...nothing, outcome: "stopped" } : { ...nothing, outcome: "none", against, divisionsComplete: true };
  }
  if (found.kind === "stopped") return { ...nothing, outcome: "stopped" };
  const {
    open,
    fewest,
    open: { compiled },
  } = found;
  const limit = mostWays(question);
  const problems =
    found.kind === "perhaps" ? [compiled.possible] : [atMostLevel(compiled, compiled.certain, conditionalFrom - 1), compiled.certain];
  const listed = divisionsOf(open, problems, found.tested, { most, brief, budget });
  const fewer: FewerProof =
    found.unproven === undefined
      ? proofOf(question, wishes, fewest, found.apart, budget)
      : { kind: "not-proven", ways: found.unproven.ways, because: found.unproven.because };
  return {
    outcome: found.kind,
    wishes,
    fewest,
    tooMany: limit !== undefined && fewest > limit,
    fewer,
    divisions: listed.divisions,
    divisionsComplete: listed.complete,
  };
}

interface Unproven {
  readonly ways: number;
  readonly because: "unknown-facts" | "budget";
}

type Found =
  | {
      readonly kind: "found" | "perhaps";
      readonly fewest: number;
      readonly open: OpenWays;
      /** Solutions of `possible` known to work by a bench test alone. */
      readonly tested: readonly Solution[];
      /** The most of fewer ways of which it is not known that they cannot do. */
      readonly unproven?: Unproven;
      /** The most wishes that need a way each. */
      readonly apart: readonly Granted[];
    }
  | { readonly kind: "none"; readonly open: OpenWays }
  | { readonly kind: "stopped" };

/**
 * Tries as many ways as there are wishes that need one each, then one more, and so on. As many as there are wishes to grant are enough if any number is: each way must grant one that no other does,
 * and a machine without a superfluous way has no less to choose from.
 */
function search(question: ResolvedBuild, wishes: readonly Wish[], budget: Budget): Found {
  const granted = wishes.filter(isGranted);
  const enough = Math.max(1, granted.length);
  // A wish that no way could grant by itself is granted by no number of them.
  for (const wish of granted) {
    const single = openWays(question, [...wishes.filter((w) => !isGranted(w)), wish], 1);
    if (decide(asked(single, single.compiled.possible), budget).kind === "none") return { kind: "none", open: single };
  }
  let perhaps: { readonly fewest: number; readonly open: OpenWays; readonly unproven?: Unproven } | undefined;
  let unproven: Unproven | undefined;
  const apart = granted.length > 1 ? eachItsOwn(openWays(question, wishes, 1), wishes, budget) : [];
  for (let count = Math.max(1, apart.length); ; count += 1) {
    const open = openWays(question, wishes, count);
    const possible = decide(asked(open, open.compiled.possible), budget).kind;
    const certain =
      possible === "none"
        ? "none"
        : open.compiled.unsettled.length === 0
          ? possible
          : decide(asked(open, open.compiled.certain), budget).kind;
    const tested = certain === "none" && possible === "found" ? provenOnly(open, budget) : [];
    if (certain === "found" || tested.length > 0)
      return { kind: "found", fewest: count, open, tested, apart, ...(unproven ? { unproven } : {}) };
    if (possible === "found") perhaps ??= { fewest: count, open, ...(unproven ? { unproven } : {}) };
    if (possible === "stopped" || certain === "stopped") unproven = { ways: count, because: "budget" };
    else if (possible === "found") unproven = { ways: count, because: "unknown-facts" };
    if (count < enough) continue;
    if (perhaps) return { kind: "perhaps", tested: [], apart, ...perhaps };
    return unproven ? { kind: "stopped" } : { kind: "none", open };
  }
}

/** Ways that only a bench test vouches for: the possible divisions that a tested machine of these cards had, if its test settles them. */
function provenOnly(open: OpenWays, budget: Budget): readonly Solution[] {
  const { question, frame } = open.compiled;
  const ids = (cards: readonly { readonly card: string }[]) =>
    cards
      .map((c) => c.card)
      .sort()
      .join(" ");
  const here = ids(question.cards.map((c) => ({ card: c.card.id })));
  const tests = testedOn(
    question.catalogue,
    question.board.id,
    question.cards.map((c) => c.card.id),
  ).filter((b) => b.result?.outcome === "worked" && (b.modes ?? []).length === frame.firmware.length && ids(b.cards) === here);
  if (tests.length === 0) return [];
  const { solutions } = divide(open, asked(open, open.compiled.possible), mostTested, budget);
  return solutions.filter((solution) => {
    const verdict = divisionOf(open, solution, true, budget)?.verdict;
    return verdict === "workable" || verdict === "conditional";
  });
}

/** Most divisions looked through for one that a bench test settles. */
const mostTested = 24;

function divisionsOf(
  open: OpenWays,
  problems: readonly Problem[],
  tested: readonly Solution[],
  { most, brief, budget }: SwitchedOptions,
): { readonly divisions: readonly Division[]; readonly complete: boolean } {
  const solutions: Solution[] = [...tested];
  let complete = tested.length < mostTested;
  const seen = new Set(solutions.map((s) => keyOf(open, s)));
  for (const problem of problems) {
    const found = divide(open, asked(open, problem), most, budget);
    complete = complete && found.complete;
    for (const solution of found.solutions) {
      if (seen.has(keyOf(open, solution))) continue;
      seen.add(keyOf(open, solution));
      solutions.push(solution);
    }
  }
  const divisions = solutions.flatMap((solution) => divisionOf(open, solution, brief, budget) ?? []);
  return {
    divisions: divisions.sort(byWorth).slice(0, most),
    complete: complete && divisions.length <= most && divisions.length === solutions.length,
  };
}

function keyOf({ compiled: { frame } }: OpenWays, solution: Solution): string {
  return JSON.stringify(
    cardsOnIn(frame, solution)
      .map((on) => JSON.stringify(on))
      .sort(),
  );
}

const verdictRank: Readonly<Record<Verdict, number>> = { workable: 0, conditional: 1, unknown: 2, "ruled-out": 3 };

/** Verdict, then what a switch must change (firmware, cards), evidence, changes from the machine as it stands. */
function byWorth(a: Division, b: Division): number {
  const rank = ({ verdict, combination, switched, ways }: Division) => [
    verdictRank[verdict],
    new Set(ways.map((w) => w.firmware)).size,
    switched.length,
    combination ? evidenceRank(combination.evidence) : 0,
    combination?.changes.length ?? 0,
    -ways.reduce((sum, w) => sum + w.on.length, 0),
  ];
  const [one, other] = [rank(a), rank(b)];
  for (const [at, value] of one.entries()) if (value !== other[at]) return value - itemAt(other, at);
  return 0;
}
