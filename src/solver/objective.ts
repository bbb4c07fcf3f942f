// A cost made ready to be minimised: a sum with an upper bound that the search moves, what it must come to at least, and which values are
// cheap. Where the problem has variables differ, the bound is that of an assignment as well.
import type { Engine } from "./engine.js";
import type { Problem, Solution } from "./problem.js";
import { Assignment, type Rivals } from "./rules/assignment.js";
import { Linear } from "./rules/linear.js";
import type { Store } from "./store.js";
import type { Cost } from "./tasks.js";

export function costOf(cost: Cost, solution: Solution): number {
  return cost.terms.reduce((sum, { variable, weights }) => sum + (weights[solution[variable]!] ?? 0), 0);
}

export class Objective {
  private readonly sum: Linear;
  private readonly assignment: Assignment | undefined;

  constructor(
    private readonly engine: Engine,
    readonly cost: Cost,
  ) {
    this.sum = Linear.of(cost.terms, engine.store.sizes);
    engine.add(this.sum);
    const rivals = rivalsOf(engine.problem, this.weightsOf());
    if (!rivals) return;
    this.assignment = new Assignment(rivals, engine.store.sizes);
    engine.add(this.assignment);
  }

  /** The weights of each variable's values, of those the cost depends on. */
  weightsOf(): ReadonlyMap<number, readonly number[]> {
    return new Map(
      this.sum.variables.map((v) => [v, Array.from({ length: this.engine.store.sizes[v]! }, (_, value) => this.sum.trait(v, value))]),
    );
  }

  /** Bounds the cost, once it is roused. */
  bound(max: number): void {
    this.sum.max = max;
    if (this.assignment) this.assignment.max = max;
  }

  /** To be propagated: the bound was moved. */
  rouse(): void {
    this.engine.rouse(this.sum);
    if (this.assignment) this.engine.rouse(this.assignment);
  }

  /** What the cost must come to at least as the domains stand; infinite when they are found to hold no solution. */
  least(store: Store): number {
    const alone = this.sum.floor(store);
    return this.assignment ? Math.max(alone, Math.ceil(this.assignment.least(store) - 1e-6)) : alone;
  }
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
