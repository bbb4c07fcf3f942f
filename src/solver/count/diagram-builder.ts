// Building the diagram: branch over one variable, propagate, let what is left fall into components, and look each up before
// working on it (component caching: Sang and others, "Combining Component Caching and Clause Learning for Effective Model Counting", 2004).

import type { Engine } from "../engine/engine.js";
import type { StepBudget } from "../model/step-budget.js";
import { type Component, Splitter } from "./components.js";
import { type Branch, Diagram } from "./diagram.js";
import { Keys } from "./keys.js";

export class DiagramBuilder {
  readonly diagram = new Diagram();
  private readonly keys = new Keys();
  private readonly splitter: Splitter;
  private readonly wanted: Uint8Array | undefined;

  /** With `project`, only these variables' values are told apart: a component without any of them counts once if it can be filled at all. */
  constructor(
    private readonly engine: Engine,
    private readonly steps: StepBudget,
    project?: readonly number[],
  ) {
    this.splitter = new Splitter(engine);
    if (project) {
      this.wanted = new Uint8Array(engine.count);
      for (const v of project) this.wanted[v] = 1;
    }
  }

  /** The diagram of an engine already propagated; undefined when the budget ends first. */
  build(): Diagram | undefined {
    const branch = this.branch(this.splitter.whole());
    if (branch === "stopped") return undefined;
    this.diagram.nodes.push(branch ? [branch] : []);
    return this.diagram;
  }

  /** What is left of a component as the store stands; undefined when it has no solution. */
  private branch(whole: Component): Branch | undefined | "stopped" {
    const { store } = this.engine;
    const { components, free } = this.splitter.split(whole);
    const fixed: number[] = [];
    for (const v of whole.variables) if (store.size(v) === 1) fixed.push(v, store.first(v));
    const choice = components.map((component) => this.choose(component));
    const left = free.map((variable) => ({
      variable,
      values: this.wanted?.[variable] === 0 ? [store.first(variable)] : store.values(variable),
    }));
    const nodes: number[] = [];
    for (const [i, component] of components.entries()) {
      const node = this.node(component, choice[i]!);
      if (node === "stopped") return "stopped";
      if (node === 0) return undefined;
      if (node !== 1) nodes.push(node);
    }
    return { fixed, free: left, nodes };
  }

  private node(component: Component, variable: number): number | "stopped" {
    const { engine } = this;
    const slot = this.keys.slot(this.scratch, this.key(component));
    const known = this.keys.get(slot);
    if (known >= 0) return known;
    const branches: Branch[] = [];
    const once = this.wanted?.[variable] === 0;
    for (const value of engine.store.values(variable)) {
      if (!this.steps.spend()) return "stopped";
      const mark = engine.store.mark();
      const branch = engine.take(variable, value) ? this.branch(component) : undefined;
      engine.store.undo(mark);
      if (branch === "stopped") return "stopped";
      if (branch) branches.push(branch);
      if (branch && once) break;
    }
    const node = once && branches.length > 0 ? 1 : this.diagram.add(branches);
    this.keys.set(slot, node);
    return node;
  }

  /** The variable to branch over: few values, many ties; those told apart first. */
  private choose(component: Component): number {
    const { store } = this.engine;
    let best = component.variables[0]!;
    let bestScore = Number.POSITIVE_INFINITY;
    for (const v of component.variables) {
      let score = store.size(v) / (1 + this.splitter.ties[v]!);
      if (this.wanted?.[v] === 0) score += 1e9;
      if (score < bestScore) {
        bestScore = score;
        best = v;
      }
    }
    return best;
  }

  private readonly scratch: number[] = [];
  /** Writes what tells a component from others to `scratch` and gives its length. */
  private key(component: Component): number {
    const { store, propagators } = this.engine;
    const key = this.scratch;
    let end = 0;
    for (const v of component.variables) {
      key[end++] = v;
      for (let w = 0; w < store.length[v]!; w++) key[end++] = store.cells[store.start[v]! + w]!;
    }
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
