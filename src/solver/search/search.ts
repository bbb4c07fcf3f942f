// Depth-first search with two branches a node: take a value, or refuse it. The variable is chosen by domain size over how often its rules
// failed (dom/wdeg, Boussemart and others 2004). It leaves the store as it found it.
//
// When one solution is enough the search restarts after so many failures, each time later than the last, so that an early mistake does not
// cost for ever; what the cut run has proven is kept as nogoods (Lecoutre and others, "Nogood Recording from Restarts", 2007) and the
// values it liked are tried first again. Restarts lose no completeness: the limit grows without bound.
import type { Engine } from "../engine/engine.js";
import { maskOf } from "../engine/propagator.js";
import type { Solution } from "../model/problem.js";
import type { StepBudget } from "../model/step-budget.js";

export interface Strategy {
  /** Variables to decide first, before all others. */
  readonly first?: readonly number[];
  /** Picks the value to try; the smallest, or the one liked last, when left out. */
  readonly value?: (variable: number) => number;
}

/** What to do after a solution: look for the next one, or the next with other values for the `first` variables, or end. */
export type Next = "end" | "next" | "nextFirst";

export type Outcome = "ended" | "completed" | "stopped";

/** The first solution found, or that there is none, or that the budget is gone. */
export function findOne(engine: Engine, steps: StepBudget, strategy: Strategy = {}): Solution | "none" | "stopped" {
  const learnt = engine.clauses.clauses.length;
  const liked = new Int32Array(engine.count).fill(-1);
  const value = (v: number): number => (liked[v]! >= 0 && engine.store.has(v, liked[v]!) ? liked[v]! : engine.store.first(v));
  let found: Solution | undefined;
  let outcome: Outcome | "restart" = "restart";
  const root = engine.store.mark();
  for (let limit = 64; outcome === "restart"; limit = Math.ceil(limit * 1.4)) {
    const run = new Run(engine, steps, { value, ...strategy }, liked);
    outcome = run.go((solution) => {
      found = solution;
      return "end";
    }, limit);
    if (outcome === "restart" && !run.learn()) outcome = "completed";
  }
  engine.store.undo(root);
  engine.clauses.forget(learnt);
  return found ?? (outcome === "stopped" ? "stopped" : "none");
}

/** A first look, given up after so many failures: "restart", and nothing is known. */
export function searchBriefly(
  engine: Engine,
  steps: StepBudget,
  strategy: Strategy,
  failures: number,
): Solution | "none" | "stopped" | "restart" {
  let found: Solution | undefined;
  const outcome = new Run(engine, steps, strategy).go((solution) => {
    found = solution;
    return "end";
  }, failures);
  return found ?? (outcome === "restart" || outcome === "stopped" ? outcome : "none");
}

/** Every solution in turn, without restarts. */
export function search(engine: Engine, steps: StepBudget, onSolution: (solution: Solution) => Next, strategy: Strategy = {}): Outcome {
  return new Run(engine, steps, strategy).go(onSolution, Number.POSITIVE_INFINITY) as Outcome;
}

/** Longer nogoods than this are not worth their keep. */
const longestNogood = 24;

class Run {
  private readonly root: number;
  private readonly marks: number[] = [];
  private readonly taken: (readonly [variable: number, value: number])[] = [];
  /** Refused values with how many were taken above them. */
  private readonly refused: (readonly [depth: number, variable: number, value: number])[] = [];
  private readonly all: readonly number[];
  private readonly isFirst: ReadonlySet<number>;
  private cut: readonly (readonly (readonly [number, number])[])[] = [];

  constructor(
    private readonly engine: Engine,
    private readonly steps: StepBudget,
    private readonly strategy: Strategy,
    private readonly liked?: Int32Array,
  ) {
    this.root = engine.store.mark();
    this.all = engine.store.sizes.map((_, v) => v);
    this.isFirst = new Set(strategy.first);
  }

  go(onSolution: (solution: Solution) => Next, failures: number): Outcome | "restart" {
    const { engine, marks, taken, refused } = this;
    const pick = this.strategy.value ?? ((v: number) => engine.store.first(v));
    let left = failures;
    for (let ok = true; ; ) {
      if (ok) {
        const variable = this.choose();
        if (variable >= 0) {
          if (!this.steps.spend()) return this.finish("stopped");
          const value = pick(variable);
          if (this.liked) this.liked[variable] = value;
          marks.push(engine.store.mark());
          taken.push([variable, value]);
          ok = engine.take(variable, value);
          continue;
        }
        const next = onSolution(engine.solution());
        if (next === "end") return this.finish("ended");
        while (next === "nextFirst" && taken.length > 0 && !this.isFirst.has(taken.at(-1)![0])) this.back();
      } else if (left-- <= 0) {
        this.cut = this.nogoods();
        return this.finish("restart");
      }
      const last = taken.at(-1);
      if (!last) return this.finish("completed");
      this.back();
      refused.push([taken.length, last[0], last[1]]);
      ok = engine.refuse(last[0], last[1]);
    }
  }

  /** Adds what a cut run has proven; false when that leaves nothing. */
  learn(): boolean {
    const { engine } = this;
    for (const literals of this.cut) {
      const masks = literals.map(([v, value]) => {
        const mask = maskOf(engine.store.sizes[v]!, [value]);
        return mask.map((word) => ~word);
      });
      const clause = engine.clauses.add(
        literals.map(([v]) => v),
        masks,
      );
      if (!engine.clauses.attach(clause)) return false;
    }
    return engine.propagate();
  }

  /** Each refused value together with the decisions above it has no solution. */
  private nogoods(): readonly (readonly (readonly [number, number])[])[] {
    const out = this.refused.map(([depth, variable, value]) => [...this.taken.slice(0, depth), [variable, value] as const]);
    return out.filter((literals) => literals.length <= longestNogood);
  }

  private back(): void {
    this.taken.pop();
    this.engine.store.undo(this.marks.pop()!);
    while (this.refused.length > 0 && this.refused.at(-1)![0] > this.taken.length) this.refused.pop();
  }

  private finish(outcome: Outcome | "restart"): Outcome | "restart" {
    this.engine.store.undo(this.root);
    return outcome;
  }

  private choose(): number {
    const first = this.strategy.first ? this.smallest(this.strategy.first) : -1;
    return first >= 0 ? first : this.smallest(this.all);
  }

  private smallest(among: readonly number[]): number {
    const { cells } = this.engine.store;
    const { weight } = this.engine;
    let best = -1;
    let bestScore = Number.POSITIVE_INFINITY;
    for (let i = 0; i < among.length; i++) {
      const v = among[i]!;
      const size = cells[v]!;
      if (size === 1) continue;
      const score = size / weight[v]!;
      if (score < bestScore) {
        bestScore = score;
        best = v;
      }
    }
    return best;
  }
}
