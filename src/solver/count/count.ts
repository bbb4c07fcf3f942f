// Count: how many solutions there are, exactly (BigInt), or at least how many when the budget ends first.

import { Engine } from "../engine/engine.js";
import type { Budget, Problem } from "../model/problem.js";
import { orExhausted, StepBudget, SubBudget } from "../model/step-budget.js";
import type { Count } from "../model/tasks.js";
import { findOne } from "../search/search.js";
import { DiagramBuilder } from "./diagram-builder.js";
import { ModelCounter } from "./model-counter.js";

export interface CountOptions {
  /** Count distinct assignments of these variables only. */
  readonly project?: readonly number[];
}

export interface CountPerValue {
  readonly exact: boolean;
  /** Per variable and value the solutions that take it; at least so many when not exact. */
  readonly counts: readonly (readonly bigint[])[];
}

export function count(problem: Problem, options: CountOptions = {}, budget?: Budget): Count {
  const steps = new StepBudget(budget);
  return orExhausted(
    () => {
      const engine = new Engine(problem, steps);
      if (!engine.wake()) return { count: 0n, exact: true };
      const known = findOne(engine, steps);
      if (typeof known === "string") return { count: 0n, exact: known === "none" };
      const counter = new ModelCounter(engine, options.project);
      const total = counter.count(steps, known);
      return { count: total, exact: counter.exact };
    },
    () => ({ count: 0n, exact: false }),
  );
}

/** Most steps spent on the diagram before the values are counted one class of interchangeable values at a time. */
const diagramSteps = 5000;

export function countPerValue(problem: Problem, budget: Budget = {}): CountPerValue {
  const sizes = problem.variables.map((v) => v.size);
  const nothing = (exact: boolean): CountPerValue => ({ exact, counts: sizes.map((size) => new Array<bigint>(size).fill(0n)) });
  const steps = new StepBudget(budget);
  return orExhausted(
    () => {
      const engine = new Engine(problem, steps);
      if (!engine.wake()) return nothing(true);
      const diagram = new DiagramBuilder(engine, new SubBudget(steps, diagramSteps)).build();
      return diagram ? { exact: true, counts: diagram.countPerValue(sizes) } : valueByValue(engine, steps);
    },
    () => nothing(false),
  );
}

/** Takes one value after another and counts; interchangeable values have equal counts, and what one count looked up serves the next. */
function valueByValue(engine: Engine, steps: StepBudget): CountPerValue {
  const { store } = engine;
  const counter = new ModelCounter(engine);
  const valueClasses = counter.valueClasses();
  let exact = true;
  const counts = store.sizes.map((size, v) => {
    const row = new Array<bigint>(size).fill(0n);
    const known = new Map<number, bigint>();
    for (const value of store.values(v)) {
      const valueClass = valueClasses[v]![value]!;
      if (!known.has(valueClass)) {
        const mark = store.mark();
        const solution = engine.take(v, value) ? findOne(engine, steps) : "none";
        known.set(valueClass, typeof solution === "string" ? 0n : counter.count(steps, solution));
        exact = exact && solution !== "stopped" && (solution === "none" || counter.exact);
        store.undo(mark);
      }
      row[value] = known.get(valueClass)!;
    }
    return row;
  });
  return { exact, counts };
}
