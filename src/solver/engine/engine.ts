// The engine: store, rules made ready, and the queue between them. It takes decisions and undoes them; which decisions, search.ts says.
//
//   a domain shrinks -> its variable is dirty -> pair tables and clauses on it filter at once -> dearer rules on it wait in a queue
//        ^                                                                                              |
//        +----------------------------------------------------------------------------------------------+   until nothing is left

import { AllDifferent } from "../constraints/all-different.js";
import type { Problem, Solution } from "../model/problem.js";
import { StepBudget } from "../model/step-budget.js";
import { ClauseSet } from "./clauses.js";
import { compile, type SelectedRule } from "./compile.js";
import { PairTables } from "./pairs.js";
import type { Propagator } from "./propagator.js";
import { Store } from "./store.js";

export class Engine {
  readonly store: Store;
  readonly count: number;
  readonly pairs: PairTables;
  readonly clauses: ClauseSet;
  /** How often a variable's rules failed: dom/wdeg (Boussemart and others, "Boosting Systematic Search by Weighting Constraints", 2004). */
  readonly weight: Float64Array;
  /** Which selectors are switched on. */
  readonly on: Uint8Array;
  readonly propagators: Propagator[] = [];
  readonly selectors: number[] = [];
  private readonly watchers: number[][];
  private readonly rivalsOf: (readonly number[])[] = [];
  private readonly costs: number[] = [];
  private readonly queued: boolean[] = [];
  private readonly queues: readonly [number[], number[]] = [[], []];
  private readonly dirty: Int32Array;
  /** 0 clean, 1 dirty, 2 dirty but the rules watching it have been told. */
  private readonly isDirty: Uint8Array;
  private dirtyTop = 0;
  private running = -1;
  private work = 0;
  /** While true the dearer rules wait: they see further, but the others alone tell solutions from the rest. */
  hasty = false;

  constructor(
    readonly problem: Problem,
    /** What setting up and propagating are charged to. */
    public steps = new StepBudget(),
    selected: readonly SelectedRule[] = problem.rules.map((rule) => ({ rule, selector: -1 })),
    selectorCount = 0,
  ) {
    this.count = problem.variables.length;
    this.store = new Store(problem.variables.map((v) => v.size));
    this.weight = new Float64Array(this.count).fill(1);
    this.watchers = problem.variables.map(() => []);
    this.on = new Uint8Array(selectorCount).fill(1);
    this.dirty = new Int32Array(this.count);
    this.isDirty = new Uint8Array(this.count);
    this.pairs = new PairTables(this.store, this.on);
    this.clauses = new ClauseSet(this.store, this.on);
    this.store.onChange = (variable) => {
      if (this.isDirty[variable] === 0) this.dirty[this.dirtyTop++] = variable;
      this.isDirty[variable] = 1;
    };
    compile(this, selected);
  }

  add(propagator: Propagator, selector = -1): void {
    const index = this.propagators.push(propagator) - 1;
    this.selectors.push(selector);
    this.costs.push(propagator.cost ?? propagator.variables.length);
    this.queued.push(false);
    for (const variable of new Set(propagator.variables)) this.watchers[variable]!.push(index);
  }

  /** Looks at every rule: to be called before searching, and again after switching selectors or adding rules. */
  wake(): boolean {
    const ok = this.clauses.wake() && this.store.sizes.every((_, v) => this.store.size(v) > 0);
    if (!ok) return this.fail([]);
    for (let v = 0; v < this.count; v++) this.store.onChange(v);
    for (let p = 0; p < this.propagators.length; p++) this.enqueue(p);
    return this.propagate();
  }

  /** After domains were narrowed from outside: propagates, or, the narrowing having failed, forgets what was queued. */
  settle(stands: boolean): boolean {
    return stands ? this.propagate() : this.fail([]);
  }

  /** Has one rule looked at again by the next `propagate`, its bounds having been moved. */
  schedule(propagator: Propagator): void {
    this.enqueue(this.propagators.indexOf(propagator));
  }

  /** Lets the rules that waited have their look. */
  catchUp(): boolean {
    for (let p = 0; p < this.propagators.length; p++) if (this.propagators[p]!.priority === 1) this.enqueue(p);
    return this.propagate();
  }

  private enqueue(p: number): void {
    if (this.queued[p] || p === this.running) return;
    const selector = this.selectors[p]!;
    if (selector >= 0 && this.on[selector] === 0) return;
    this.queued[p] = true;
    this.queues[this.propagators[p]!.priority].push(p);
  }

  /** Runs what is queued until nothing changes; false when some rule cannot hold. */
  propagate(): boolean {
    this.work = 0;
    const holds = this.propagateAll();
    this.steps.charge(this.work);
    return holds;
  }

  private propagateAll(): boolean {
    const [cheap, dear] = this.queues;
    for (;;) {
      while (this.dirtyTop > 0) {
        const variable = this.dirty[--this.dirtyTop]!;
        const news = this.isDirty[variable] === 1;
        this.isDirty[variable] = 0;
        this.work += 1 + this.pairs.arcs[variable]!.length;
        if (!this.pairs.propagate(variable)) return this.fail(this.pairs.failed);
        if (!this.clauses.propagate(variable)) return this.fail(this.clauses.failed);
        if (news) for (const p of this.watchers[variable]!) this.enqueue(p);
      }
      const p = cheap.pop() ?? (this.hasty ? undefined : dear.pop());
      if (p === undefined) return true;
      this.queued[p] = false;
      this.work += this.costs[p]!;
      if (!this.propagators[p]!.propagate(this.store)) return this.fail(this.propagators[p]!.variables);
      // A propagator leaves itself nothing to do, so its own changes wake the others only.
      this.running = p;
      for (let i = 0; i < this.dirtyTop; i++) {
        for (const q of this.watchers[this.dirty[i]!]!) this.enqueue(q);
        this.isDirty[this.dirty[i]!] = 2;
      }
      this.running = -1;
    }
  }

  /** Remembers which variables the failing rule was on, and empties the queues. */
  private fail(variables: readonly number[]): false {
    for (const variable of variables) this.weight[variable]!++;
    while (this.dirtyTop > 0) this.isDirty[this.dirty[--this.dirtyTop]!] = 0;
    for (const queue of this.queues) for (let p = queue.pop(); p !== undefined; p = queue.pop()) this.queued[p] = false;
    return false;
  }

  take(variable: number, value: number): boolean {
    return this.store.assign(variable, value) ? this.propagate() : this.fail([]);
  }

  refuse(variable: number, value: number): boolean {
    return this.store.remove(variable, value) ? this.propagate() : this.fail([]);
  }

  /** The variables that must differ from this one. */
  allDifferentWith(variable: number): readonly number[] {
    this.rivalsOf[variable] ??= [
      ...new Set(
        this.watchers[variable]!.map((p) => this.propagators[p]!).flatMap((rule) => (rule instanceof AllDifferent ? rule.variables : [])),
      ),
    ].filter((v) => v !== variable);
    return this.rivalsOf[variable];
  }

  /** Whether a complete assignment keeps every rule on one variable (those of its domain aside). */
  accepts(variable: number, solution: Solution): boolean {
    if (!this.pairs.accept(variable, solution) || !this.clauses.accept(variable, solution)) return false;
    return this.watchers[variable]!.every((p) => {
      const selector = this.selectors[p]!;
      return (selector >= 0 && this.on[selector] === 0) || this.propagators[p]!.accepts(solution);
    });
  }

  solution(): Solution {
    return this.store.sizes.map((_, v) => this.store.first(v));
  }
}
