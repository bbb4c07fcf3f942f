// Which subsets of groups of rules can stand together: one engine, moved from subset to subset. Rules made of literals are taken in by
// narrowing domains, so that going from one subset to the next costs only the groups that differ; other rules hang on selectors.
// The answers found are kept as witnesses, since a solution shows every subset of the rules it keeps to be satisfiable.

import { type Bits, bitsOf, drop, has, membersOf, noBits, put, within } from "../engine/bits.js";
import { Engine } from "../engine/engine.js";
import { maskOf } from "../engine/propagator.js";
import { holds } from "../model/holds.js";
import type { Budget, Constraint, Literal, Problem, Solution } from "../model/problem.js";
import { BudgetExhausted, StepBudget, SubBudget } from "../model/step-budget.js";
import { findOne, type Strategy, searchBriefly } from "../search/search.js";

/** Failures before a hasty look gives way to a search. */
const failures = 6;

interface Narrowing {
  readonly variable: number;
  readonly mask: Int32Array;
}

export class Subsets {
  readonly count: number;
  readonly steps: StepBudget;
  private readonly engine: Engine;
  private readonly strategy: Strategy;
  /** What taking a group in leaves of the domains. */
  private readonly narrowings: readonly (readonly Narrowing[])[];
  /** No group hangs on a selector: the rest is propagated once for all subsets. */
  private readonly steady: boolean;
  private readonly alive: boolean;
  /** The groups taken in, step by step, and where to step back to. */
  private readonly path: { readonly groups: Bits; readonly mark: number }[] = [];
  private readonly here: Bits;
  private readonly root: number;
  private readonly kept: Bits[] = [];
  private readonly refused: Bits[] = [];
  private last: Solution | undefined;

  /** `groups[g]` are the rules that stand or fall together. */
  constructor(
    problem: Problem,
    private readonly groups: readonly (readonly Constraint[])[],
    budget?: Budget,
  ) {
    this.count = groups.length;
    this.steps = new StepBudget(budget);
    this.here = noBits(groups.length);
    this.steady = groups.every((rules) => rules.every((rule) => literalsOf(rule) !== undefined));
    const made = this.steady ? bySwitches(problem, groups, this.steps) : bySelectors(problem, groups, this.steps);
    this.narrowings = made.narrowings;
    this.engine = made.engine;
    this.alive = !this.steady || this.engine.wake();
    this.root = this.engine.store.mark();
    const value = valueOrder(this.engine, this.narrowings, () => this.last);
    // Switches follow from the rest, so they are left to the end.
    this.strategy = this.engine.count > problem.variables.length ? { value, first: problem.variables.map((_, v) => v) } : { value };
  }

  /** Whether the problem with these groups has a solution; what is known already is not asked again. */
  stands(groups: readonly number[]): boolean {
    const set = bitsOf(this.count, groups);
    if (this.kept.some((keeps) => within(set, keeps))) return true;
    if (this.refused.some((core) => within(core, set))) return false;
    const keeps = this.witness(set) as Bits | undefined;
    (keeps ? this.kept : this.refused).push(keeps ?? set);
    return keeps !== undefined;
  }

  /**
   * The groups that some solution keeps which keeps at least these; undefined when there is none. `base`: a part of them that the next
   * questions will share. With a share of the budget the answer may be "exhausted": too hard for so many.
   */
  witness(set: Bits, base = set, share = Number.POSITIVE_INFINITY): Bits | undefined | "exhausted" {
    // A subset refused at once costs a step too, or the budget would not end the enumeration.
    if (!this.steps.spend()) throw new BudgetExhausted();
    if (!this.alive) return undefined;
    const steps = new SubBudget(this.steps, share);
    const solution = this.solve(set, base, steps);
    if (solution === "stopped" && steps.empty) throw new BudgetExhausted();
    if (solution === "stopped") return "exhausted";
    if (solution === "none") return undefined;
    this.last = solution;
    return bitsOf(
      this.count,
      this.groups.flatMap((rules, g) => (has(set, g) || rules.every((rule) => holds(rule, solution)) ? [g] : [])),
    );
  }

  /** A hasty look first: near a solution known before, the next one is mostly found without the dearer rules. */
  private solve(set: Bits, base: Bits, steps: StepBudget): Solution | "none" | "stopped" {
    const { engine, strategy } = this;
    engine.hasty = this.steady;
    const reached = (base === set || this.reach(base)) && this.reach(set);
    const first = !reached ? "none" : this.steady ? searchBriefly(engine, steps, strategy, failures) : "restart";
    engine.hasty = false;
    engine.settle(false);
    if (first !== "restart") return first;
    const mark = engine.store.mark();
    const found = !this.steady || engine.catchUp() ? findOne(engine, steps, strategy) : "none";
    engine.store.undo(mark);
    return found;
  }

