// Components: the variables not yet fixed fall apart into sets that no rule ties together any more; each can be counted by itself.
import type { Engine } from "../engine/engine.js";
import type { Arc } from "../engine/pairs.js";

export interface Component {
  readonly variables: readonly number[];
  /** The pair tables that still rule something out, from both ends. */
  readonly arcs: readonly Arc[];
  /** The clauses and propagators that still ask something of the component, by number. */
  readonly clauses: readonly number[];
  readonly propagators: readonly number[];
}

export class Splitter {
  /** For each variable how many rules tie it, as found by the last `split`. */
  readonly ties: Int32Array;
  private readonly parent: Int32Array;
  private readonly join: (one: number, two: number) => void;

  constructor(private readonly engine: Engine) {
    this.parent = new Int32Array(engine.count);
    this.ties = new Int32Array(engine.count);
    this.join = (one, two) => {
      this.ties[one]!++;
      this.ties[two]!++;
      this.parent[this.find(one)] = this.find(two);
    };
  }

  private find(v: number): number {
    let root = v;
    while (this.parent[root] !== root) root = this.parent[root]!;
    this.parent[v] = root;
    return root;
  }

  whole(): Component {
    const all = (n: number) => Array.from({ length: n }, (_, i) => i);
    return {
      variables: all(this.engine.count),
      arcs: this.engine.pairs.both(),
      clauses: all(this.engine.clauses.clauses.length),
      propagators: all(this.engine.propagators.length),
    };
  }

  /** The components a component has fallen into, and the variables of it that are tied by nothing. */
  split(whole: Component): { components: Component[]; free: number[] } {
    const { store, pairs, clauses, propagators } = this.engine;
    const { ties, parent, join } = this;
    const open = whole.variables.filter((v) => store.size(v) > 1);
    for (const v of open) {
      parent[v] = v;
      ties[v] = 0;
    }
    const binding: Arc[] = [];
    // Both ends of a table come one after the other in `arcs`, and what bound nothing above binds nothing here.
    for (let i = 0; i < whole.arcs.length; i += 2) {
      const arc = whole.arcs[i]!;
      if (store.size(arc.from) === 1 || store.size(arc.to) === 1 || !pairs.binds(arc)) continue;
      join(arc.from, arc.to);
      binding.push(arc, whole.arcs[i + 1]!);
    }
    const activeClauses = whole.clauses.filter((c) => clauses.couple(clauses.clauses[c]!, join));
    const activePropagators = whole.propagators.filter((p) => propagators[p]!.couple(store, join));
    const free = open.filter((v) => ties[v] === 0);
    const byRoot = new Map<number, { variables: number[]; arcs: Arc[]; clauses: number[]; propagators: number[] }>();
    for (const v of open) {
      if (ties[v] === 0) continue;
      const root = this.find(v);
      const component = byRoot.get(root);
      if (component) component.variables.push(v);
      else byRoot.set(root, { variables: [v], arcs: [], clauses: [], propagators: [] });
    }
    for (const arc of binding) byRoot.get(this.find(arc.from))!.arcs.push(arc);
    for (const c of activeClauses) {
      const v = clauses.clauses[c]!.variables.find((w) => store.size(w) > 1 && ties[w]! > 0 && clauses.isOpenOn(clauses.clauses[c]!, w))!;
      byRoot.get(this.find(v))!.clauses.push(c);
    }
    for (const p of activePropagators) {
      // One rule may tie several components within themselves (all-different does): each keeps it.
      const roots = new Set(propagators[p]!.variables.filter((v) => store.size(v) > 1).map((v) => (ties[v] === 0 ? -1 : this.find(v))));
      for (const root of roots) byRoot.get(root)?.propagators.push(p);
    }
    return { components: [...byRoot.values()], free };
  }
}
