// A changed build put to the rules again: what a way out promises is found by solving, never guessed.

import type { Compiled } from "../../encoding/index.js";
import { resolveBuild } from "../../machine/index.js";
import type { Build } from "../../records/index.js";
import { type Budget, count, decide } from "../../solver/index.js";
import type { Verdict } from "./answer.js";
import { compileSettled } from "./settle.js";
import { verdictOf } from "./verdict.js";

export interface Attempt {
  readonly verdict: Exclude<Verdict, "ruled-out">;
  readonly count: string;
  /** False: at least so many. */
  readonly exact: boolean;
  readonly compiled: Compiled;
}

/** What the changed build comes to; "stopped" when the budget ended first, so that nothing is known of it. */
export function attempt(compiled: Pick<Compiled, "question">, build: Build, budget?: Budget): Attempt | "ruled-out" | "stopped" {
  const again = compileAgain(compiled, build);
  const verdict = again ? verdictOf(again, budget) : "ruled-out";
  if (!again || verdict === "ruled-out" || verdict === "stopped") return verdict as "ruled-out" | "stopped";
  const counted = count(verdict === "unknown" ? again.possible : again.certain, undefined, budget);
  return { verdict, count: String(counted.count), exact: counted.exact, compiled: again };
}

/** True when it is proven that the changed build cannot work, whatever the missing facts turn out to be. */
export function provenHopeless(compiled: Pick<Compiled, "question">, build: Build, budget?: Budget): boolean {
  const again = compileAgain(compiled, build);
  return again !== undefined && decide(again.possible, budget).kind === "none";
}

function compileAgain(compiled: Pick<Compiled, "question">, build: Build): Compiled | undefined {
  const asked = resolveBuild(compiled.question.catalogue, build);
  return asked.kind === "question" ? compileSettled(asked.question) : undefined;
}
