// The model counter: counts solutions component by component, each component looked up before it is worked on and known by what its values are like (interchangeable.ts).
// It keeps numbers only; diagram.ts keeps the solutions themselves. When the budget ends it unwinds with what has been counted so far:
// every branch finished is a certain number of solutions, and along the path of one known solution every component has at least one.

import { AllDifferent } from "../constraints/all-different.js";
import type { Engine } from "../engine/engine.js";
import type { Solution } from "../model/problem.js";
import { StepBudget } from "../model/step-budget.js";
import { Branching } from "./branching.js";
import { type Component, Splitter } from "./components.js";
import { InterchangeableValues } from "./interchangeable.js";
import { Keys } from "./keys.js";
import { Permanents } from "./permanents.js";

/** Components in components in components: deeper, the program's own stack would end before the budget does. */
const deepest = 1_500;

export class ModelCounter {
  /** The count is exact; false: at least so many. */
  exact = true;
  private readonly keys = new Keys();
  private readonly counts: bigint[] = [];
  private readonly splitter: Splitter;
  private readonly interchangeable: InterchangeableValues;
  private readonly branching: Branching;
  private readonly wanted: Uint8Array | undefined;
  private steps = new StepBudget();
  private known: Solution = [];
  private depth = 0;
  private readonly scratch: number[] = [];
  private permanents: Permanents | undefined;

  /** With `project` only these variables' values are told apart: a component without any of them counts once if it can be filled at all. */
  constructor(
    private readonly engine: Engine,
    project?: readonly number[],
  ) {
    this.splitter = new Splitter(engine);
    this.interchangeable = new InterchangeableValues(engine);
    if (project) {
      this.wanted = new Uint8Array(engine.count);
      for (const v of project) this.wanted[v] = 1;
    }
    this.branching = new Branching(engine, this.interchangeable, this.wanted);
  }

  /** The solutions of the engine as it stands (propagated), of which one is known. What is looked up stays good for later counts. */
  count(steps: StepBudget, known: Solution): bigint {
    this.exact = true;
    this.steps = steps;
    this.known = known;
    this.depth = 0;
    return this.rest(this.splitter.whole(), true);
  }

  /** For each variable and value of the engine as it stands a number that interchangeable values share. */
  valueClasses(): Int32Array[] {
    const { components } = this.splitter.split(this.splitter.whole());
    const of = this.engine.store.sizes.map((size) => new Int32Array(size).fill(-1));
    for (const component of components) {
      this.interchangeable.describe(component, [], 0);
      for (const v of component.variables) of[v]!.set(this.interchangeable.of[v]!);
    }
    return of;
  }

  /** The solutions of what is left of a component as the store stands. */
  private rest(whole: Component, along: boolean): bigint {
    const { components, free } = this.splitter.split(whole);
    let product = 1n;
    for (const v of free) if (this.wanted?.[v] !== 0) product *= BigInt(this.engine.store.size(v));
    for (const component of components) {
      if (!this.exact && !along) return 0n;
      if (this.exact) product *= this.component(component, along);
      if (product === 0n) return product;
    }
    return product;
  }

  private component(component: Component, along: boolean): bigint {
    const slot = this.keys.slot(this.scratch, this.key(component));
    if (this.keys.get(slot) >= 0) return this.counts[this.keys.get(slot)]!;
    const ways = this.assigned(component);
    if (ways !== undefined) {
      this.keys.set(slot, this.counts.push(ways) - 1);
      return ways;
    }
    if (this.depth >= deepest) {
      this.exact = false;
      return along ? 1n : 0n;
    }
    this.depth++;
    const sum = this.branched(component, along);
    this.depth--;
    if (!this.exact) return sum > 0n || !along ? sum : 1n;
    this.keys.set(slot, this.counts.push(sum) - 1);
    return sum;
  }

  /** The solutions of a component, block by block of one of its variables. */
  private branched(component: Component, along: boolean): bigint {
    const { engine } = this;
    const { variable, blocks } = this.branching.choose(component, along ? this.known : undefined);
    const once = this.wanted?.[variable] === 0;
    const home = along ? blocks.findIndex(({ mask }) => bit(mask, this.known[variable]!)) : -1;
    let sum = 0n;
    for (let i = -1; i < blocks.length; i++) {
      // The known solution's own block comes first.
      const at = i < 0 ? home : i;
      if (at < 0 || (i >= 0 && at === home)) continue;
      if (!this.steps.spend()) {
        this.exact = false;
        break;
      }
      const { mask, times } = blocks[at]!;
      const mark = engine.store.mark();
      const found = engine.settle(engine.store.keepAll(variable, mask)) ? this.rest(component, at === home) : 0n;
      engine.store.undo(mark);
      if (found > 0n && once) {
        sum = 1n;
        break;
      }
      sum += found * times;
      if (!this.exact) break;
    }
    return sum;
  }

  /** The count of a component that nothing but one all-different rule holds together. */
  private assigned(component: Component): bigint | undefined {
    if (component.arcs.length > 0 || component.clauses.length > 0 || component.propagators.length !== 1) return undefined;
    const rule = this.engine.propagators[component.propagators[0]!]!;
    if (!(rule instanceof AllDifferent) || component.variables.some((v) => this.wanted?.[v] === 0)) return undefined;
    const { cells, start, length } = this.engine.store;
    this.permanents ??= new Permanents();
    const domains = component.variables.map((v) => cells.subarray(start[v]!, start[v]! + length[v]!));
    return this.permanents.count(domains, rule.shared);
  }

  /** Writes what tells a component from others to `scratch` and gives its length. */
  private key(component: Component): number {
    const { store, propagators, count } = this.engine;
    const key = this.scratch;
    let end = this.interchangeable.describe(component, key, 0);
    key[end++] = -1;
    for (let i = 0; i < component.arcs.length; i += 2) key[end++] = component.arcs[i]!.from * count + component.arcs[i]!.to;
    key[end++] = -1;
    for (const c of component.clauses) key[end++] = c;
    key[end++] = -1;
    for (const p of component.propagators) {
      key[end++] = p;
      end = propagators[p]!.residue(store, key, end);
    }
    return end;
  }
}

const bit = (mask: Int32Array, value: number): boolean => ((mask[value >>> 5]! >>> (value & 31)) & 1) === 1;
