// About how many solutions there are, from random dives: each goes down from the root, takes one of the values that survive at random, and
// multiplies how many those were; a dive that ends in a solution counts that product, one that fails counts nothing. For a fixed
// number of dives the mean is unbiased (Knuth, "Estimating the Efficiency of Backtrack Programs", Mathematics of Computation 29, 1975);
// a dive that the budget cuts is left out, and longer ones are cut more often, so that the mean of a few can be off. An estimate proves
// nothing: it stands beside "at least", never in its place. The same problem, budget and seed give the same estimate.

import { Engine } from "../engine/engine.js";
import type { Budget, Problem } from "../model/problem.js";
import { orExhausted, StepBudget } from "../model/step-budget.js";

export interface Estimate {
  /** The mean over the dives. */
  readonly mean: number;
  /** The standard error of the mean; undefined when there are too few dives to tell. */
  readonly spread: number | undefined;
  /** Dives that ended, in a solution or not. */
  readonly dives: number;
}

export interface EstimateOptions {
  readonly dives?: number;
  readonly seed?: number;
}

export function estimateCount(problem: Problem, options: EstimateOptions = {}, budget?: Budget): Estimate {
  const steps = new StepBudget(budget);
  const found: number[] = [];
  const random = randomFrom(options.seed ?? 1);
  return orExhausted(
    () => {
      const engine = new Engine(problem, steps);
      const awake = engine.wake();
      for (let i = 0; i < (options.dives ?? 400); i++) {
        const mark = engine.store.mark();
        const weight = awake ? dive(engine, steps, random) : 0;
        engine.store.undo(mark);
        // A dive cut short says nothing and is left out.
        if (weight === undefined) break;
        found.push(weight);
      }
      return summary(found);
    },
    () => summary(found),
  );
}

/** The product of one dive; 0 when it fails, undefined when the budget ends in its middle. */
function dive(engine: Engine, steps: StepBudget, random: () => number): number | undefined {
  const { store } = engine;
  let weight = 1;
  for (let variable = smallest(engine); variable >= 0; variable = smallest(engine)) {
    if (!steps.spend()) return undefined;
    const open = store.values(variable).filter((value) => {
      const mark = store.mark();
      const survives = engine.take(variable, value);
      store.undo(mark);
      return survives;
    });
    const value = open[Math.floor(random() * open.length)];
    if (value === undefined || !engine.take(variable, value)) return 0;
    weight *= open.length;
  }
  return weight;
}

/** The undecided variable with the fewest values; -1 when all are decided. */
function smallest({ store, count }: Engine): number {
  let best = -1;
  for (let v = 0; v < count; v++) {
    if (store.size(v) > 1 && (best < 0 || store.size(v) < store.size(best))) best = v;
  }
  return best;
}

function summary(found: readonly number[]): Estimate {
  const dives = found.length;
  const mean = found.reduce((sum, one) => sum + one, 0) / Math.max(1, dives);
  const squares = found.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  return { mean, spread: dives < 2 ? undefined : Math.sqrt(squares / (dives - 1) / dives), dives };
}

/** Numbers from 0 to below 1 that look random and are the same for the same seed (a counter mixed by multiplications and shifts). */
function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
