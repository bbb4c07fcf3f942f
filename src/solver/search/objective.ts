// A cost made ready to be minimised: a sum with an upper bound that the search moves, what it must come to at least, and which values are
// cheap. Where the problem has variables differ, the bound is that of an assignment as well.

import { type AllDifferentGroup, MinimumCostAssignment } from "../constraints/assignment.js";
import { Linear, weightsOf } from "../constraints/linear.js";
import type { Engine } from "../engine/engine.js";
import type { Store } from "../engine/store.js";
import { furthest, reach } from "../model/exact.js";
import type { Problem, Solution } from "../model/problem.js";
import type { Cost } from "../model/tasks.js";

export function costOf(cost: Cost, solution: Solution): number {
  return cost.terms.reduce((sum, { variable, weights }) => sum + (weights[solution[variable]!] ?? 0), 0);
}

export class Objective {
  /** For each variable the cost depends on, what each value adds. */
  readonly weights: ReadonlyMap<number, readonly number[]>;
  private readonly sum: Linear;
  private readonly assignment: MinimumCostAssignment | undefined;
  /** Every cost a solution can have is `offset` and some number of `unit`s, and none is above `most`. */
  private readonly unit: number;
  private readonly offset: number = 0;
  private readonly most: number;

  constructor(
    private readonly engine: Engine,
    readonly cost: Cost,
  ) {
    this.weights = weightsOf(cost.terms, engine.store.sizes);
    this.sum = Linear.of(cost.terms, engine.store.sizes);
    engine.add(this.sum);
    const { weights } = this;
    this.most = reach(cost.terms);
    let unit = 0;
    for (const row of weights.values()) {
      this.offset += row[0] ?? 0;
      for (const weight of row) unit = commonDivisor(Math.abs(weight - row[0]!), unit);
    }
    // Beyond half the range differences of weights may not be exact; every cost is a whole number all the same.
    this.unit = this.most > furthest / 4 ? 1 : unit || 1;
    const groups = groupsOf(engine.problem, weights);
    if (!groups || !MinimumCostAssignment.fits(groups)) return;
    this.assignment = new MinimumCostAssignment(groups, engine.store.sizes);
    engine.add(this.assignment);
  }

  /** Bounds the cost, once it is scheduled. */
  bound(max: number): void {
    this.sum.max = max;
    if (this.assignment) this.assignment.max = this.sum.max;
  }

  /** To be propagated: the bound was moved. */
  schedule(): void {
    this.engine.schedule(this.sum);
    if (this.assignment) this.engine.schedule(this.assignment);
  }

  /** What the cost must come to at least as the domains stand; infinite when they are found to hold no solution. */
  least(store: Store): number {
    const alone = this.sum.floor(store);
    const least = this.assignment ? Math.max(alone, this.assignment.least(store)) : alone;
    return this.onGrid(least, Math.ceil);
  }

  /** The highest cost below this one, and the lowest above. */
  below(cost: number): number {
    return cost - this.unit;
  }
  above(cost: number, steps = 1): number {
    const above = cost + steps * this.unit;
    return above > this.most ? Number.POSITIVE_INFINITY : above;
  }

  /** Half way between two costs, the lower one when they are neighbours. */
  between(low: number, high: number): number {
    return Math.max(low, this.onGrid(low + Math.floor((high - low) / 2), Math.floor));
  }

  private onGrid(cost: number, round: (x: number) => number): number {
    return this.unit === 1 ? cost : this.offset + round((cost - this.offset) / this.unit) * this.unit;
  }
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

/** Cost variables that must differ, the largest rules first; the others each alone. Undefined when no two of them must. */
function groupsOf(problem: Problem, weights: ReadonlyMap<number, readonly number[]>): AllDifferentGroup[] | undefined {
  const out: AllDifferentGroup[] = [];
  const taken = new Set<number>();
  const add = (variables: readonly number[], except: readonly number[]) => {
    const rows = variables.map((v) => weights.get(v) ?? new Array<number>(problem.variables[v]!.size).fill(0));
    out.push({ variables, except, weights: rows });
    for (const v of variables) taken.add(v);
  };
  const different = problem.rules.filter((rule) => rule.kind === "allDifferent").sort((a, b) => b.variables.length - a.variables.length);
  for (const rule of different) {
    const variables = [...new Set(rule.variables)];
    if (variables.length < rule.variables.length || variables.some((v) => taken.has(v))) continue;
    if (variables.filter((v) => weights.has(v)).length > 1) add(variables, rule.except ?? []);
  }
  if (out.length === 0) return undefined;
  for (const v of weights.keys()) if (!taken.has(v)) add([v], [...Array(problem.variables[v]!.size).keys()]);
  return out;
}
