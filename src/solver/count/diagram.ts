// A decision diagram: all solutions of a problem as a graph that shares equal parts. A node stands for a set of variables and branches over
// the values of one of them; each branch is a product of variables it fixes, variables it leaves free and smaller nodes over separate
// variables (a deterministic decomposable form: Darwiche, "Decomposable Negation Normal Form", 2001). Counting, and counting per value,
// under any selection, is one walk over the branches.

/** Which values take part; all when there is no mask for the variable. */
export type Selection = ReadonlyMap<number, ReadonlySet<number>>;

export interface Branch {
  /** Variable and value, alternating. */
  readonly fixed: readonly number[];
  /** Variables no rule ties any more, with the values they have left. */
  readonly free: readonly { readonly variable: number; readonly values: readonly number[] }[];
  /** Nodes over separate variables, each older than the node of this branch. */
  readonly nodes: readonly number[];
}

export class Diagram {
  /** Children come before parents; the last node is the root. Node 0 has no branch, node 1 the empty one. */
  readonly nodes: (readonly Branch[])[] = [[], [{ fixed: [], free: [], nodes: [] }]];

  add(branches: readonly Branch[]): number {
    if (branches.length === 0) return 0;
    return this.nodes.push(branches) - 1;
  }

  get edges(): number {
    return this.nodes.reduce((sum, branches) => sum + branches.length, 0);
  }

  /** The number of solutions that keep to the selection. */
  count(selection: Selection = new Map(), root = this.nodes.length - 1): bigint {
    return this.counts(selection)[root]!;
  }

  /** Per variable and value the number of solutions that keep to the selection. */
  countPerValue(sizes: readonly number[], selection: Selection = new Map()): bigint[][] {
    const counts = this.counts(selection);
    const perValue = sizes.map((size) => new Array<bigint>(size).fill(0n));
    const reach = new Array<bigint>(this.nodes.length).fill(0n);
    reach[this.nodes.length - 1] = 1n;
    for (let node = this.nodes.length - 1; node > 0; node--) {
      if (reach[node] === 0n) continue;
      for (const branch of this.nodes[node]!) {
        const all = reach[node]! * this.product(branch, counts, selection);
        if (all === 0n) continue;
        for (let i = 0; i < branch.fixed.length; i += 2) perValue[branch.fixed[i]!]![branch.fixed[i + 1]!]! += all;
        for (const { variable, values } of branch.free) {
          const kept = selected(variable, values, selection);
          for (const value of kept) perValue[variable]![value]! += all / BigInt(kept.length);
        }
        for (const child of branch.nodes) reach[child]! += all / counts[child]!;
      }
    }
    return perValue;
  }

  private counts(selection: Selection): bigint[] {
    const counts: bigint[] = [];
    for (const branches of this.nodes) {
      let sum = 0n;
      for (const branch of branches) sum += this.product(branch, counts, selection);
      counts.push(sum);
    }
    return counts;
  }

  private product(branch: Branch, counts: readonly bigint[], selection: Selection): bigint {
    for (let i = 0; i < branch.fixed.length; i += 2) {
      if (selection.get(branch.fixed[i]!)?.has(branch.fixed[i + 1]!) === false) return 0n;
    }
    let product = 1n;
    for (const { variable, values } of branch.free) product *= BigInt(selected(variable, values, selection).length);
    for (const child of branch.nodes) product *= counts[child]!;
    return product;
  }
}

function selected(variable: number, values: readonly number[], selection: Selection): readonly number[] {
  const kept = selection.get(variable);
  return kept ? values.filter((value) => kept.has(value)) : values;
}
