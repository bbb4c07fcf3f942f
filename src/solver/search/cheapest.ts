// Cheapest: the k best solutions, distinct by a projection, under costs that count in order (the first matters most), with proof.
//
//   what a cost must come to at least          the cheapest solution known
//        low |..........?.........?.............| high
//
// A probe asks for a solution at some cost between the two and moves one end or the other, until they meet. The first probes ask at the
// lower end, where little is left to search and a good bound is met outright, and climb with growing strides (Klein, Scholl, "Computing
// Lower Bounds by Destructive Improvement", 1999); with a solution known they halve what is open. A probe has a share of the budget: where
// that is not enough, the hardest costs being those just below the optimum, a higher cost is asked, and when all are too hard the share
// doubles. Values of the best solution known are tried first (Demirovic, Chu, Stuckey, "Solution-Based Phase Saving", 2018), which also
// finds the next best beside the best. What the bound itself knows is in objective.ts.

import { Engine } from "../engine/engine.js";
import { maskOf } from "../engine/propagator.js";
import type { Budget, Problem, Solution } from "../model/problem.js";
import { orExhausted, StepBudget, SubBudget } from "../model/step-budget.js";
import type { Cost, Ranked } from "../model/tasks.js";
import { costOf, Objective } from "./objective.js";
import { findOne, type Strategy } from "./search.js";

export interface CheapestOptions {
  readonly k: number;
  /** Variables that tell answers apart; all when left out. */
  readonly project?: readonly number[];
}

/** Cut by the budget it gives the best found so far, unproven. */
export function cheapest(problem: Problem, costs: readonly Cost[], options: CheapestOptions, budget?: Budget): Ranked {
  const steps = new StepBudget(budget);
  const ranking = orExhausted(
    () => new Ranking(problem, costs, steps),
    () => undefined,
  );
  if (!ranking) return { solutions: [], proven: false };
  const project = options.project ?? problem.variables.map((_, v) => v);
  const solutions: { solution: Solution; cost: readonly number[] }[] = [];
  while (solutions.length < options.k) {
    const { best, proven } = ranking.next(solutions.at(-1)?.cost);
    if (best) solutions.push({ solution: best, cost: costs.map((cost) => costOf(cost, best)) });
    if (!best || !proven) return { solutions, proven };
    ranking.forbid(project, best);
  }
  return { solutions, proven: true };
}

/** Steps of the first probes. */
const firstShare = 64;

interface Found {
  readonly best: Solution | undefined;
  /** Nothing cheaper is left; without a solution, nothing at all. Otherwise the budget ended first. */
  readonly proven: boolean;
}

const differ = (weights: readonly number[]): boolean => weights.some((weight) => weight !== weights[0]);

class Ranking {
  private readonly engine: Engine;
  private readonly objectives: readonly Objective[];
  /** The values of each variable that the costs depend on, those that cost least first. */
  private readonly order: readonly (readonly number[] | undefined)[];
  /** The variables the costs depend on. */
  private readonly priced: readonly number[];
  private alive: boolean;
  /** The last solution found. */
  private guide: Solution | undefined;

  constructor(
    problem: Problem,
    costs: readonly Cost[],
    private readonly steps: StepBudget,
  ) {
    this.engine = new Engine(problem, steps);
    this.objectives = costs.map((cost) => new Objective(this.engine, cost));
    this.alive = this.engine.wake();
    const rows = problem.variables.map((_, v) => this.objectives.flatMap((o) => [o.weights.get(v) ?? []]).filter(differ));
    this.priced = problem.variables.map((_, v) => v).filter((v) => rows[v]!.length > 0);
    this.order = problem.variables.map((variable, v) => {
      if (rows[v]!.length === 0) return undefined;
      const values = Array.from({ length: variable.size }, (_, value) => value);
      return values.sort((a, b) => rows[v]!.map((w) => w[a]! - w[b]!).find((d) => d !== 0) ?? a - b);
    });
  }

