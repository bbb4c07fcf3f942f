// What the rules say of a state that no mode plans: a broken wire or a wrong contact may switch on two cards that cannot run together, or
// one under firmware it does not work with. The rules are the planner's own, handed in; here states are put to them.

import type { JudgeRunning, RunningVerdict } from "../../planning/index.js";
import { entryOf } from "../../records/index.js";
import { type Model, modeOf, nothingRuns, type RawState } from "./model.js";

export interface Judged extends RunningVerdict {
  /** Cards that are on, and of which the records do not say that they answer. */
  readonly unsure: readonly string[];
}

/** Undefined for a planned mode, and where nothing runs or nobody can say which firmware does. */
export type JudgeState = (state: RawState) => Judged | undefined;

const worst: readonly RunningVerdict["verdict"][] = ["workable", "conditional", "unknown", "ruled-out"];
/** A card that is neither on nor off is read both ways; of more such cards than this the state is not known. */
const mostOpen = 4;

/** `always`: cards that are on whatever the switch does. */
export function stateJudge(model: Model, judge: JudgeRunning, always: readonly string[]): JudgeState {
  const known = new Map<string, Judged>();
  return (state) => {
    if (state.short || state.version === undefined || state.version === nothingRuns || modeOf(model, state) !== undefined) return undefined;
    const firmware = model.versions[state.version] ?? "";
    const key = `${firmware} ${state.cards.join()}`;
    const before = known.get(key);
    if (before) return before;
    const ask = (on: readonly string[]) => judge({ firmware, on: [...always, ...on] });
    const of = (is: string) => model.cards.flatMap(({ card }, i) => (state.cards[i] === is ? [card] : []));
    const on = of("on");
    const open = of("undefined");
    const read = open.length > mostOpen ? [] : subsets(open).map((more) => ask([...on, ...more]));
    const verdict = read.length === 0 ? "unknown" : (worst[Math.max(...read.map((r) => worst.indexOf(r.verdict)))] ?? "unknown");
    const says = [...new Set(read.filter((r) => r.verdict === verdict).flatMap((r) => r.says))];
    const judged = { verdict, says, unsure: holds(verdict) ? [] : unsureOf(on, open, ask) };
    known.set(key, judged);
    return judged;
  };
}

function holds(verdict: RunningVerdict["verdict"]): boolean {
  return verdict === "workable" || verdict === "conditional";
}

/**
 * A card is in doubt by itself, by what is held against it beside one other and against neither of the two alone, or by what is held
 * against all together and against no two of them.
 */
function unsureOf(on: readonly string[], open: readonly string[], ask: (on: readonly string[]) => RunningVerdict): string[] {
  const all = [...on, ...open];
  const none = ask([]);
  const alone = new Map(all.map((card) => [card, ask([card])]));
  const told = new Set([none, ...alone.values()].flatMap((v) => v.says));
  const unsure = new Set(on.filter((card) => !holds(entryOf(alone, card).verdict)));
  const pairs = all.flatMap((a, i) => all.slice(i + 1).map((b) => ({ a, b, verdict: ask([a, b]) })));
  for (const { a, b, verdict } of pairs) {
    const worse = [none, entryOf(alone, a), entryOf(alone, b)].every((v) => holds(v.verdict)) && !holds(verdict.verdict);
    if (worse || verdict.says.some((says) => !told.has(says))) for (const card of [a, b]) unsure.add(card);
  }
  for (const { verdict } of pairs) for (const says of verdict.says) told.add(says);
  const whole = ask(all);
  const unheard = whole.says.some((says) => !told.has(says));
  return unheard || !holds(none.verdict) || unsure.size === 0 ? [...on] : on.filter((card) => unsure.has(card));
}

function subsets<T>(list: readonly T[]): T[][] {
  return Array.from({ length: 2 ** list.length }, (_, mask) => list.filter((_, i) => (mask >> i) & 1));
}
