// The planner: one build and the catalogue in, one answer out. Everything it says is found by solving; nothing is guessed.
import type { Catalogue } from "../catalogue/index.js";
import type { Build } from "../records/index.js";
import { type Budget, type Count, count } from "../solver/index.js";
import type { Answer, Combination, Reason, UnknownFact, Verdict } from "./answer.js";
import { type Compiled, compile } from "./compile.js";
import { disproved } from "./history.js";
import { openChoices } from "./possible.js";
import { ask, type Misasked } from "./question.js";
import { reasonsOf } from "./reasons.js";
import { repairsOf } from "./repairs.js";
import { representatives } from "./representatives.js";
import { verdictOf } from "./verdict.js";

export interface PlanOptions {
  /** Most representatives (default 8). */
  readonly most?: number;
  /** Leave out what takes longest: possible values, count, repairs (default false). */
  readonly brief?: boolean;
  readonly budget?: Budget;
  /** Look only at the revisions and versions the build names (default false). */
  readonly narrow?: boolean;
}

/** Steps the planner allows each task when the caller names no budget: ample for every real machine, an end for the others. */
const defaultBudget: Budget = { steps: 400_000 };

export function plan(catalogue: Catalogue, build: Build, options: PlanOptions = {}): Answer | Misasked {
  const asked = ask(catalogue, build, options);
  if (asked.kind === "misasked") return asked;
  return answer(compile(asked.question), options);
}

/** The answer to a compiled question. */
export function answer(compiled: Compiled, options: PlanOptions = {}): Answer {
  const budget = options.budget ?? defaultBudget;
  const verdict = verdictOf(compiled, budget);
  const stopped = verdict === "stopped";
  const none = verdict === "ruled-out";
  const combinations = none || stopped ? [] : representatives(compiled, options.most ?? 8, budget);
  const counted = options.brief || none ? { count: none ? 0n : 1n, exact: none } : count(compiled.certain, undefined, budget);
  const all = options.brief || none || compiled.unsettled.length === 0 ? counted : count(compiled.possible, undefined, budget);
  const open = options.brief || stopped ? { choices: [], exact: !stopped } : openChoices(compiled, budget);
  const why = none ? reasonsOf(compiled, budget) : { reasons: [], complete: true };
  const help = none && !options.brief ? repairsOf(compiled, why.reasons, budget) : { repairs: [], complete: !options.brief };
  const unknowns = verdict === "unknown" ? decisive(combinations) : [];
  const told: Verdict = stopped ? "unknown" : verdict;
  return {
    kind: "answer",
    finished: !stopped && open.exact && why.complete && help.complete,
    verdict: told,
    says: stopped
      ? "Not known: the search was stopped before it came to an end."
      : sentence(told, combinations, why.reasons, options.brief ? undefined : { ...counted }),
    count: String(counted.count),
    exact: counted.exact,
    hanging: String(all.count > counted.count ? all.count - counted.count : 0n),
    hangingExact: counted.exact && all.exact,
    combinations,
    possible: open.choices,
    reasons: why.reasons,
    reasonsComplete: why.complete,
    repairs: help.repairs,
    repairsComplete: help.complete,
    unknowns,
    history: disproved(compiled.question),
  };
}

/** Missing facts that decide, those that settle most first. */
function decisive(combinations: readonly Combination[]): UnknownFact[] {
  const bySays = new Map<string, UnknownFact>();
  for (const c of combinations) for (const u of c.unknowns) bySays.set(u.says, { ...u, settles: (bySays.get(u.says)?.settles ?? 0) + 1 });
  return [...bySays.values()].sort((a, b) => b.settles - a.settles);
}

/** How sure the best of them is, in words that end the sentence. */
const sure = {
  bench: "the best of them is proven on the bench",
  documented: "the best of them rests on the makers' papers",
  reported: "the best of them rests on somebody's report",
  inferred: "the rules find nothing against it, but nobody has tested it",
} as const;

function sentence(verdict: Verdict, combinations: readonly Combination[], reasons: readonly Reason[], counted?: Count): string {
  const best = combinations[0];
  const number = counted && `${counted.exact ? "" : "at least "}${counted.count.toLocaleString("en")}`;
  const ways = !counted ? "" : counted.count === 1n && counted.exact ? ", in one way" : `, in ${number} ways`;
  switch (verdict) {
    case "workable":
      return `Yes, it works${ways}: ${sure[best!.evidence]}.`;
    case "conditional":
      return `Yes, with a condition: ${best!.conditions[0]?.says ?? "see below"}`;
    case "unknown":
      return `Not known. It hangs on this: ${best?.unknowns[0]?.says ?? "a missing fact."}`;
    case "ruled-out":
      return `No. ${reasons[0]?.says ?? "Nothing fits."}`;
  }
}
