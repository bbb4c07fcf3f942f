// Lines that must not compile: what the types promise. The compiler reads this file with the build and fails on a line that
// is allowed after all; the test beside it proves that every mark stands before a true mistake.
import { type Catalogue, type LinkedId, recordOf } from "../../src/catalogue/index.js";
import { type Answer, type Combination, type PlanOptions, plan, type Verdict } from "../../src/planning/index.js";
import { type Build, type Finding, hex, known, type RecordOf } from "../../src/records/index.js";
import type { Constraint, Problem } from "../../src/solver/index.js";

declare const answer: Answer;
declare const build: Build;
declare const catalogue: Catalogue;
declare const combination: Combination;
declare const finding: Finding;

// An answer is read, never changed.
// @ts-expect-error
answer.verdict = "workable";
// @ts-expect-error
combination.cards.push(combination.cards[0]!);

// Verdict and evidence are closed sets of words, and not each other.
// @ts-expect-error
export const wrongVerdict: Verdict = "works";
// @ts-expect-error
export const wrongEvidence: Combination["evidence"] = "workable";

// A count may be beyond what a number holds: it is text.
// @ts-expect-error
export const wrongCount: number = answer.count;

// A fact that may be unknown is not a figure until somebody looked.
// @ts-expect-error
export const wrongFact: number = known<number>(3);
// @ts-expect-error
export const wrongHeadroom: number = combination.headroom[0]!.used_A;

// The planner needs the catalogue; it gives an answer or says what was misasked.
// @ts-expect-error
plan(build);
// @ts-expect-error
plan({ boards: new Map() }, build).verdict;
// @ts-expect-error
export const wrongOption: PlanOptions = { fast: true };

// Codes of findings are a closed set.
// @ts-expect-error
export const wrongCode: Finding = { ...finding, code: "oops" };

// Records take the fields of their schema and no others.
// @ts-expect-error
export const wrongCard: RecordOf["card"]["edge"] = 3;
// @ts-expect-error
build.colour;
// @ts-expect-error
hex("0x300");

// A rule of the solver is one of the kinds it knows, with what that kind needs.
// @ts-expect-error
export const wrongRule: Constraint = { kind: "sometimes", variable: 0 };
// @ts-expect-error
export const halfRule: Constraint = { kind: "unary", variable: 0 };
// @ts-expect-error
export const wrongProblem: Problem = { variables: [{ name: "a" }], rules: [] };

// Only the catalogue makes an id that is known to lead somewhere.
// @ts-expect-error
export const wrongId: LinkedId<"card"> = "tallow-bus-tracer";
// @ts-expect-error
recordOf(catalogue, "board", "skerry-16");
