// A session: one problem, clicked through. Selections come and go in any order; possible values stay exact after each, and the
// solutions once found are kept, so that most clicks cost a look through them.

import { ModelCounter } from "../count/model-counter.js";
import { Engine } from "../engine/engine.js";
import type { Budget, Problem, Solution } from "../model/problem.js";
import { orExhausted, StepBudget } from "../model/step-budget.js";
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
  /** Set up with the first task, whose budget pays for it; undefined until that was enough. */
  let engine: Engine | undefined;
  let alive = false;
  const selected = new Map<number, number>();
  const witnesses: Solution[] = [];
  /** Made when first counted; what it looked up serves the counts after later clicks. */
  let counter: ModelCounter | undefined;

  /** Runs a task with the selections taken, if they can all be taken. */
  const within = <T>(budget: Budget | undefined, task: (engine: Engine, steps: StepBudget) => T, impossible: T, stopped: T): T => {
    const steps = new StepBudget(budget);
    return orExhausted(
      () => {
        const ready = engine ?? new Engine(problem, steps);
        if (!engine) alive = ready.wake();
        engine = ready;
        if (!alive) return impossible;
        ready.steps = steps;
        const mark = ready.store.mark();
        const stands = [...selected].every(([variable, value]) => ready.take(variable, value));
        const result = stands ? task(ready, steps) : impossible;
        ready.store.undo(mark);
        return result;
      },
      () => stopped,
    );
  };
  const nothing = problem.variables.map(() => new Set<number>());
  return {
    select: (variable, value) => {
      selected.set(variable, value);
    },
    withdraw: (variable) => {
      selected.delete(variable);
    },
    possible: (budget) =>
      within<Possible>(
        budget,
        (ready, steps) => possibleIn(ready, witnesses, steps),
        { values: nothing, exact: true },
        { values: nothing, exact: false },
      ),
    count: (budget) =>
      within<Count>(
        budget,
        (ready, steps) => {
          const known = witnesses.find((w) => w.every((value, v) => ready.store.has(v, value))) ?? findOne(ready, steps);
          if (typeof known === "string") return { count: 0n, exact: known === "none" };
          counter ??= new ModelCounter(ready);
          const count = counter.count(steps, known);
          return { count, exact: counter.exact };
        },
        { count: 0n, exact: true },
        { count: 0n, exact: false },
      ),
  };
}