  /** The best solution left, none of which is better than `floor`. */
  next(floor: readonly number[] | undefined): Found {
    for (const o of this.objectives) o.bound(Number.POSITIVE_INFINITY);
    let best: Solution | undefined;
    let touching = floor !== undefined;
    for (const [i, objective] of this.objectives.entries()) {
      // While the earlier costs equal those of the solution before, no cheaper one can be left than it was.
      const found = this.minimise(objective, best, touching ? floor![i]! : Number.NEGATIVE_INFINITY);
      if (!found.best || !found.proven) return found;
      best = found.best;
      const least = costOf(objective.cost, best);
      objective.bound(least);
      touching = touching && least === floor![i];
    }
    if (best) return { best, proven: true };
    const any = this.probe(Number.POSITIVE_INFINITY);
    return typeof any === "string" ? { best: undefined, proven: any === "none" } : { best: any, proven: true };
  }

  /** Minimises one cost under the bounds on those before it. */
  private minimise(objective: Objective, known: Solution | undefined, floor: number): Found {
    let best = known;
    let low = Math.max(floor, this.least(objective));
    let stride = 0;
    for (let share = firstShare; ; share *= 2) {
      for (let target = low; ; ) {
        const high = best ? objective.below(costOf(objective.cost, best)) : Number.POSITIVE_INFINITY;
        if (high < low) return { best, proven: true };
        target = Math.min(target, high);
        objective.bound(target);
        const found = this.probe(share);
        if (found === "stopped") return { best, proven: false };
        if (found === "exhausted") {
          if (target === high) break;
          target = best ? objective.between(objective.above(target), high) : high;
        } else if (found === "none") {
          if (target === Number.POSITIVE_INFINITY) return { best, proven: true };
          low = objective.above(target);
          target = objective.above(low, stride);
          stride = 2 * stride + 1;
        } else {
          best = found;
          target = objective.between(low, objective.below(costOf(objective.cost, best)));
          stride = 0;
        }
      }
    }
  }

  /** What a cost must come to at least under the bounds that stand; infinite when nothing is left. */
  private least(objective: Objective): number {
    const { engine } = this;
    if (!this.alive) return Number.POSITIVE_INFINITY;
    const mark = engine.store.mark();
    for (const o of this.objectives) o.schedule();
    const least = engine.propagate() ? objective.least(engine.store) : Number.POSITIVE_INFINITY;
    engine.store.undo(mark);
    return least;
  }

  /** Looks for a solution within the bounds, for so many steps. */
  private probe(share: number): Solution | "none" | "exhausted" | "stopped" {
    if (!this.alive) return "none";
    // A probe refuted at once costs a step too, or the budget would not end the climb.
    if (!this.steps.spend()) return "stopped";
    const { engine } = this;
    const { store } = engine;
    const steps = new SubBudget(this.steps, share);
    const mark = store.mark();
    for (const o of this.objectives) o.schedule();
    const found = engine.propagate() ? findOne(engine, steps, this.strategy(share)) : "none";
    engine.settle(false);
    store.undo(mark);
    if (typeof found !== "string") this.guide = found;
    return found === "stopped" && !steps.empty ? "exhausted" : found;
  }

  /**
   * Two ways to search take turns, since what one of them never finds the other often finds at once: the costs decided first, and the
   * variables in the engine's own order. Values of the last solution come first, then cheap ones; without a solution the second way does
   * not look at costs at all.
   */
  private strategy(share: number): Strategy {
    const { order, guide, priced } = this;
    const { store } = this.engine;
    const free = Math.log2(share / firstShare) % 2 === 1;
    if (free && !guide) return {};
    const value = (v: number): number => {
      if (guide && store.has(v, guide[v]!)) return guide[v]!;
      return order[v]?.find((candidate) => store.has(v, candidate)) ?? store.first(v);
    };
    return free ? { value } : { first: priced, value };
  }

  /** No further solution may agree with this one on all of the variables. */
  forbid(variables: readonly number[], solution: Solution): void {
    const { engine } = this;
    const { sizes } = engine.store;
    const distinct = [...new Set(variables)];
    const masks = distinct.map((v) =>
      maskOf(
        sizes[v]!,
        [...Array(sizes[v]!).keys()].filter((value) => value !== solution[v]),
      ),
    );
    // For good, so with nothing bounded.
    for (const o of this.objectives) o.bound(Number.POSITIVE_INFINITY);
    this.alive = this.alive && engine.clauses.attach(engine.clauses.add(distinct, masks)) && engine.propagate();
  }
}
