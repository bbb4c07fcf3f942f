// Kinds of combination: by verdict and by evidence. Counts every kind exactly, as far as the budget goes, and finds ways of one kind alone.

import type { Compiled, Frame } from "../../encoding/index.js";
import { choiceId } from "../../machine/index.js";
import { itemAt } from "../../records/index.js";
import { type Budget, type Count, count, countPerValue, type Problem } from "../../solver/index.js";
import type { Combination, Evidence, Verdict } from "./answer.js";
import { evidenceRank } from "./evidence.js";
import { atLeastProven, oneOf } from "./proofs.js";
import { representatives } from "./representatives.js";
import { atMostLevel, conditionalFrom } from "./verdict.js";

export type Workable = Exclude<Verdict, "ruled-out">;

/** What the ways may be narrowed to. Evidence: at least so well proven. */
export interface Only {
  readonly verdict?: Workable | undefined;
  readonly evidence?: Evidence | undefined;
}

/** Combinations of one verdict that are at least so well proven. `exact` false: at least so many. */
export interface KindCount {
  readonly verdict: Workable;
  readonly evidence: Evidence;
  readonly count: string;
  readonly exact: boolean;
}

/** In how many certain combinations each value of a choice takes part. */
export interface Facet {
  /** Id of the choice, as in an answer: "revision", "memory", "firmware:daily". */
  readonly choice: string;
  /** Decimal digits by value. */
  readonly counts: Readonly<Record<string, string>>;
}

export interface Counts {
  readonly count: string;
  readonly exact: boolean;
  readonly hanging: string;
  readonly hangingExact: boolean;
  readonly kinds: readonly KindCount[];
  /** Empty when they could not be counted to the end: a part of a count would mislead. */
  readonly facets: readonly Facet[];
}

export const grades: readonly Evidence[] = ["bench", "documented", "reported", "inferred"];
export const workables: readonly Workable[] = ["workable", "conditional", "unknown"];

/** Everything that is counted: the certain, the hanging, each kind, each value of the machine's choices. Each count has its own share to spend. */
export function countsOf(compiled: Compiled, share: () => Budget | undefined = () => undefined): Counts {
  const { certain, possible, unsettled, frame } = compiled;
  const sure = count(certain, undefined, share());
  const all = unsettled.length === 0 ? sure : count(possible, undefined, share());
  const hanging = less(all, sure);
  const facets = sure.exact ? facetsOf(frame, certain, share()) : [];
  return {
    count: String(sure.count),
    exact: sure.exact,
    hanging: String(hanging.count),
    hangingExact: hanging.exact,
    kinds: kindsOf(compiled, sure, all, share),
    facets,
  };
}

function kindsOf(compiled: Compiled, sure: Count, all: Count, share: () => Budget | undefined): KindCount[] {
  const { certain, possible, unsettled, soft, frame } = compiled;
  const costs = soft.some((s) => s.level >= conditionalFrom);
  const plain = atMostLevel(compiled, certain, conditionalFrom - 1);
  return grades.flatMap((evidence): KindCount[] => {
    const within = (problem: Problem, known?: Count) =>
      evidence === "inferred" && known ? known : countProven(frame, problem, evidence, share());
    const certainly = within(certain, sure);
    const plainly = costs ? within(plain) : certainly;
    const possibly = unsettled.length > 0 ? within(possible, all) : certainly;
    const by = { workable: plainly, conditional: less(certainly, plainly), unknown: less(possibly, certainly) };
    return workables.map((verdict) => ({ verdict, evidence, count: String(by[verdict].count), exact: by[verdict].exact }));
  });
}

function countProven(frame: Frame, problem: Problem, evidence: Evidence, budget?: Budget): Count {
  const proven = atLeastProven(frame, problem, evidence);
  if (!proven) return { count: 0n, exact: true };
  const added = proven.variables.length > problem.variables.length;
  return count(proven, added ? { project: problem.variables.map((_, v) => v) } : undefined, budget);
}

/** What is in the larger and not in the smaller. A larger one that is cut short still gives a floor, a smaller one none. */
function less(larger: Count, smaller: Count): Count {
  if (!smaller.exact) return { count: 0n, exact: false };
  return { count: larger.count > smaller.count ? larger.count - smaller.count : 0n, exact: larger.exact };
}

function facetsOf(frame: Frame, certain: Problem, budget?: Budget): Facet[] {
  const { counts, exact } = countPerValue(certain, budget);
  if (!exact) return [];
  const { question } = frame;
  const facet = (choice: string, variable: number, values: readonly string[]): Facet => ({
    choice,
    counts: Object.fromEntries(values.map((v, i) => [v, String(itemAt(counts, variable)[i] ?? 0n)])),
  });
  const versions = question.versions.map((v) => v.id);
  return [
    facet(choiceId({ kind: "revision" }), frame.revision, question.revisions),
    facet(choiceId({ kind: "memory" }), frame.memory, question.memories.map(String)),
    ...question.modes.map((m, i) => facet(choiceId({ kind: "firmware", mode: m.id }), itemAt(frame.firmware, i), versions)),
  ];
}

/** Ranked ways of one kind; as many as there are when they are few, never one of another kind. */
export function waysOf(compiled: Compiled, only: Only, most: number, budget?: Budget): readonly Combination[] {
  const narrowed = narrowedTo(compiled, only);
  if (!narrowed) return [];
  const fits = (c: Combination) =>
    (only.verdict === undefined || c.verdict === only.verdict) &&
    (only.evidence === undefined || evidenceRank(c.evidence) <= evidenceRank(only.evidence));
  return representatives(compiled, most, budget, narrowed).filter(fits);
}

function narrowedTo(compiled: Compiled, { verdict, evidence }: Only): readonly Problem[] | undefined {
  const { certain, possible, unsettled, soft } = compiled;
  const whens = (drafts: readonly { readonly when: Compiled["soft"][number]["when"] }[]) => drafts.flatMap((d) => d.when);
  const of = {
    any: [certain, possible],
    workable: [atMostLevel(compiled, certain, conditionalFrom - 1)],
    conditional: [oneOf(certain, whens(soft.filter((s) => s.level >= conditionalFrom)))],
    unknown: [oneOf(possible, whens(unsettled))],
  }[verdict ?? "any"];
  const proven = of.flatMap((p) => (p && atLeastProven(compiled.frame, p, evidence ?? "inferred")) ?? []);
  return proven.length > 0 ? proven : undefined;
}
