// Which subsets of guarded rules can stand together: one engine, its guards switched on and off. The answers found are kept as
// witnesses, since a solution shows every subset of the rules it keeps to be satisfiable.
import { Engine } from "./engine.js";
import { holds } from "./holds.js";
import type { Budget, Problem, Rule, Solution } from "./problem.js";
import { maskOf } from "./propagator.js";
import { findOne, Purse } from "./search.js";

/** Thrown inside this room when the budget ends in the middle of a proof; the tasks turn it into their result. */
export class Spent extends Error {}

export class Subsets {
  readonly count: number;
  private readonly engine: Engine;
  readonly purse: Purse;
  private readonly kept: boolean[][] = [];
  private readonly groups: (readonly Rule[])[];

  /** What a group of unary rules leaves of the domains; undefined for groups of other rules, which hang on a guard. */
  private readonly narrows: (readonly { readonly variable: number; readonly mask: Int32Array }[] | undefined)[];
  private readonly refused: (readonly number[])[] = [];
  /** With no guarded group the rest is propagated once for all subsets. */
  private readonly steady: boolean;
  private readonly alive: boolean;

  /** `groups[g]` are the rules that stand or fall together under guard g. */
  constructor(problem: Problem, groups: readonly (readonly Rule[])[], budget?: Budget) {
    this.groups = [...groups];
    this.count = groups.length;
    this.purse = new Purse(budget);
    this.narrows = groups.map((rules) =>
      rules.every((rule) => rule.kind === "unary")
        ? rules.map((rule) => ({ variable: rule.variable, mask: maskOf(problem.variables[rule.variable]!.size, rule.values) }))
        : undefined,
    );
    const base = problem.rules.map((rule) => ({ rule, guard: -1 }));
    const guarded = groups.flatMap((rules, guard) => (this.narrows[guard] ? [] : rules.map((rule) => ({ rule, guard }))));
    this.engine = new Engine(problem, [...base, ...guarded], groups.length);
    this.steady = guarded.length === 0;
    this.alive = !this.steady || this.engine.wake();
  }

  /** Whether the problem with these groups has a solution. */
  stands(groups: readonly number[]): boolean {
    return this.witness(groups) !== undefined;
  }

  /** Remembers that these groups cannot stand together. */
  refuse(groups: readonly number[]): void {
    this.refused.push(groups);
  }

  /** The groups that some solution keeps which keeps at least these; undefined when there is none. */
  witness(groups: readonly number[]): readonly boolean[] | undefined {
    const known = this.kept.find((keeps) => groups.every((g) => keeps[g]));
    if (known) return known;
    if (!this.alive || this.refused.some((core) => core.every((g) => groups.includes(g)))) return undefined;
    // A subset refused at once costs a step too, or the budget would not end the enumeration.
    if (!this.purse.spend()) throw new Spent();
    const solution = this.solve(groups);
    if (solution === "stopped") throw new Spent();
    if (solution === "none") return undefined;
    const keeps = this.groups.map((rules) => rules.every((rule) => holds(rule, solution)));
    this.kept.push(keeps);
    return keeps;
  }

  private solve(groups: readonly number[]): Solution | "none" | "stopped" {
    const { engine } = this;
    const mark = engine.store.mark();
    engine.on.fill(0);
    let stands = true;
    for (const g of groups) {
      engine.on[g] = 1;
      for (const { variable, mask } of this.narrows[g] ?? []) stands = stands && engine.store.keepAll(variable, mask);
    }
    stands = this.steady ? engine.settle(stands) : stands && engine.wake();
    const found = stands ? findOne(engine, this.purse) : "none";
    engine.settle(false);
    engine.store.undo(mark);
    return found;
  }
}
