// The engine: store, propagators and the queue between them. It takes decisions and undoes them; which decisions, search.ts says.
import { compile, type Guarded } from "./compile.js";
import type { Problem, Solution } from "./problem.js";
import type { Propagator } from "./propagator.js";
import { Store } from "./store.js";

export class Engine {
  readonly store: Store;
  readonly count: number;
  /** How often a variable's rules failed: dom/wdeg (Boussemart and others, "Boosting Systematic Search by Weighting Constraints", 2004). */
  readonly weight: Float64Array;
  /** Which guards are switched on. */
  readonly on: boolean[];
  private readonly propagators: Propagator[] = [];
  private readonly guards: number[] = [];
  private readonly watchers: number[][];
  private readonly queued: boolean[] = [];
  private readonly queues: [number[], number[], number[]] = [[], [], []];

  constructor(
    readonly problem: Problem,
    guarded: readonly Guarded[] = problem.rules.map((rule) => ({ rule, guard: -1 })),
    guardCount = 0,
  ) {
    this.count = problem.variables.length;
    this.store = new Store(problem.variables.map((v) => v.size));
    this.weight = new Float64Array(this.count).fill(1);
    this.watchers = problem.variables.map(() => []);
    this.on = new Array<boolean>(guardCount).fill(true);
    const { propagators, guards } = compile(problem, guarded);
    propagators.forEach((propagator, i) => {
      this.add(propagator, guards[i]!);
    });
    this.store.onChange = (variable) => {
      for (const p of this.watchers[variable]!) this.schedule(p);
    };
  }

  add(propagator: Propagator, guard = -1): void {
    const index = this.propagators.push(propagator) - 1;
    this.guards.push(guard);
    this.queued.push(false);
    for (const variable of propagator.variables) {
      this.watchers[variable]!.push(index);
      this.weight[variable]!++;
    }
  }

  /** Wakes everything and propagates: to be called once before searching, after switching guards or adding rules. */
  wake(): boolean {
    for (let v = 0; v < this.count; v++) if (this.store.size(v) === 0) return false;
    for (let p = 0; p < this.propagators.length; p++) this.schedule(p);
    return this.propagate();
  }

  private schedule(p: number): void {
    if (this.queued[p]) return;
    const guard = this.guards[p]!;
    if (guard >= 0 && !this.on[guard]) return;
    this.queued[p] = true;
    this.queues[this.propagators[p]!.priority].push(p);
  }

  /** Runs what is queued until nothing changes; false when some rule cannot hold. */
  propagate(): boolean {
    const [cheap, middle, dear] = this.queues;
    for (;;) {
      const p = cheap.pop() ?? middle.pop() ?? dear.pop();
      if (p === undefined) return true;
      this.queued[p] = false;
      const propagator = this.propagators[p]!;
      if (propagator.propagate(this.store)) continue;
      for (const variable of propagator.variables) this.weight[variable]!++;
      this.forget();
      return false;
    }
  }

  private forget(): void {
    for (const queue of this.queues) {
      for (const p of queue) this.queued[p] = false;
      queue.length = 0;
    }
  }

  take(variable: number, value: number): boolean {
    if (this.store.assign(variable, value)) return this.propagate();
    this.forget();
    return false;
  }

  refuse(variable: number, value: number): boolean {
    if (this.store.remove(variable, value)) return this.propagate();
    this.forget();
    return false;
  }

  solution(): Solution {
    return this.problem.variables.map((_, v) => this.store.first(v));
  }
}
