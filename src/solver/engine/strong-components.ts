// Strongly connected components of a small directed graph, kept as one bitset of successors a node
// (Tarjan, "Depth-First Search and Linear Graph Algorithms", 1972).

export class StrongComponents {
  /** The component of each node after `find`. */
  readonly of: Int32Array;
  private readonly width: number;
  private readonly edges: Int32Array;
  private readonly low: Int32Array;
  private readonly index: Int32Array;
  private readonly stack: Int32Array;
  private top = 0;
  private next = 0;
  private found = 0;

  constructor(private readonly count: number) {
    this.width = (count + 31) >>> 5;
    this.edges = new Int32Array(count * this.width);
    this.of = new Int32Array(count);
    this.low = new Int32Array(count);
    this.index = new Int32Array(count);
    this.stack = new Int32Array(count);
  }

  clear(): void {
    this.edges.fill(0);
  }

  link(from: number, to: number): void {
    this.edges[from * this.width + (to >>> 5)]! |= 1 << (to & 31);
  }

  find(): void {
    this.index.fill(0);
    this.of.fill(-1);
    this.top = 0;
    this.next = 0;
    this.found = 0;
    for (let node = 0; node < this.count; node++) if (this.index[node] === 0) this.visit(node);
  }

  private visit(node: number): void {
    const { index, low, of } = this;
    index[node] = low[node] = ++this.next;
    this.stack[this.top++] = node;
    for (let w = 0; w < this.width; w++) {
      for (let word = this.edges[node * this.width + w]!; word !== 0; word &= word - 1) {
        const to = (w << 5) + 31 - Math.clz32(word & -word);
        if (index[to] === 0) {
          this.visit(to);
          if (low[to]! < low[node]!) low[node] = low[to]!;
        } else if (of[to] === -1 && index[to]! < low[node]!) low[node] = index[to]!;
      }
    }
    if (low[node] !== index[node]) return;
    for (;;) {
      const member = this.stack[--this.top]!;
      of[member] = this.found;
      if (member === node) break;
    }
    this.found++;
  }
}
