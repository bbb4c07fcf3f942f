// What is on in which way of a machine that is run in several: for each card and way what switching just that would come to, all else of the
// build as it stands.

import { switchable } from "../../catalogue/index.js";
import { type Compiled, compile, withRules } from "../../encoding/index.js";
import { applyEdits, choiceId, type Edit, type ResolvedBuild } from "../../machine/index.js";
import { itemAt } from "../../records/index.js";
import { type Budget, type Constraint, decide } from "../../solver/index.js";
import type { PossibleValue, Repair } from "../answer/answer.js";
import { attempt } from "../answer/attempt.js";
import { compileSettled } from "../answer/settle.js";
import { verdictOf } from "../answer/verdict.js";

export interface OnOff {
  /** Id of the mode. */
  readonly mode: string;
  /** Name of the copy. */
  readonly card: string;
  /** `always`: nothing switches it off, so it runs whatever the mode says; `either`: it does not matter. */
  readonly now: "on" | "off" | "always" | "either";
  /**
   * What the machine comes to with this one switched over, of those that matter; undefined where nothing can be, or where the budget ended
   * first.
   */
  readonly other?: PossibleValue["verdict"];
}

/** Every card in every mode. What is off is looked at first: that it could be on is what is asked most. */
export function findOnOff(question: ResolvedBuild, budget?: Budget): readonly OnOff[] {
  const { modes, cards } = question;
  const free = new Set(cards.filter((c) => switchable(c.card)).map((c) => c.as));
  const open = compile({ ...question, modes: modes.map((m) => ({ ...m, enabled: new Set([...m.enabled, ...free]), free })) });
  const isOn = (mode: number, card: number) => itemAt(modes, mode).enabled.has(itemAt(cards, card).as);
  const isOpen = (mode: number, card: number) => itemAt(modes, mode).free?.has(itemAt(cards, card).as) === true;
  const places = modes.flatMap((_, mode) => cards.map((_c, card) => ({ mode, card })));
  const offFirst = [...places].sort((a, b) => Number(isOn(a.mode, a.card)) - Number(isOn(b.mode, b.card)));
  // A revision that nothing switches off runs on in a card that is off; to say so takes a machine of which it is said what is on.
  const partly = cards.some((c) => c.card.enable?.revisions);
  const others = new Map<string, OnOff["other"]>();
  for (const { mode, card } of offFirst) {
    if (!free.has(itemAt(cards, card).as) || isOpen(mode, card)) continue;
    if (partly) {
      others.set(`${mode} ${card}`, told(switchedOver(question, mode, itemAt(cards, card).as), budget));
      continue;
    }
    const fixed = places.flatMap((at): Constraint[] => {
      const variable = open.frame.on[at.mode]?.[at.card];
      if (variable === undefined || isOpen(at.mode, at.card)) return [];
      const switched = at.mode === mode && at.card === card;
      return [{ kind: "unary", variable, values: [isOn(at.mode, at.card) !== switched ? 1 : 0] }];
    });
    others.set(
      `${mode} ${card}`,
      verdictWith(open, fixed, () => switchedOver(question, mode, itemAt(cards, card).as), budget),
    );
  }
  return places.map(({ mode, card }): OnOff => {
    const as = itemAt(cards, card).as;
    const other = others.get(`${mode} ${card}`);
    const now = !free.has(as) ? "always" : isOpen(mode, card) ? "either" : isOn(mode, card) ? "on" : "off";
    return { mode: itemAt(modes, mode).id, card: as, now, ...(other === undefined ? {} : { other }) };
  });
}

/** A bench test vouches only for a machine of which it is said what is on, so what would hang on a missing fact is asked as such a machine. */
function verdictWith(open: Compiled, fixed: readonly Constraint[], alone: () => ResolvedBuild, budget?: Budget): OnOff["other"] {
  const certain = decide(withRules(open.certain, fixed), budget).kind;
  if (certain === "found") return "workable";
  if (certain === "stopped") return undefined;
  const possible = open.unsettled.length > 0 ? decide(withRules(open.possible, fixed), budget).kind : "none";
  if (possible === "none") return "ruled-out";
  if (possible === "stopped") return undefined;
  return told(alone(), budget);
}

function told(question: ResolvedBuild, budget?: Budget): OnOff["other"] {
  const verdict = verdictOf(compileSettled(question), budget);
  return verdict === "stopped" ? undefined : verdict === "conditional" ? "workable" : verdict;
}

/** Most other cards tried off, each a whole search. */
const mostTried = 12;

/** Beside a card that is to be on in a mode, as the build says: one other card switched off there so that the machine works. */
export function findSwitchedOff(question: ResolvedBuild, mode: string, as: string, budget?: Budget): readonly Repair[] {
  const way = question.modes.find((m) => m.id === mode);
  if (!way) return [];
  const others = question.cards
    .filter((c) => c.as !== as && way.enabled.has(c.as) && !way.free?.has(c.as) && switchable(c.card))
    .slice(0, mostTried);
  return others.flatMap(({ as: other, card }): Repair[] => {
    const edits: Edit[] = [{ pin: choiceId({ kind: "on", mode, card: other }), value: "off" }];
    const build = applyEdits(question.build, edits);
    const tried = attempt({ question }, build, budget);
    if (tried === "ruled-out" || tried === "stopped") return [];
    const { verdict, count, exact } = tried;
    return [{ kind: "change", gives: [], says: `Switch ${card.name} off in ${way.name}.`, verdict, count, exact, edits, build }];
  });
}

function switchedOver(question: ResolvedBuild, mode: number, as: string): ResolvedBuild {
  const modes = question.modes.map((m, at) => {
    if (at !== mode) return m;
    const enabled = new Set(m.enabled);
    if (!enabled.delete(as)) enabled.add(as);
    return { ...m, enabled };
  });
  return { ...question, modes };
}
