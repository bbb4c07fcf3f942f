// From a question to two constraint problems over one frame: `possible` keeps every sure rule (what could work, whatever
// missing facts turn out to be), `certain` also excludes all that hangs on a missing fact.

import type { Question } from "../../machine/index.js";
import type { Choice, Literal, Problem, Rule, Solution } from "../../solver/index.js";
import type { OwnersChoice } from "../answer/answer.js";
import { ownersChoices } from "./choices.js";
import type { Draft } from "./draft.js";
import { type Frame, frameOf, holds, modeKept } from "./frame.js";
import { tradeRules } from "./rules/index.js";

export type Sure = Extract<Draft, { kind: "sure" }>;
export type Unsettled = Extract<Draft, { kind: "unknown" }>;
export type Soft = Extract<Draft, { kind: "soft" }>;

export interface Compiled {
  readonly question: Question;
  readonly frame: Frame;
  readonly sure: readonly Sure[];
  readonly unsettled: readonly Unsettled[];
  readonly soft: readonly Soft[];
  /** What the owner chose, each a named rule that could be given up. */
  readonly choices: readonly (Choice & { readonly told: OwnersChoice })[];
  /** Sure rules, no choices. */
  readonly facts: Problem;
  /** Sure rules and all choices. */
  readonly possible: Problem;
  /** The same, and nothing that hangs on a missing fact. */
  readonly certain: Problem;
}

export function compile(question: Question): Compiled {
  const frame = frameOf(question);
  const drafts = tradeRules.flatMap((rule) => rule.drafts(frame));
  const sure = drafts.filter((d): d is Sure => d.kind === "sure");
  const unsettled = drafts.filter((d): d is Unsettled => d.kind === "unknown");
  const soft = drafts.filter((d): d is Soft => d.kind === "soft");
  const choices = ownersChoices(frame);
  const facts: Problem = {
    variables: frame.variables,
    rules: [...alwaysOn(frame), ...sure.flatMap((d, i) => d.rules.map((r): Rule => ({ ...r, id: `${i}` })))],
  };
  const possible = withRules(
    facts,
    choices.flatMap((c) => c.rules),
  );
  const certain = withRules(
    possible,
    unsettled.flatMap((d) => forbids(d.when)),
  );
  return { question, frame, sure, unsettled, soft, choices, facts, possible, certain };
}

/** A machine with a single mode runs it. */
function alwaysOn(frame: Frame): Rule[] {
  return frame.firmware.length === 1 ? [{ kind: "unary", ...modeKept(frame, 0) }] : [];
}

export function withRules(problem: Problem, rules: readonly Rule[]): Problem {
  return { variables: problem.variables, rules: [...problem.rules, ...rules] };
}

export function forbids(when: readonly (readonly Literal[])[]): Rule[] {
  return when.map((literals) => ({ kind: "forbid", literals }));
}

/** True when one of the conjunctions holds in the solution. */
export function applies(draft: { readonly when: readonly (readonly Literal[])[] }, solution: Solution): boolean {
  return draft.when.some((literals) => literals.every((l) => holds(l, solution)));
}
