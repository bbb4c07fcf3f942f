// Depth-first search with two branches a node: take a value, or refuse it. It leaves the store as it found it.
import type { Engine } from "./engine.js";
import type { Budget, Solution } from "./problem.js";

/** Counts steps and asks the caller's `stop` now and then; several searches of one task share one. */
export class Purse {
  private left: number;
  private asked = 0;
  constructor(private readonly budget: Budget = {}) {
    this.left = budget.steps ?? Number.POSITIVE_INFINITY;
  }
  /** True while there is something to spend. */
  spend(): boolean {
    if (this.left <= 0) return false;
    this.left--;
    if ((this.asked++ & 63) === 0 && this.budget.stop?.()) this.left = 0;
    return this.left > 0;
  }
}

export interface Strategy {
  /** Variables to decide first, before all others. */
  readonly first?: readonly number[];
  /** Picks the value to try; the smallest when left out. */
  readonly value?: (variable: number) => number;
}

/** What to do after a solution: end, look for the next one, or the next with other values for the `first` variables. */
export type Next = "end" | "next" | "nextFirst";

export type Outcome = "ended" | "exhausted" | "stopped";

export function search(engine: Engine, purse: Purse, onSolution: (solution: Solution) => Next, strategy: Strategy = {}): Outcome {
  const { store } = engine;
  const root = store.mark();
  const marks: number[] = [];
  const taken: [number, number][] = [];
  const head = strategy.first ?? [];
  const pick = strategy.value ?? ((v: number) => store.first(v));
  const isFirst = new Set(head);
  const all = Array.from({ length: engine.count }, (_, v) => v);
  const choose = (among: readonly number[]): number => {
    let best = -1;
    let bestScore = Number.POSITIVE_INFINITY;
    for (const v of among) {
      const size = store.size(v);
      if (size === 1) continue;
      const score = size / engine.weight[v]!;
      if (score < bestScore) {
        bestScore = score;
        best = v;
      }
    }
    return best;
  };
  const finish = (outcome: Outcome): Outcome => {
    store.undo(root);
    return outcome;
  };

  for (let ok = true; ; ) {
    if (ok) {
      let variable = choose(head);
      if (variable < 0) variable = choose(all);
      if (variable >= 0) {
        if (!purse.spend()) return finish("stopped");
        const value = pick(variable);
        marks.push(store.mark());
        taken.push([variable, value]);
        ok = engine.take(variable, value);
        continue;
      }
      const next = onSolution(engine.solution());
      if (next === "end") return finish("ended");
      if (next === "nextFirst") {
        while (taken.length > 0 && !isFirst.has(taken[taken.length - 1]![0])) {
          taken.pop();
          store.undo(marks.pop()!);
        }
      }
    }
    const last = taken.pop();
    if (!last) return finish("exhausted");
    store.undo(marks.pop()!);
    ok = engine.refuse(last[0], last[1]);
  }
}
