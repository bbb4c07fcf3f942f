// A session: one problem, clicked through. Selections come and go in any order; possible values stay exact after each, and the
// solutions once found are kept, so that most clicks cost a look through them.

import { Tally } from "../count/tally.js";
import { Engine } from "../engine/engine.js";
import type { Budget, Problem, Solution } from "../model/problem.js";
import { StepBudget } from "../model/step-budget.js";
import type { Count, Possible } from "../model/tasks.js";
import { possibleIn } from "./possible.js";
import { findOne } from "./search.js";

export interface Session {
  /** Fixes a variable; an earlier selection for it is replaced. */
  select(variable: number, value: number): void;
  withdraw(variable: number): void;
  /** What can still be had, the selections standing. With selections that contradict each other: nothing. */
  possible(budget?: Budget): Possible;
  count(budget?: Budget): Count;
}

export function openSession(problem: Problem): Session {
  const engine = new Engine(problem);
  const alive = engine.wake();
  const selected = new Map<number, number>();
  const witnesses: Solution[] = [];
  /** Made when first counted; what it looked up serves the counts after later clicks. */
  let tally: Tally | undefined;

  /** Runs a task with the selections taken, if they can all be taken. */
  const within = <T>(task: () => T, otherwise: T): T => {
    if (!alive) return otherwise;
    const mark = engine.store.mark();
    const stands = [...selected].every(([variable, value]) => engine.take(variable, value));
    const result = stands ? task() : otherwise;
    engine.store.undo(mark);
    return result;
  };
  return {
    select: (variable, value) => {
      selected.set(variable, value);
    },
    withdraw: (variable) => {
      selected.delete(variable);
    },
    possible: (budget) =>
      within<Possible>(() => possibleIn(engine, witnesses, new StepBudget(budget)), {
        values: problem.variables.map(() => new Set<number>()),
        exact: true,
      }),
    count: (budget) =>
      within<Count>(
        () => {
          const steps = new StepBudget(budget);
          const known = witnesses.find((w) => w.every((value, v) => engine.store.has(v, value))) ?? findOne(engine, steps);
          if (typeof known === "string") return { count: 0n, exact: known === "none" };
          tally ??= new Tally(engine);
          const count = tally.count(steps, known);
          return { count, exact: tally.exact };
        },
        { count: 0n, exact: true },
      ),
  };
}
