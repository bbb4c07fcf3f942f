// Cheapest: the k best solutions, distinct by a projection, under costs that count in order (the first matters most), with proof.
import { Engine } from "./engine.js";
import { costOf, Objective } from "./objective.js";
import type { Budget, Problem, Solution } from "./problem.js";
import { maskOf } from "./propagator.js";
import { findOne, Purse } from "./search.js";
import type { Cost, Ranked } from "./tasks.js";

export { costOf };

export interface CheapestOptions {
  readonly k: number;
  /** Variables that tell answers apart; all when left out. */
  readonly project?: readonly number[];
}

export function cheapest(problem: Problem, costs: readonly Cost[], options: CheapestOptions, budget?: Budget): Ranked {
  const ranking = new Ranking(problem, costs, new Purse(budget));
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

/** Steps of the first attempts. */
const firstRation = 64;

/** A purse within a purse: a search that has spent its ration may go on later, one that emptied the purse may not. */
class Ration extends Purse {
  constructor(
    private readonly whole: Purse,
    private steps: number,
  ) {
    super();
  }
  empty = false;
  override spend(): boolean {
    if (this.steps-- <= 0) return false;
    if (this.whole.spend()) return true;
    this.empty = true;
    return false;
  }
}

interface Found {
  readonly best: Solution | undefined;
  /** Nothing better is left (or nothing at all). */
  readonly proven: boolean;
}

class Ranking {
  private readonly engine: Engine;
  private readonly objectives: readonly Objective[];
  /** The values of each variable, those that cost least first. */
  private readonly order: readonly (readonly number[])[];
  private alive: boolean;

  constructor(
    problem: Problem,
    costs: readonly Cost[],
    private readonly purse: Purse,
  ) {
    this.engine = new Engine(problem);
    this.objectives = costs.map((cost) => new Objective(this.engine, cost));
    this.alive = this.engine.wake();
    const weights = this.objectives.map((o) => o.weightsOf());
    this.order = problem.variables.map((variable, v) => {
      const values = Array.from({ length: variable.size }, (_, value) => value);
      const rows = weights.map((w) => w.get(v)).filter((row) => row !== undefined);
      return values.sort((a, b) => rows.map((w) => w[a]! - w[b]!).find((d) => d !== 0) ?? a - b);
    });
  }

  /** The best solution left, none of which is better than `floor`. Unproven: the budget ended first. */
  next(floor: readonly number[] | undefined): Found {
    let best: Solution | undefined;
    let touching = floor !== undefined;
    for (const o of this.objectives) o.bound(Number.POSITIVE_INFINITY);
    for (const [i, objective] of this.objectives.entries()) {
      const found = this.minimise(objective, best, touching ? floor![i]! : Number.NEGATIVE_INFINITY);
      if (!found.best || !found.proven) return found;
      best = found.best;
      const least = costOf(objective.cost, best);
      objective.bound(least);
      touching = touching && least === floor![i];
    }
    if (best) return { best, proven: true };
    const found = this.probe(Number.POSITIVE_INFINITY);
    return typeof found === "string" ? { best: undefined, proven: found === "none" } : { best: found, proven: true };
  }

  private minimise(objective: Objective, known: Solution | undefined, floor: number): Found {
    const { cost } = objective;
    let best = known;
    let low = Math.max(floor, this.least(objective));
    let step = 0;
    for (let ration = firstRation; ; ration *= 2) {
      for (let target = low; ; ) {
        const high = best ? costOf(cost, best) - 1 : Number.POSITIVE_INFINITY;
        if (high < low) return { best, proven: true };
        target = Math.min(target, high);
        objective.bound(target);
        const found = this.probe(ration);
        if (found === "stopped") return { best, proven: false };
        if (found === "tired") {
          if (target === high) break;
          target = best ? (target + high + 1) >> 1 : high;
        } else if (found === "none") {
          if (target === Number.POSITIVE_INFINITY) return { best, proven: true };
          low = target + 1;
          target = low + step;
          step = 2 * step + 1;
        } else {
          best = found;
          target = (low + costOf(cost, best)) >> 1;
          step = 0;
        }
      }
    }
  }

  /** What a cost must come to at least under the bounds that stand; infinite when nothing is left. */
  private least(objective: Objective): number {
    const { engine } = this;
    if (!this.alive) return Number.POSITIVE_INFINITY;
    const mark = engine.store.mark();
    for (const o of this.objectives) o.rouse();
    const least = engine.propagate() ? objective.least(engine.store) : Number.POSITIVE_INFINITY;
    engine.store.undo(mark);
    return least;
  }

  /** Looks for a solution within the bounds, for so many steps. */
  private probe(ration: number): Solution | "none" | "tired" | "stopped" {
    const { engine, order } = this;
    if (!this.alive) return "none";
    const mark = engine.store.mark();
    const purse = new Ration(this.purse, ration);
    const value = (v: number): number => order[v]!.find((candidate) => engine.store.has(v, candidate))!;
    for (const o of this.objectives) o.rouse();
    const found = engine.propagate() ? findOne(engine, purse, { value }) : "none";
    engine.settle(false);
    engine.store.undo(mark);
    return found === "stopped" && !purse.empty ? "tired" : found;
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
