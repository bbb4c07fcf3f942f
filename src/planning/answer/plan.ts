// The planner: one build and the catalogue in, one answer out. Everything it says is found by solving; nothing is guessed.
import type { Catalogue } from "../../catalogue/index.js";
import type { Compiled } from "../../encoding/index.js";
import { type InvalidBuild, resolveBuild } from "../../machine/index.js";
import type { Build } from "../../records/index.js";
import { type Budget, count, reasonsAndRepairs } from "../../solver/index.js";
import type { Answer, Combination, UnknownFact, Verdict } from "./answer.js";
import { disproved } from "./history.js";
import { openChoices } from "./possible.js";
import { reasonsOf } from "./reasons.js";
import { nothingToHelp, nothingTried, repairsOf } from "./repairs.js";
import { representatives } from "./representatives.js";
import { sentence } from "./sentence.js";
import { compileSettled } from "./settle.js";
import { answerUnread, bearingOn, unreadRecords } from "./unread.js";
import { verdictOf } from "./verdict.js";

export interface PlanOptions {
  /** Most representatives (default 8). */
  readonly most?: number;
  /** Leave out what takes longest: possible values, count, repairs (default false). */
  readonly brief?: boolean;
  readonly budget?: Budget;
  /** What counting may spend, when it is to end sooner than the rest; asked before each count. */
  readonly counting?: () => Budget;
  /** Look only at the revisions and versions the build names (default false). */
  readonly narrow?: boolean;
  /** Ids of the choices the question is about: no way out gives them up, nor the card or mode they belong to. */
  readonly keep?: readonly string[];
}

/** Steps the planner allows each task when the caller names no budget: ample for every real machine, an end for the others. */
const defaultBudget: Budget = { steps: 400_000 };

export function plan(catalogue: Catalogue, build: Build, options: PlanOptions = {}): Answer | InvalidBuild {
  const asked = resolveBuild(catalogue, build, options);
  if (asked.kind === "misasked") return asked;
  if (asked.kind === "unread") return answerUnread(catalogue, asked.unread);
  return answer(compileSettled(asked.question), options);
}

/** The answer to a compiled question. */
export function answer(compiled: Compiled, options: PlanOptions = {}): Answer {
  const budget = options.budget ?? defaultBudget;
  const counting = options.counting ?? (() => budget);
  const verdict = verdictOf(compiled, budget);
  const stopped = verdict === "stopped";
  const none = verdict === "ruled-out";
  const combinations = none || stopped ? [] : representatives(compiled, options.most ?? 8, budget);
  const counted = options.brief || none ? { count: none ? 0n : 1n, exact: none } : count(compiled.certain, undefined, counting());
  const all = options.brief || none || compiled.unsettled.length === 0 ? counted : count(compiled.possible, undefined, counting());
  const open = options.brief || stopped ? { choices: [], exact: !stopped } : openChoices(compiled, budget);
  const sets = none ? reasonsAndRepairs(compiled.facts, compiled.choices, budget) : undefined;
  const why = sets ? reasonsOf(compiled, sets.reasons, budget) : { reasons: [], complete: true };
  const help =
    sets && !options.brief
      ? repairsOf(compiled, sets.repairs, options.keep ?? [], budget)
      : { repairs: [], complete: none || stopped ? nothingTried : nothingToHelp };
  const unknowns = verdict === "unknown" ? decisive(combinations) : [];
  const told: Verdict = stopped ? "unknown" : verdict;
  return {
    kind: "answer",
    finished: !stopped && open.exact && why.complete && (none ? help.complete.givingUp === "all" : true),
    verdict: told,
    says: stopped
      ? "Not known: the search was stopped before it came to an end."
      : sentence(told, combinations, why.reasons, options.brief ? undefined : { count: String(counted.count), exact: counted.exact }),
    count: String(counted.count),
    exact: counted.exact,
    hanging: String(all.count > counted.count ? all.count - counted.count : 0n),
    hangingExact: counted.exact && all.exact,
    taken: compiled.taken ?? [],
    combinations,
    possible: open.choices,
    reasons: why.reasons,
    reasonsComplete: why.complete,
    repairs: help.repairs,
    repairsComplete: help.complete,
    unknowns,
    unread: unreadRecords(compiled.question.catalogue, bearingOn(compiled)),
    history: disproved(compiled.question),
  };
}

/** Missing facts that decide, those that settle most first. */
function decisive(combinations: readonly Combination[]): UnknownFact[] {
  const bySays = new Map<string, UnknownFact>();
  for (const c of combinations) for (const u of c.unknowns) bySays.set(u.says, { ...u, settles: (bySays.get(u.says)?.settles ?? 0) + 1 });
  return [...bySays.values()].sort((a, b) => b.settles - a.settles);
}
