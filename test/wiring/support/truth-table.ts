// A second evaluator for circuits, written from the definition: two nodes are joined when a path of closed joins leads from one to
// the other (a square table of yes and no, closed under going on); a level follows from what a node is joined to.
import type { Level } from "../../../src/wiring/index.js";

export interface PlainCircuit {
  readonly nodes: number;
  /** Node 0 is ground, node 1 the supply. */
  readonly joins: readonly (readonly [number, number])[];
  readonly pullUps: readonly number[];
  readonly strong: readonly { readonly node: number; readonly level: "high" | "low" | "driven" }[];
}

export function pathTable({ nodes, joins }: PlainCircuit): boolean[][] {
  const table = Array.from({ length: nodes }, (_, i) => Array.from({ length: nodes }, (_, j) => i === j));
  for (const [a, b] of joins) {
    table[a]![b] = true;
    table[b]![a] = true;
  }
  for (let via = 0; via < nodes; via += 1) {
    for (let from = 0; from < nodes; from += 1) {
      for (let to = 0; to < nodes; to += 1) if (table[from]![via] && table[via]![to]) table[from]![to] = true;
    }
  }
  return table;
}

export function levelsByPaths(circuit: PlainCircuit): { readonly levels: readonly Level[]; readonly short: boolean } {
  const table = pathTable(circuit);
  const levels = table.map((reaches): Level => {
    const sources = new Set<string>();
    if (reaches[0]) sources.add("low");
    if (reaches[1]) sources.add("high");
    const drivers = circuit.strong.filter((s) => reaches[s.node]);
    for (const s of drivers) sources.add(s.level);
    if (sources.size > 1) return "short";
    if (sources.has("low")) return "low";
    if (sources.has("high")) return "high";
    if (sources.has("driven")) return "floating";
    return circuit.pullUps.some((r) => reaches[r]) ? "high" : "floating";
  });
  // Two drivers on one net fight even when nothing else is there.
  const fight = table.some((reaches) => circuit.strong.filter((s) => s.level === "driven" && reaches[s.node]).length > 1);
  return { levels, short: levels.includes("short") || fight };
}
