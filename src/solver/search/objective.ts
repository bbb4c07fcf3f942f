// A cost made ready to be minimised: a sum with an upper bound that the search moves, what it must come to at least, and which values are
// cheap. Where the problem has variables differ, the bound is that of an assignment as well.

import { Assignment, type Rivals } from "../constraints/assignment.js";
import { Linear, weightsOf } from "../constraints/linear.js";
import type { Engine } from "../engine/engine.js";
import type { Store } from "../engine/store.js";
import type { Problem, Solution } from "../model/problem.js";
import type { Cost } from "../model/tasks.js";

export function costOf(cost: Cost, solution: Solution): number {
  return cost.terms.reduce((sum, { variable, weights }) => sum + (weights[solution[variable]!] ?? 0), 0);
}

/** Costs that are not whole numbers are told apart down to this. */
const finest = 2 ** -20;

/** Sums of numbers that are not whole round: a difference of so small a part of a unit is none. */
const slip = 1e-6;

export class Objective {
  /** For each variable the cost depends on, what each value adds. */
  readonly weights: ReadonlyMap<number, readonly number[]>;
  private readonly sum: Linear;
  private readonly assignment: Assignment | undefined;
  /** Every cost a solution can have is `offset` and some number of `unit`s. */
  private readonly unit: number;
  private readonly offset: number = 0;

  constructor(
    private readonly engine: Engine,
    readonly cost: Cost,
  ) {
    this.weights = weightsOf(cost.terms, engine.store.sizes);
    this.sum = Linear.of(cost.terms, engine.store.sizes);
    engine.add(this.sum);
    const { weights } = this;
    const steps: number[] = [];
    for (const row of weights.values()) {
      this.offset += row[0] ?? 0;
      for (const weight of row) steps.push(Math.abs(weight - row[0]!));
    }
    this.unit = steps.every(Number.isInteger) && Number.isInteger(this.offset) ? steps.reduce(commonDivisor, 0) || 1 : finest;
    const rivals = rivalsOf(engine.problem, weights);
    if (!rivals) return;
    this.assignment = new Assignment(rivals, engine.store.sizes);
    engine.add(this.assignment);
  }

  /** Bounds the cost, once it is roused. */
  bound(max: number): void {
    this.sum.max = max + slip * this.unit;
    if (this.assignment) this.assignment.max = this.sum.max;
  }

  /** To be propagated: the bound was moved. */
  rouse(): void {
    this.engine.rouse(this.sum);
    if (this.assignment) this.engine.rouse(this.assignment);
  }

  /** What the cost must come to at least as the domains stand; infinite when they are found to hold no solution. */
  least(store: Store): number {
    const alone = this.sum.floor(store);
    const least = this.assignment ? Math.max(alone, this.assignment.least(store)) : alone;
    return this.onGrid(least, Math.ceil, -slip);
  }

  /** The highest cost below this one, and the lowest above. */
  below(cost: number): number {
    return cost - this.unit;
  }
  above(cost: number, steps = 1): number {
    return cost + steps * this.unit;
  }

  /** Half way between two costs, the lower one when they are neighbours. */
  between(low: number, high: number): number {
    return Math.max(low, this.onGrid((low + high) / 2, Math.floor, slip));
  }

  private onGrid(cost: number, round: (x: number) => number, slack: number): number {
    return this.offset + round((cost - this.offset) / this.unit + slack) * this.unit;
  }
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

/** Cost variables that must differ, the largest rules first; the others each alone. Undefined when no two of them must. */
function rivalsOf(problem: Problem, weights: ReadonlyMap<number, readonly number[]>): Rivals[] | undefined {
  const out: Rivals[] = [];
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
