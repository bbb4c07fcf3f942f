// A machine that cannot run everything at once, run in several ways: with one switch, or changed over by hand. One line a division.
import { modesOf, switchable } from "../../catalogue/index.js";
import type { Compiled } from "../../encoding/index.js";
import { editsToModes, withChoice } from "../../machine/index.js";
import type { Budget, ChoiceSets } from "../../solver/index.js";
import { byHandLine, divisionLine, lidCard } from "../../words/index.js";
import { changeOver } from "../ways/change-over.js";
import type { Division } from "../ways/division.js";
import { type Switched, withSwitch } from "../ways/with-switch.js";
import type { OwnersChoice, Repair, Tried, Verdict, WaysDiffer } from "./answer.js";
import { attempt } from "./attempt.js";
import type { MoreModes } from "./second-modes.js";

/** Most divisions told as ways out; the ways themselves are asked for apart. */
const most = 4;

/** Machines with more cards, and more ways, are not looked at here: the hand's problem holds a machine for each way. */
const mostCardsByHand = 6;
const mostWaysByHand = 3;

/** Steps when the caller names none. */
const ample: Budget = { steps: 200_000 };

/** `sets` are the smallest sets of choices to give up, `kept` the choices that must not be given up. */
export function waysOut(compiled: Compiled, sets: ChoiceSets, kept: ReadonlySet<string>, budget: Budget = ample): MoreModes {
  const { question } = compiled;
  const [mode] = question.modes;
  const pin = compiled.choices.find((c) => c.told.kind === "firmware")?.told;
  const hand = byHand(compiled, budget);
  const names = question.cards.filter((c) => mode?.enabled.has(c.as) && switchable(c.card));
  // With no version chosen, a card alone cannot be shared out.
  const tried = (ways: Tried) => ({ twoModes: "no-help", moreModes: "no-help", ways }) as const;
  if (!mode || names.length < (pin ? 1 : 2)) return { repairs: hand, complete: tried("no-help") };
  const keeping = withSwitch(question, { most, brief: true, budget });
  const repairs = linesOf(compiled, keeping, [], budget);
  const alone = pin !== undefined && sets.sets.some((set) => set.length === 1 && set[0] === pin.id);
  if (!pin || kept.has(pin.id) || alone) return { repairs: [...repairs, ...hand], complete: tried(triedOf(keeping)) };
  // Other versions in every way: told where that takes fewer ways, or where there are none with the one that was chosen.
  const build = withChoice(question.build, pin.id, undefined);
  const { firmware: _, ...open } = mode;
  const giving = withSwitch({ ...question, build, modes: [open] }, { most, brief: true, budget });
  const fewer = repairs.length === 0 || (giving.fewest ?? Number.POSITIVE_INFINITY) < (keeping.fewest ?? 0);
  const others = fewer ? linesOf(compiled, giving, [pin], budget) : [];
  const all = triedOf(keeping) === "all" && triedOf(giving) === "all";
  return { repairs: [...repairs, ...others, ...hand], complete: tried(all ? "all" : "some") };
}

function triedOf({ outcome, fewer, divisionsComplete }: Switched): Tried {
  return outcome !== "stopped" && fewer?.kind !== "not-proven" && divisionsComplete ? "all" : "some";
}

function linesOf(compiled: Compiled, { divisions }: Switched, gives: readonly OwnersChoice[], budget: Budget): readonly Repair[] {
  return divisions.flatMap((division): Repair[] => {
    // A way with nothing on serves nobody, and one way alone is what was asked.
    if (division.ways.length < 2 || division.ways.some((way) => way.on.length === 0)) return [];
    const tried = attempt(compiled, division.build, budget);
    if (tried === "ruled-out" || tried === "stopped") return [];
    const { verdict, count, exact } = tried;
    const says = lineOf(compiled, division, gives);
    const { build, ways } = division;
    return [{ kind: "ways", gives, says, verdict, count, exact, edits: editsToModes(modesOf(build)), build, differs: differing(ways) }];
  });
}

function lineOf({ question }: Compiled, { ways }: Division, gives: readonly OwnersChoice[]): string {
  const line = divisionLine(ways, (as) => nameOf(question, as));
  return gives.length === 0
    ? line
    : `Instead of ${gives.map((g) => g.says).join(" and ")}: ${line.charAt(0).toLowerCase()}${line.slice(1)}`;
}

const nameOf = (question: Compiled["question"], as: string) => question.cards.find((c) => c.as === as)?.card.name ?? as;

function differing(ways: readonly { readonly on: readonly string[]; readonly firmware: string }[]): WaysDiffer {
  const ever = [...new Set(ways.flatMap((way) => way.on))];
  return {
    cards: ever.filter((as) => ways.some((way) => !way.on.includes(as))).length,
    versions: new Set(ways.map((way) => way.firmware)).size - 1,
  };
}

const worstFirst: readonly Verdict[] = ["unknown", "conditional", "workable"];

/** The change-over by hand, where it takes more than one way and each of them has something on. */
function byHand({ question }: Compiled, budget: Budget): readonly Repair[] {
  if (question.cards.length < 2 || question.cards.length > mostCardsByHand) return [];
  const hand = changeOver(question, budget, mostWaysByHand);
  if (hand.kind !== "change-over" || hand.ways.length < 2 || hand.ways.some((way) => way.on.length === 0)) return [];
  const verdict = worstFirst.find((v) => hand.ways.some((way) => way.verdict === v));
  if (verdict === undefined || verdict === "ruled-out") return [];
  const names = (as: string) => nameOf(question, as);
  const things = hand.changes.map(({ steps }) => steps.length - 2);
  const differs: WaysDiffer = { ...differing(hand.ways), each: [Math.min(...things), Math.max(...things)] };
  const lid = lidCard(hand, names);
  return [{ kind: "by-hand", gives: [], says: byHandLine(hand, names), verdict, count: "1", exact: false, edits: [], lid, differs }];
}
