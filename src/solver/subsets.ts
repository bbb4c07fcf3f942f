// Which subsets of guarded rules can stand together: one engine, its guards switched on and off. The answers found are kept as
// witnesses, since a solution shows every subset of the rules it keeps to be satisfiable.
import { decideIn } from "./decide.js";
import { Engine } from "./engine.js";
import { holds } from "./holds.js";
import type { Budget, Problem, Rule } from "./problem.js";
import { Purse } from "./search.js";

/** Thrown inside this room when the budget ends in the middle of a proof; the tasks turn it into their result. */
export class Spent extends Error {}

export class Subsets {
  readonly count: number;
  private readonly engine: Engine;
  readonly purse: Purse;
  private readonly kept: boolean[][] = [];
  private readonly groups: (readonly Rule[])[];

  /** `groups[g]` are the rules that stand or fall together under guard g. */
  constructor(problem: Problem, groups: readonly (readonly Rule[])[], budget?: Budget) {
    this.groups = [...groups];
    this.count = groups.length;
    this.purse = new Purse(budget);
    const base = problem.rules.map((rule) => ({ rule, guard: -1 }));
    const guarded = groups.flatMap((rules, guard) => rules.map((rule) => ({ rule, guard })));
    this.engine = new Engine(problem, [...base, ...guarded], groups.length);
  }

  /** Whether the problem with these groups has a solution. */
  stands(groups: readonly number[]): boolean {
    return this.witness(groups) !== undefined;
  }

  /** A subset refused at once costs a step too, or the budget would not end the enumeration. */
  private spend(): void {
    if (!this.purse.spend()) throw new Spent();
  }

  /** The groups that some solution keeps which keeps at least these; undefined when there is none. */
  witness(groups: readonly number[]): readonly boolean[] | undefined {
    const known = this.kept.find((keeps) => groups.every((g) => keeps[g]));
    if (known) return known;
    this.spend();
    this.engine.on.fill(0);
    for (const g of groups) this.engine.on[g] = 1;
    const decision = decideIn(this.engine, this.purse);
    if (decision.kind === "stopped") throw new Spent();
    if (decision.kind === "none") return undefined;
    const keeps = this.groups.map((rules) => rules.every((rule) => holds(rule, decision.solution)));
    this.kept.push(keeps);
    return keeps;
  }
}