  /** Takes in exactly these groups; false when propagation alone refutes them. */
  private reach(set: Bits): boolean {
    const { engine, path, here } = this;
    while (path.length > 0 && !(this.steady && within(here, set))) this.back();
    if (path.length === 0) engine.store.undo(this.root);
    const missing = set.map((word, w) => word & ~here[w]!);
    path.push({ groups: missing, mark: engine.store.mark() });
    let stands = true;
    for (const group of membersOf(missing)) {
      put(here, group);
      if (!this.steady) engine.on[group] = 1;
      stands = stands && this.narrowings[group]!.every(({ variable, mask }) => engine.store.keepAll(variable, mask));
    }
    stands = this.steady ? engine.settle(stands) : stands && engine.wake();
    if (!stands) {
      engine.settle(false);
      this.back();
    }
    return stands;
  }

  private back(): void {
    const { groups, mark } = this.path.pop()!;
    for (const group of membersOf(groups)) {
      drop(this.here, group);
      if (!this.steady) this.engine.on[group] = 0;
    }
    this.engine.store.undo(mark);
  }
}

/** A rule as a clause, where it is one. */
function literalsOf(rule: Constraint): { readonly literals: readonly Literal[]; readonly denied: boolean } | undefined {
  if (rule.kind === "unary") return { literals: [rule], denied: false };
  if (rule.kind === "clause" || rule.kind === "forbid") return { literals: rule.literals, denied: rule.kind === "forbid" };
  return undefined;
}

interface Made {
  readonly engine: Engine;
  readonly narrowings: readonly (readonly Narrowing[])[];
}

/** Unary rules narrow by themselves; a clause gets a switch, a variable with the values on and off, as one more literal. */
function bySwitches(problem: Problem, groups: readonly (readonly Constraint[])[], steps: StepBudget): Made {
  const variables = [...problem.variables];
  const rules = [...problem.rules];
  const narrowings = groups.map((group) => {
    const own = unaryOf(problem, group);
    const clauses = group.filter((rule) => rule.kind !== "unary");
    if (clauses.length === 0) return own;
    const variable = variables.push({ name: "switch", size: 2 }) - 1;
    for (const rule of clauses) {
      const { literals, denied } = literalsOf(rule)!;
      rules.push({ kind: denied ? "forbid" : "clause", literals: [...literals, { variable, values: [denied ? 0 : 1] }] });
    }
    return [...own, { variable, mask: maskOf(2, [0]) }];
  });
  return { engine: new Engine({ variables, rules }, steps), narrowings };
}

function bySelectors(problem: Problem, groups: readonly (readonly Constraint[])[], steps: StepBudget): Made {
  const base = problem.rules.map((rule) => ({ rule, selector: -1 }));
  const selected = groups.flatMap((rules, selector) => rules.flatMap((rule) => (rule.kind === "unary" ? [] : [{ rule, selector }])));
  const engine = new Engine(problem, steps, [...base, ...selected], groups.length);
  engine.on.fill(0);
  return { engine, narrowings: groups.map((group) => unaryOf(problem, group)) };
}

const unaryOf = (problem: Problem, group: readonly Constraint[]): Narrowing[] =>
  group.flatMap((rule) =>
    rule.kind === "unary" ? [{ variable: rule.variable, mask: maskOf(problem.variables[rule.variable]!.size, rule.values) }] : [],
  );

/** The values to try first: those most groups ask for, among them the one of the last solution. So solutions keep many groups. */
function valueOrder(
  engine: Engine,
  narrowings: readonly (readonly Narrowing[])[],
  last: () => Solution | undefined,
): (variable: number) => number {
  const { store } = engine;
  const liked = store.sizes.map((size) => new Int32Array(Math.max(1, (size + 31) >>> 5)).fill(-1));
  for (const { variable, mask } of narrowings.flat()) {
    const both = liked[variable]!.map((word, w) => word & mask[w]!);
    if (both.some((word) => word !== 0)) liked[variable] = both;
  }
  return (v) => {
    const mask = liked[v]!;
    const before = last()?.[v];
    if (before !== undefined && has(mask, before) && store.has(v, before)) return before;
    for (let w = 0; w < mask.length; w++) {
      const word = store.cells[store.start[v]! + w]! & mask[w]!;
      if (word !== 0) return (w << 5) + 31 - Math.clz32(word & -word);
    }
    return store.first(v);
  };
}
