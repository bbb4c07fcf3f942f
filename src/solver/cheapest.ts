// Cheapest: the k best solutions, distinct by a projection, under costs that count in order (the first matters most), with proof.
// Branch and bound, one cost after another: after each solution only strictly cheaper ones are looked for; when none is left, the last one
// is optimal, and the next cost is minimised without giving the earlier ones up. Then its projection is forbidden and the next best found.
import { Engine } from "./engine.js";
import type { Budget, Problem, Solution } from "./problem.js";
import { maskOf } from "./propagator.js";
import { Linear } from "./rules/linear.js";
import { findOne, Purse } from "./search.js";
import type { Cost, Ranked } from "./tasks.js";

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
    const best = ranking.next(solutions.at(-1)?.cost);
    if (typeof best === "string") return { solutions, proven: best === "none" };
    solutions.push({ solution: best, cost: costs.map((cost) => costOf(cost, best)) });
    ranking.forbid(project, best);
  }
  return { solutions, proven: true };
}

export function costOf(cost: Cost, solution: Solution): number {
  return cost.terms.reduce((sum, { variable, weights }) => sum + (weights[solution[variable]!] ?? 0), 0);
}

class Ranking {
  private readonly engine: Engine;
  /** One sum a cost, its upper bound moved as better solutions are found. */
  private readonly bounds: readonly Linear[];
  /** The values of each variable, those that cost least first. */
  private readonly order: readonly (readonly number[])[];

  constructor(
    problem: Problem,
    private readonly costs: readonly Cost[],
    private readonly purse: Purse,
  ) {
    this.engine = new Engine(problem);
    this.bounds = costs.map((cost) => Linear.of(cost.terms, this.engine.store.sizes));
    for (const bound of this.bounds) this.engine.add(bound);
    this.order = problem.variables.map((variable, v) => {
      const weights = costs.map((cost) => {
        const terms = cost.terms.filter((term) => term.variable === v);
        return (value: number) => terms.reduce((sum, term) => sum + (term.weights[value] ?? 0), 0);
      });
      const values = Array.from({ length: variable.size }, (_, value) => value);
      return values.sort((a, b) => weights.map((w) => w(a) - w(b)).find((d) => d !== 0) ?? a - b);
    });
  }

  /** The best solution left, none of which is better than `floor`. */
  next(floor: readonly number[] | undefined): Solution | "none" | "stopped" {
    for (const bound of this.bounds) bound.max = Number.POSITIVE_INFINITY;
    const first = this.find();
    if (typeof first === "string") return first;
    let best = first;
    let touching = floor !== undefined;
    for (const [i, cost] of this.costs.entries()) {
      const bound = this.bounds[i]!;
      // While the earlier costs equal those of the solution before, no cheaper one can be left than it was.
      const least = touching ? floor![i]! : Number.NEGATIVE_INFINITY;
      while (costOf(cost, best) > least) {
        bound.max = costOf(cost, best) - 1;
        const better = this.find();
        if (better === "stopped") return better;
        if (better === "none") break;
        best = better;
      }
      bound.max = costOf(cost, best);
      touching = touching && bound.max === floor![i];
    }
    return best;
  }

  /** No further solution may agree with this one on all of the variables. */
  forbid(variables: readonly number[], solution: Solution): void {
    const { sizes } = this.engine.store;
    const distinct = [...new Set(variables)];
    const masks = distinct.map((v) =>
      maskOf(
        sizes[v]!,
        [...Array(sizes[v]!).keys()].filter((value) => value !== solution[v]),
      ),
    );
    this.engine.clauses.add(distinct, masks);
  }

  private find(): Solution | "none" | "stopped" {
    const { engine, order } = this;
    const mark = engine.store.mark();
    const value = (v: number): number => order[v]!.find((candidate) => engine.store.has(v, candidate))!;
    const found = engine.wake() ? findOne(engine, this.purse, { value }) : "none";
    engine.store.undo(mark);
    return found;
  }
}
