// A draft: one fact of the trade as a rule of the problem, still holding its words and the records it rests on.
import type { Unread } from "../records/index.js";
import type { Constraint, Literal } from "../solver/index.js";
import type { Condition, Fact, Ref } from "./facts.js";
import { always, type Frame } from "./frame.js";

/**
 * - `sure`: excluded, whatever is unknown.
 * - `unknown`: excluded under one reading of a missing fact, allowed under another.
 * - `soft`: allowed, with a remedy to take, a loss, or only a note.
 */
export type ConstraintDraft =
  | { readonly kind: "sure"; readonly fact: Fact; readonly rules: readonly Constraint[] }
  | {
      readonly kind: "unknown";
      readonly fact: Fact;
      readonly how: string;
      readonly when: readonly (readonly Literal[])[];
      /** Open even for a machine that was tested exactly so: nobody knows what the record would say. */
      readonly despiteTest?: boolean;
      /** The record that could not be read, when that is what is missing. */
      readonly unread?: Unread;
    }
  | {
      readonly kind: "soft";
      readonly fact: Fact;
      readonly when: readonly (readonly Literal[])[];
      readonly level: SoftLevel;
      readonly condition: Condition;
    };

/** 1 cosmetic, 2 works with a loss, 3 a remedy must be taken. */
export type SoftLevel = 1 | 2 | 3;

/** A rule of the trade: small, named, one a file. */
export interface TradeRule {
  readonly name: string;
  readonly says: string;
  readonly drafts: (frame: Frame) => ConstraintDraft[];
}

/** The conjunctions that can hold at all: one literal a variable, without those that say nothing. */
export function conjunctions(frame: Frame, when: readonly (readonly (Literal | undefined)[])[]): Literal[][] {
  return when.flatMap((literals) => {
    const byVariable = new Map<number, readonly number[]>();
    for (const literal of literals) {
      if (literal === undefined) return [];
      const before = byVariable.get(literal.variable);
      byVariable.set(literal.variable, before ? before.filter((v) => literal.values.includes(v)) : literal.values);
    }
    const merged = [...byVariable].map(([variable, values]) => ({ variable, values }));
    return merged.some((l) => l.values.length === 0) ? [] : [merged.filter((l) => !always(frame, l))];
  });
}

/** "These never all hold at once", as a sure draft; nothing when it can never apply. */
export function never(frame: Frame, fact: Fact, ...when: (readonly (Literal | undefined)[])[]): ConstraintDraft[] {
  const rules: Constraint[] = conjunctions(frame, when).map((literals) => ({ kind: "forbid", literals }));
  return rules.length === 0 ? [] : [{ kind: "sure", fact, rules }];
}

/** "If these all hold, a missing fact decides", as an unknown draft. */
export function unsettled(frame: Frame, fact: Fact, how: string, ...when: (readonly (Literal | undefined)[])[]): ConstraintDraft[] {
  const conj = conjunctions(frame, when);
  return conj.length === 0 ? [] : [{ kind: "unknown", fact, how, when: conj }];
}

/** A condition on the amount of main memory, where the board's record has none: then nobody knows. */
export function memoryUnknown(frame: Frame, told: Fact, ...when: (readonly (Literal | undefined)[])[]): ConstraintDraft[] {
  const { board } = frame.question;
  const says = `${told.says} How much ${board.name} has is not written down.`;
  return unsettled(frame, { ...told, says, refs: [...told.refs, ref("board", board.id)] }, howToFindMemory(frame), ...when);
}

/** Refused where the amount of main memory fails for sure; open where that hangs on windows of which nobody knows whether they count. */
export function refusedByMemory(
  frame: Frame,
  told: Fact,
  fails: { readonly sure: readonly Literal[][]; readonly perhaps: readonly Literal[][] },
  when: readonly (Literal | undefined)[],
): ConstraintDraft[] {
  const says = `${told.says} Whether memory on a card counts with the board's is not known.`;
  const how = "Fit the card, and see how much memory the machine then counts; write main: true or false beside its window.";
  return [
    ...never(frame, told, ...fails.sure.map((state) => [...when, ...state])),
    ...unsettled(frame, { ...told, says }, how, ...fails.perhaps.map((state) => [...when, ...state])),
  ];
}

export function howToFindMemory(frame: Frame): string {
  return `Count the memory fitted, and write the amounts that ${frame.question.board.name} can have into its record.`;
}

export function fact(rule: string, says: string, ...refs: readonly Ref[]): Fact {
  return { rule, says, refs };
}

export function ref(kind: Ref["kind"], id: string, pointer = ""): Ref {
  return { kind, id, pointer };
}
