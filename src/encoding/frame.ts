// The frame of a problem: which variable stands for which hole of the build, and literals over them in trade terms.
// "out" (a card that is left out) and "off" (a mode that is given up) are values, so that giving one up is just another value.

import { choiceId, holding, type Release, type ResolvedBuild, type ResolvedCard, type ResolvedMode, running } from "../machine/index.js";
import { itemAt } from "../records/index.js";
import type { Literal, Solution, Variable } from "../solver/index.js";

export interface CardVariables {
  readonly slot: number;
  readonly revision: number;
  /** One per setting, in the order of the record. */
  readonly settings: readonly number[];
}

export interface Frame {
  readonly question: ResolvedBuild;
  readonly variables: readonly Variable[];
  readonly revision: number;
  readonly memory: number;
  readonly firmware: readonly number[];
  readonly cards: readonly CardVariables[];
  /** By mode and card: whether the card runs in the mode (0 no, 1 yes), where that is a hole. */
  readonly on: readonly (readonly (number | undefined)[])[];
}

export function frameOf(question: ResolvedBuild): Frame {
  const variables: Variable[] = [];
  const add = (name: string, size: number) => variables.push({ name, size }) - 1;
  const revision = add(choiceId({ kind: "revision" }), question.revisions.length);
  const memory = add(choiceId({ kind: "memory" }), question.memories.length);
  const firmware = question.modes.map((m) => add(choiceId({ kind: "firmware", mode: m.id }), question.versions.length + 1));
  const cards = question.cards.map((c) => ({
    slot: add(choiceId({ kind: "slot", card: c.as }), question.slots.length + 1),
    revision: add(choiceId({ kind: "card-revision", card: c.as }), c.revisions.length),
    settings: c.settings.map((s) => add(choiceId({ kind: "setting", card: c.as, setting: s.id }), s.positions.length)),
  }));
  const on = question.modes.map((m) =>
    question.cards.map((c) => (m.free?.has(c.as) ? add(choiceId({ kind: "on", mode: m.id, card: c.as }), 2) : undefined)),
  );
  return { question, variables, revision, memory, firmware, cards, on };
}

/** Places of the items that pass. Called some hundred thousand times to compile a large machine, so it makes nothing but its answer. */
function where<T>(items: readonly T[], test: (item: T, at: number) => boolean): number[] {
  const places: number[] = [];
  for (let at = 0; at < items.length; at++) if (test(itemAt(items, at), at)) places.push(at);
  return places;
}

/** The board is of one of these revisions. */
export function onRevisions(frame: Frame, test: (revision: string) => boolean): Literal {
  return { variable: frame.revision, values: where(frame.question.revisions, test) };
}

export function withMemory(frame: Frame, test: (bytes: number) => boolean): Literal {
  return { variable: frame.memory, values: where(frame.question.memories, test) };
}

/** The mode runs one of these versions (and is not given up). */
export function runsVersion(frame: Frame, mode: number, test: (version: string, at: number) => boolean): Literal {
  return { variable: itemAt(frame.firmware, mode), values: where(frame.question.versions, (v, at) => test(v.id, at)) };
}

export function modeKept(frame: Frame, mode: number): Literal {
  return runsVersion(frame, mode, () => true);
}

/** The card stands in one of these slots (and is not left out). */
export function inSlot(frame: Frame, card: number, test: (slot: ResolvedBuild["slots"][number]) => boolean): Literal {
  return { variable: itemAt(frame.cards, card).slot, values: where(frame.question.slots, test) };
}

export function cardIn(frame: Frame, card: number): Literal {
  return inSlot(frame, card, () => true);
}

export function ofRevision(frame: Frame, card: number, test: (revision: string) => boolean): Literal {
  return { variable: itemAt(frame.cards, card).revision, values: where(itemAt(frame.question.cards, card).revisions, test) };
}

/** The card runs in this mode: it is on, or of a revision that nothing can switch off. No value is left where it cannot run. */
export function runsIn(frame: Frame, mode: number, card: number): Literal {
  const on = frame.on[mode]?.[card];
  if (on !== undefined) return { variable: on, values: [1] };
  const revisions = running(itemAt(frame.question.cards, card), itemAt(frame.question.modes, mode));
  return ofRevision(frame, card, (r) => revisions.includes(r));
}

/** The card takes, or needs, in this mode what `what` names. */
export function holdsIn(frame: Frame, mode: number, card: number, what: Release): Literal {
  if (itemAt(frame.question.cards, card).card.enable?.releases.includes(what)) return runsIn(frame, mode, card);
  const revisions = holding(itemAt(frame.question.cards, card), itemAt(frame.question.modes, mode), what);
  return ofRevision(frame, card, (r) => revisions.includes(r));
}

/** The setting stands in one of these positions. A setting the card lacks stands nowhere. */
export function setTo(frame: Frame, card: number, setting: string, positions: readonly string[]): Literal | undefined {
  const at = itemAt(frame.question.cards, card).settings.findIndex((s) => s.id === setting);
  if (at < 0) return undefined;
  return {
    variable: itemAt(itemAt(frame.cards, card).settings, at),
    values: where(itemAt(itemAt(frame.question.cards, card).settings, at).positions, (p) => positions.includes(p.id)),
  };
}

/**
 * All these settings stand so, each in its position or one of several. A setting that a revision of the card lacks stands nowhere there, so
 * that nothing that names it holds.
 */
export function settingsStand(
  frame: Frame,
  card: number,
  settings: Readonly<Record<string, string | readonly string[]>>,
): (Literal | undefined)[] {
  return Object.entries(settings).flatMap(([id, positions]) => {
    const only = frame.question.cards[card]?.settings.find((s) => s.id === id)?.revisions;
    return [
      setTo(frame, card, id, typeof positions === "string" ? [positions] : positions),
      ...(only ? [ofRevision(frame, card, (r) => only.includes(r))] : []),
    ];
  });
}

export function holds(literal: Literal, solution: Solution): boolean {
  return literal.values.includes(itemAt(solution, literal.variable));
}

/** True when the literal says nothing: every value satisfies it. */
export function always(frame: Frame, literal: Literal): boolean {
  return literal.values.length === itemAt(frame.variables, literal.variable).size;
}

/** The literal's contrary: the variable takes one of its other values. */
export function complement(variables: readonly Variable[], { variable, values }: Literal): Literal {
  return { variable, values: Array.from({ length: variables[variable]?.size ?? 0 }, (_, v) => v).filter((v) => !values.includes(v)) };
}

export function eachCard(frame: Frame): { at: number; asked: ResolvedCard }[] {
  return frame.question.cards.map((asked, at) => ({ at, asked }));
}

export function eachMode(frame: Frame): { at: number; mode: ResolvedMode }[] {
  return frame.question.modes.map((mode, at) => ({ at, mode }));
}
