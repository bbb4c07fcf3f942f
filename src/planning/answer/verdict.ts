// The verdict of a build: what certainly works, works under a condition, hangs on a missing fact, or is ruled out.

import { type Compiled, forbids, withRules } from "../../encoding/index.js";
import { type Budget, decide } from "../../solver/index.js";
import type { Verdict } from "./answer.js";

/** Soft drafts from this level on make a combination conditional; a cosmetic note does not. */
export const conditionalFrom = 2;

/** The problem without soft drafts above the level. */
export function atMostLevel(compiled: Compiled, problem: Compiled["certain"], level: number): Compiled["certain"] {
  return withRules(
    problem,
    compiled.soft.filter((s) => s.level > level).flatMap((s) => forbids(s.when)),
  );
}

/** The verdict, or "stopped" when the budget ended first: never a guess. */
export function verdictOf(compiled: Compiled, budget?: Budget): Verdict | "stopped" {
  const plain = decide(atMostLevel(compiled, compiled.certain, conditionalFrom - 1), budget).kind;
  if (plain === "found") return "workable";
  if (plain === "stopped") return "stopped";
  const conditional = compiled.soft.some((s) => s.level >= conditionalFrom) ? decide(compiled.certain, budget).kind : "none";
  if (conditional === "found") return "conditional";
  if (conditional === "stopped") return "stopped";
  const open = compiled.unsettled.length > 0 ? decide(compiled.possible, budget).kind : "none";
  if (open === "stopped") return "stopped";
  return open === "found" ? "unknown" : "ruled-out";
}

/** The problem whose solutions are the ways that have this verdict at least; undefined for a no, which has none. */
export function problemOf(compiled: Compiled, verdict: Verdict): Compiled["certain"] | undefined {
  switch (verdict) {
    case "workable":
      return atMostLevel(compiled, compiled.certain, conditionalFrom - 1);
    case "conditional":
      return compiled.certain;
    case "unknown":
      return compiled.possible;
    case "ruled-out":
      return undefined;
    default:
      return verdict satisfies never;
  }
}
