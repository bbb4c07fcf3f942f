// A session: one problem, clicked through. Selections come and go in any order; possible values stay exact after each, and the
// solutions once found are kept, so that most clicks cost a look through them.
import { count as countOf } from "./count.js";
import { Engine } from "./engine.js";
import { possibleIn } from "./possible.js";
import type { Budget, Problem, Solution } from "./problem.js";
import { Purse } from "./search.js";
import type { Count, Possible } from "./tasks.js";

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
  const nothing = (): Possible => ({ values: problem.variables.map(() => new Set<number>()), exact: true });
  return {
    select: (variable, value) => {
      selected.set(variable, value);
    },
    withdraw: (variable) => {
      selected.delete(variable);
    },
    possible: (budget) => {
      if (!alive) return nothing();
      const mark = engine.store.mark();
      const stands = [...selected].every(([variable, value]) => engine.take(variable, value));
      const result = stands ? possibleIn(engine, witnesses, new Purse(budget)) : nothing();
      engine.store.undo(mark);
      return result;
    },
    count: (budget) =>
      countOf(
        {
          variables: problem.variables,
          rules: [...problem.rules, ...[...selected].map(([variable, value]) => ({ kind: "unary" as const, variable, values: [value] }))],
        },
        {},
        budget,
      ),
  };
}
