// A division as it is told: what is on in each way and under which firmware, the build that has its ways as modes, and its best combination.
// The build is put to the rules again by itself, so that nothing rests on the search that found it.
import { switchable } from "../../catalogue/index.js";
import { type Compiled, compile } from "../../encoding/index.js";
import { resolveBuild } from "../../machine/index.js";
import { type Build, itemAt, type Mode } from "../../records/index.js";
import { type Budget, possible, type Solution } from "../../solver/index.js";
import type { Combination, Verdict } from "../answer/answer.js";
import { representatives } from "../answer/representatives.js";
import { verdictOf } from "../answer/verdict.js";
import { cardsOnIn, type OpenWays } from "./open-ways.js";
import { isGranted } from "./wishes.js";

export interface Way {
  /** Id of the mode of the build. */
  readonly id: string;
  /** Copies that are on, in the order of the build. */
  readonly on: readonly string[];
  /** Those of them that are not on in every way: what the way is for. */
  readonly own: readonly string[];
  /** Version it runs in the best combination; in some combination where that is left out. */
  readonly firmware: string;
  /** Versions it may run, each in some combination; "at least these" when `versionsExact` is false. */
  readonly versions: readonly string[];
  readonly versionsExact: boolean;
  /** Ids of the wishes it grants. */
  readonly grants: readonly string[];
}

export interface Division {
  readonly ways: readonly Way[];
  /** Copies that are on in some ways only, which a switch, or a hand, must turn on and off. */
  readonly switched: readonly string[];
  readonly verdict: Exclude<Verdict, "ruled-out">;
  /** The best of them; left out where only lines are told. */
  readonly combination?: Combination;
  /** The build with these ways as its modes, to be asked, planned and wired like any other. */
  readonly build: Build;
}

/** Undefined when the build, asked by itself, was not found to work: then the division is not told. */
export function divisionOf(open: OpenWays, solution: Solution, brief: boolean, budget?: Budget): Division | undefined {
  const { question, frame } = open.compiled;
  const on = cardsOnIn(frame, solution);
  const grants = on.map((_, way) => granted(open, solution, on, way));
  const modes = on.map((cards, way): Mode => {
    const pinned = open.wishes.flatMap(({ wish }) =>
      wish.kind === "together" && wish.firmware !== undefined && itemAt(grants, way).includes(wish.id) ? [wish.firmware] : [],
    )[0];
    const id = itemAt(frame.question.modes, way).id;
    return { id, name: `Way ${way + 1}`, ...(pinned === undefined ? {} : { firmware: pinned }), cards: [...cards] };
  });
  const build: Build = { ...question.build, modes };
  const request = resolveBuild(question.catalogue, build);
  if (request.kind !== "question") return undefined;
  const compiled = compile(request.question);
  const verdict = verdictOf(compiled, budget);
  if (verdict === "ruled-out" || verdict === "stopped") return undefined;
  const [combination] = brief ? [] : representatives(compiled, 1, budget);
  if (!combination && !brief) return undefined;
  const versions = versionsOf(compiled, verdict, budget);
  const everywhere = question.cards.filter((c) => on.every((cards) => cards.includes(c.as))).map((c) => c.as);
  const switched = question.cards.filter((c) => switchable(c.card) && !everywhere.includes(c.as)).map((c) => c.as);
  return {
    ways: on.map(
      (cards, way): Way => ({
        id: itemAt(modes, way).id,
        on: cards,
        own: cards.filter((as) => !everywhere.includes(as)),
        firmware: combination?.modes[way]?.firmware ?? itemAt(question.versions, itemAt(solution, itemAt(frame.firmware, way))).id,
        versions: versions.lists[way] ?? [],
        versionsExact: versions.exact,
        grants: itemAt(grants, way),
      }),
    ),
    switched,
    verdict,
    ...(combination ? { combination } : {}),
    build,
  };
}

/** Wishes this way grants: cards that are on in it, and what the solution has together in it. */
function granted(open: OpenWays, solution: Solution, on: readonly (readonly string[])[], way: number): readonly string[] {
  return open.wishes.flatMap(({ wish, by }) => {
    if (!isGranted(wish)) return [];
    return (by === undefined ? itemAt(on, way).includes((wish as { card: string }).card) : solution[by] === way) ? [wish.id] : [];
  });
}

/** The versions each mode may run, among the ways to fill the holes that have the verdict. */
function versionsOf(
  compiled: Compiled,
  verdict: Division["verdict"],
  budget?: Budget,
): { readonly lists: readonly (readonly string[])[]; readonly exact: boolean } {
  const { frame, question } = compiled;
  const { values, exact } = possible(verdict === "unknown" ? compiled.possible : compiled.certain, budget);
  return {
    lists: frame.firmware.map((variable) => question.versions.filter((_, v) => itemAt(values, variable).has(v)).map((v) => v.id)),
    exact,
  };
}
