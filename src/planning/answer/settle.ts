// Cards of which it does not matter whether they are on in a mode: taken as on or off before anything is answered, so that all that follows
// speaks of one machine. What works best is taken; of equals what changes least between the modes, then what has most on.
import { type Compiled, compile, type Frame, type OnInMode } from "../../encoding/index.js";
import type { ResolvedBuild } from "../../machine/index.js";
import {
  type Budget,
  type Constraint,
  type Cost,
  cheapest,
  type Literal,
  type Problem,
  type Solution,
  type Variable,
} from "../../solver/index.js";
import type { Verdict } from "./answer.js";
import { atMostLevel, conditionalFrom, verdictOf } from "./verdict.js";

/** Most ways to settle it that are looked at one by one, where all hang on a missing fact: a bench test may vouch for one of them. */
const mostTried = 64;

/** Steps each search may take. Every answer to a question takes it the same way, so the caller's time does not come into it. */
const budget: Budget = { steps: 400_000 };

const bestFirst: readonly Verdict[] = ["workable", "conditional", "unknown"];

/** The question compiled, with nothing left open of what is on in a mode; as it is where nothing works whatever is on. */
export function compileSettled(question: ResolvedBuild): Compiled {
  const open = compile(question);
  if (question.modes.every((m) => m.free === undefined)) return open;
  const levels = open.soft.map((s) => s.level).filter((level) => level >= conditionalFrom);
  for (const level of [...new Set([conditionalFrom - 1, ...levels])].sort((a, b) => a - b)) {
    const [best] = leastChanged(open, atMostLevel(open, open.certain, level), 1);
    if (best) return settled(open, best);
  }
  const tried = open.unsettled.length > 0 ? leastChanged(open, open.possible, mostTried).map((s) => settled(open, s)) : [];
  const verdicts = tried.map((compiled) => ({ compiled, verdict: verdictOf(compiled, budget) }));
  const best = bestFirst.flatMap((wanted) => verdicts.find(({ verdict }) => verdict === wanted) ?? [])[0];
  return best?.compiled ?? open;
}

/** Solutions that differ in what is on, best first. */
function leastChanged(open: Compiled, problem: Problem, k: number): readonly Solution[] {
  const { frame } = open;
  const project = frame.on.flatMap((cards) => cards.flatMap((on) => on ?? []));
  const counted = withChanging(frame, problem);
  const leastOff: Cost = { terms: project.map((variable) => ({ variable, weights: [1, 0] })) };
  const { solutions } = cheapest(counted.problem, [counted.changing, leastOff], { k, project }, budget);
  return solutions.map((s) => s.solution.slice(0, frame.variables.length));
}

/** With a variable for each card that is open in some mode: 1 where it is on in one mode and off in another. */
function withChanging(frame: Frame, problem: Problem): { readonly problem: Problem; readonly changing: Cost } {
  const variables: Variable[] = [...problem.variables];
  const rules: Constraint[] = [...problem.rules];
  const terms = frame.question.cards.flatMap((_, card) => {
    if (frame.on.every((cards) => cards[card] === undefined)) return [];
    const variable = variables.push({ name: `changes:${card}`, size: 2 }) - 1;
    const on = frame.on.flatMap((_cards, mode) => is(frame, mode, card, true));
    const off = frame.on.flatMap((_cards, mode) => is(frame, mode, card, false));
    for (const here of on)
      for (const there of off) rules.push({ kind: "forbid", literals: [...here, ...there, { variable, values: [0] }] });
    return [{ variable, weights: [0, 1] }];
  });
  return { problem: { variables, rules }, changing: { terms } };
}

/** What it takes that the card is on, or off, in the mode: nothing where it is said to be; none where it is said not to be. */
function is(frame: Frame, mode: number, card: number, on: boolean): readonly (readonly Literal[])[] {
  const variable = frame.on[mode]?.[card];
  if (variable !== undefined) return [[{ variable, values: [on ? 1 : 0] }]];
  const { modes, cards } = frame.question;
  return modes[mode]?.enabled.has(cards[card]?.as ?? "") === on ? [[]] : [];
}

/** The question with what is on as the solution has it. */
function settled({ question, frame }: Compiled, solution: Solution): Compiled {
  const taken = question.modes.flatMap((mode, m) =>
    question.cards.flatMap(({ as }, card): OnInMode[] => {
      const variable = frame.on[m]?.[card];
      return variable === undefined ? [] : [{ mode: mode.id, card: as, on: solution[variable] === 1 }];
    }),
  );
  const modes = question.modes.map(({ free: _, ...mode }) => {
    const off = new Set(taken.filter((t) => t.mode === mode.id && !t.on).map((t) => t.card));
    return { ...mode, enabled: new Set([...mode.enabled].filter((as) => !off.has(as))) };
  });
  return { ...compile({ ...question, modes }), taken };
}
