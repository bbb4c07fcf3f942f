// What may still be chosen: for every hole (and every pin, as if it were taken back) the values that some combination takes.

import { type Compiled, eachCard, eachMode, type Frame, forbids, withRules } from "../../encoding/index.js";
import { choiceId, choiceOf, copyOfChoice } from "../../machine/index.js";
import { bytes, itemAt, sizeText } from "../../records/index.js";
import { type Budget, type Possible, possible } from "../../solver/index.js";
import { listText } from "../../words/index.js";
import type { OpenChoice, PossibleValue } from "./answer.js";

interface Hole {
  readonly id: string;
  readonly label: string;
  readonly variable: number;
  readonly values: readonly { readonly value: string; readonly label: string }[];
}

/** Every variable that stands for a choice, with its values in words. "out" and "off" are not among them. */
export function holes(frame: Frame): Hole[] {
  const { question } = frame;
  const same = (values: readonly string[]) => values.map((value) => ({ value, label: value }));
  return [
    {
      id: choiceId({ kind: "revision" }),
      label: `Revision of ${question.board.name}`,
      variable: frame.revision,
      values: same(question.revisions),
    },
    {
      id: choiceId({ kind: "memory" }),
      label: "Memory",
      variable: frame.memory,
      values: question.memories.map((m) => ({ value: String(m), label: sizeText(m) })),
    },
    ...eachMode(frame).map(({ at, mode }) => ({
      id: choiceId({ kind: "firmware", mode: mode.id }),
      label: question.modes.length > 1 ? `Firmware in mode "${mode.name}"` : "Firmware",
      variable: itemAt(frame.firmware, at),
      values: same(question.versions.map((v) => v.id)),
    })),
    ...eachCard(frame).flatMap(({ at, asked }) => [
      {
        id: choiceId({ kind: "slot", card: asked.as }),
        label: `Slot of ${asked.card.name}`,
        variable: itemAt(frame.cards, at).slot,
        values: same(question.slots.map((s) => s.id)),
      },
      {
        id: choiceId({ kind: "card-revision", card: asked.as }),
        label: `Revision of ${asked.card.name}`,
        variable: itemAt(frame.cards, at).revision,
        values: same(asked.revisions),
      },
      ...asked.settings.map((s, i) => ({
        id: choiceId({ kind: "setting", card: asked.as, setting: s.id }),
        label: `${s.id} of ${asked.card.name} (${s.name})`,
        variable: itemAt(itemAt(frame.cards, at).settings, i),
        values: s.positions.map((p) => ({ value: p.id, label: p.how ? `${p.id} (${p.how})` : p.id })),
      })),
    ]),
  ];
}

/** Values of a hole that are among the possible ones. */
export function valuesOf(frame: Frame, id: string, open: Possible): string[] {
  const hole = holes(frame).find((h) => h.id === id);
  return hole ? hole.values.filter((_, v) => itemAt(open.values, hole.variable).has(v)).map((v) => v.label) : [];
}

export function openChoices(compiled: Compiled, budget?: Budget): { readonly choices: readonly OpenChoice[]; readonly exact: boolean } {
  const certain = possible(compiled.certain, budget);
  const whatever = compiled.unsettled.length > 0 ? possible(compiled.possible, budget) : certain;
  let exact = certain.exact && whatever.exact;
  const choices = holes(compiled.frame)
    .filter((h) => h.values.length > 1)
    .map((hole): OpenChoice => {
      const pin = compiled.choices.find((c) => c.id === hole.id);
      const [sure, open] = pin
        ? [without(compiled, hole.id, true, budget), without(compiled, hole.id, false, budget)]
        : [certain, whatever];
      exact = exact && sure.exact && open.exact;
      const values = hole.values.map(
        (v, i): PossibleValue => ({
          ...v,
          verdict: itemAt(sure.values, hole.variable).has(i)
            ? "workable"
            : itemAt(open.values, hole.variable).has(i)
              ? "unknown"
              : "ruled-out",
        }),
      );
      return { id: hole.id, label: hole.label, chosen: chosenValue(compiled, hole.id), values };
    });
  return { choices, exact };
}

/** Possible values with one pin taken back. */
function without(compiled: Compiled, id: string, certain: boolean, budget?: Budget): Possible {
  const others = compiled.choices.filter((c) => c.id !== id).flatMap((c) => c.rules);
  return possible(withRules(compiled.facts, [...others, ...(certain ? compiled.unsettled.flatMap((u) => forbids(u.when)) : [])]), budget);
}

function chosenValue(compiled: Compiled, id: string): string | undefined {
  const { build, chosenRevisions } = compiled.question;
  const ref = choiceOf(id);
  const card = compiled.question.cards.find((c) => c.as === copyOfChoice(id))?.chosen;
  switch (ref?.kind) {
    case "revision":
      return build.revision === undefined ? undefined : listText(chosenRevisions, "or");
    case "memory":
      return build.memory === undefined ? undefined : String(bytes(build.memory));
    case "firmware":
      return compiled.question.modes.find((m) => m.id === ref.mode)?.firmware;
    case "slot":
      return card?.slot;
    case "card-revision":
      return card?.revision;
    case "setting":
      return card?.settings?.[ref.setting];
    default:
      return undefined;
  }
}
