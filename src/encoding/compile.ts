// From a question to two constraint problems over one frame: `possible` keeps every sure rule (what could work, whatever
// missing facts turn out to be), `certain` also excludes all that hangs on a missing fact.

import { type ResolvedBuild, running } from "../machine/index.js";
import { itemAt, type Unread } from "../records/index.js";
import type { Choice, Constraint, Literal, Problem, Solution } from "../solver/index.js";
import { ownersChoices } from "./choices.js";
import type { ConstraintDraft } from "./draft.js";
import { type ExactTests, findExactTests, unreadTests } from "./exact-tests.js";
import type { OnInMode, OwnersChoice } from "./facts.js";
import { type Frame, frameOf, holds, modeKept, ofRevision } from "./frame.js";
import { tradeRules } from "./rules/index.js";

export type Sure = Extract<ConstraintDraft, { kind: "sure" }>;
/** `when` leaves out machines tested exactly so; `missing` is where the fact is missing, tested or not. */
export type Unsettled = Extract<ConstraintDraft, { kind: "unknown" }> & {
  readonly missing: Extract<ConstraintDraft, { kind: "unknown" }>["when"];
};
export type Soft = Extract<ConstraintDraft, { kind: "soft" }>;

export interface Compiled {
  readonly question: ResolvedBuild;
  readonly frame: Frame;
  readonly sure: readonly Sure[];
  readonly unsettled: readonly Unsettled[];
  readonly soft: readonly Soft[];
  /** Tested builds that are exactly one way to fill the holes; only looked for when a missing fact could hold them back. */
  readonly exact?: ExactTests;
  /** Bench results that could not be read and may say that an exactly tested machine failed: then no test outweighs a missing fact. */
  readonly doubted: readonly Unread[];
  /** What the owner chose, each a named rule that could be given up. */
  readonly choices: readonly (Choice & { readonly told: OwnersChoice })[];
  /** What is on where the build says that it does not matter; the question says so too then. */
  readonly taken?: readonly OnInMode[];
  /** Sure rules, no choices. */
  readonly facts: Problem;
  /** Sure rules and all choices. */
  readonly possible: Problem;
  /** The same, and nothing that hangs on a missing fact. */
  readonly certain: Problem;
}

export function compile(question: ResolvedBuild): Compiled {
  const open = frameOf(question);
  const drafts = tradeRules.flatMap((rule) => rule.drafts(open));
  const unknown = drafts.filter((d) => d.kind === "unknown");
  // A tested machine ran in modes of its own; while it is open what is on in a mode, a solution is none of them.
  const fixed = open.on.every((cards) => cards.every((on) => on === undefined));
  const tested = fixed && unknown.some((d) => !d.despiteTest) ? findExactTests(open) : undefined;
  const doubted = tested ? unreadTests(open) : [];
  const exact = doubted.length > 0 ? undefined : tested;
  const frame: Frame = exact ? { ...open, variables: [...open.variables, ...exact.added] } : open;
  const sure = drafts.filter((d): d is Sure => d.kind === "sure");
  const unsettled = unknown.map(
    (d): Unsettled => ({
      ...d,
      missing: d.when,
      when: exact && !d.despiteTest ? d.when.map((literals) => [...literals, exact.untested]) : d.when,
    }),
  );
  const soft = drafts.filter((d): d is Soft => d.kind === "soft");
  const choices = ownersChoices(frame);
  const facts: Problem = {
    variables: frame.variables,
    rules: [
      ...alwaysOn(frame),
      ...runsAnyway(frame),
      ...(exact?.rules ?? []),
      ...sure.flatMap((d, i) => d.rules.map((r): Constraint => ({ ...r, id: `${i}` }))),
    ],
  };
  const possible = withRules(
    facts,
    choices.flatMap((c) => c.rules),
  );
  const certain = withRules(
    possible,
    unsettled.flatMap((d) => forbids(d.when)),
  );
  return { question, frame, sure, unsettled, soft, ...(exact ? { exact } : {}), doubted, choices, facts, possible, certain };
}

/** A machine with a single mode runs it. */
function alwaysOn(frame: Frame): Constraint[] {
  return frame.firmware.length === 1 ? [{ kind: "unary", ...modeKept(frame, 0) }] : [];
}

/** Where it is open whether a card is on: in a revision that nothing can switch off it runs. */
function runsAnyway(frame: Frame): Constraint[] {
  return frame.on.flatMap((cards, m) =>
    cards.flatMap((on, at): Constraint[] => {
      const asked = itemAt(frame.question.cards, at);
      const anyway = running(asked, { ...itemAt(frame.question.modes, m), enabled: new Set() });
      if (on === undefined || anyway.length === 0) return [];
      return [{ kind: "forbid", literals: [{ variable: on, values: [0] }, ofRevision(frame, at, (r) => anyway.includes(r))] }];
    }),
  );
}

export function withRules(problem: Problem, rules: readonly Constraint[]): Problem {
  return { variables: problem.variables, rules: [...problem.rules, ...rules] };
}

export function forbids(when: readonly (readonly Literal[])[]): Constraint[] {
  return when.map((literals) => ({ kind: "forbid", literals }));
}

/** True when one of the conjunctions holds in the solution. */
export function applies(draft: { readonly when: readonly (readonly Literal[])[] }, solution: Solution): boolean {
  return draft.when.some((literals) => literals.every((l) => holds(l, solution)));
}
