// Possible values: which values some solution takes. The base path is kept witnesses: a value that a known solution uses is possible for
// free. For the rest a witness is changed a little: the one variable takes the value, and whoever had it takes the old one in exchange.
// Only where that breaks a rule is a solution searched for, the search liking values that no witness has yet. So the choices offered are
// complete and free of dead ends (Amilhastre, Fargier, Marquis, "Consistency Restoration and Explanations in Dynamic CSPs", 2002; Hadzic
// and others, "Fast Backtrack-Free Product Configuration", 2004).

import { Engine } from "../engine/engine.js";
import type { Budget, Problem, Solution } from "../model/problem.js";
import { orExhausted, StepBudget } from "../model/step-budget.js";
import type { Possible } from "../model/tasks.js";
import { findOne } from "./search.js";

export function possible(problem: Problem, budget?: Budget): Possible {
  const steps = new StepBudget(budget);
  const nothing = (exact: boolean): Possible => ({ values: problem.variables.map(() => new Set<number>()), exact });
  return orExhausted(
    () => {
      const engine = new Engine(problem, steps);
      return engine.wake() ? possibleIn(engine, [], steps) : nothing(true);
    },
    () => nothing(false),
  );
}

/** How many of the latest witnesses are tried for a small change. */
const tries = 8;

/** For an engine already propagated; solutions found are added to `witnesses`, which must all solve the problem. */
export function possibleIn(engine: Engine, witnesses: Solution[], steps: StepBudget): Possible {
  const { store } = engine;
  const covered = engine.problem.variables.map(() => new Set<number>());
  const standing: Solution[] = [];
  const keep = (solution: Solution) => {
    standing.push(solution);
    solution.forEach((value, v) => {
      covered[v]!.add(value);
    });
  };
  for (const witness of witnesses) if (witness.every((value, v) => store.has(v, value))) keep(witness);
  const fresh = (v: number): number => store.values(v).find((value) => !covered[v]!.has(value)) ?? store.first(v);
  for (let v = 0; v < engine.count; v++) {
    for (const value of store.values(v)) {
      if (covered[v]!.has(value)) continue;
      const found = changed(engine, standing, v, value) ?? searched(engine, v, value, steps, fresh);
      if (found === "stopped") return { values: covered, exact: false };
      if (found === "none") continue;
      witnesses.push(found);
      keep(found);
    }
  }
  return { values: covered, exact: true };
}

function searched(
  engine: Engine,
  variable: number,
  value: number,
  steps: StepBudget,
  pick: (v: number) => number,
): Solution | "none" | "stopped" {
  const mark = engine.store.mark();
  const found = engine.take(variable, value) ? findOne(engine, steps, { value: pick }) : "none";
  engine.store.undo(mark);
  return found;
}

/** A known solution with one value changed, or two exchanged. */
function changed(engine: Engine, witnesses: readonly Solution[], variable: number, value: number): Solution | undefined {
  for (let i = witnesses.length - 1; i >= Math.max(0, witnesses.length - tries); i--) {
    const solution = [...witnesses[i]!];
    const old = solution[variable]!;
    solution[variable] = value;
    if (engine.accepts(variable, solution)) return solution;
    for (const other of engine.allDifferentWith(variable)) {
      if (solution[other] !== value || old >= engine.store.sizes[other]! || !engine.store.has(other, old)) continue;
      solution[other] = old;
      if (engine.accepts(variable, solution) && engine.accepts(other, solution)) return solution;
      solution[other] = value;
    }
  }
  return undefined;
}
