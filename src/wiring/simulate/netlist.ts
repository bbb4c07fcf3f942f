// A circuit as a graph: nodes, joins that can open, pull-ups, ground and supply. The level of a node follows from what it is
// joined to, and from nothing else. Knows neither switches nor computers.
import { itemAt } from "../../records/index.js";
import type { Level } from "../types.js";

/** Two nodes joined by a wire, a closed contact or a mated pair of connector contacts. */
export type Join = readonly [number, number];

export interface Netlist {
  /** Names of the nodes; 0 is ground, 1 the supply. */
  readonly nodes: readonly string[];
  /** Joins that hold whatever the switch does. */
  readonly joins: readonly Join[];
  /** Nodes pulled up by a resistor. */
  readonly pullUps: readonly number[];
  /** Nodes that something strong holds, beside ground and supply: a socket pin left in. */
  readonly strong: readonly { readonly node: number; readonly level: "high" | "low" | "driven" }[];
}

export const groundNode = 0;
export const supplyNode = 1;

const hasLow = 1;
const hasHigh = 2;
const hasDriven = 4;
const hasPull = 8;

/** The nodes fallen into connected groups, each with what holds it. */
export interface Solved {
  /** Group of each node. */
  readonly group: Int16Array;
  /** What holds each group, by its first node. */
  readonly held: Uint8Array;
  /** Somewhere supply meets ground, or a driver meets another source. */
  readonly short: boolean;
}

export function solve(net: Netlist, closed: readonly Join[]): Solved {
  const parent = new Int16Array(net.nodes.length);
  for (let i = 0; i < parent.length; i += 1) parent[i] = i;
  const root = (node: number): number => {
    let at = node;
    while (parent[at] !== at) {
      parent[at] = itemAt(parent, itemAt(parent, at));
      at = itemAt(parent, at);
    }
    return at;
  };
  for (const joins of [net.joins, closed]) {
    for (const [a, b] of joins) {
      const x = root(a);
      const y = root(b);
      if (x < y) parent[y] = x;
      else parent[x] = y;
    }
  }
  const held = new Uint8Array(parent.length);
  for (let i = 0; i < parent.length; i += 1) parent[i] = root(i);
  const hold = (node: number, by: number) => {
    const group = itemAt(parent, node);
    held[group] = itemAt(held, group) | by;
  };
  hold(groundNode, hasLow);
  hold(supplyNode, hasHigh);
  for (const node of net.pullUps) hold(node, hasPull);
  let short = false;
  for (const { node, level } of net.strong) {
    const bit = level === "high" ? hasHigh : level === "low" ? hasLow : hasDriven;
    if (bit === hasDriven && itemAt(held, itemAt(parent, node)) & hasDriven) short = true;
    hold(node, bit);
  }
  for (const h of held) {
    const sources = h & (hasLow | hasHigh | hasDriven);
    if (sources !== 0 && sources !== hasLow && sources !== hasHigh && sources !== hasDriven) short = true;
  }
  return { group: parent, held, short };
}

/** A driven node counts as floating: somebody else decides it. */
export function levelOf(solved: Solved, node: number): Level {
  const held = itemAt(solved.held, itemAt(solved.group, node));
  const sources = held & (hasLow | hasHigh | hasDriven);
  if (sources === hasLow) return "low";
  if (sources === hasHigh) return "high";
  if (sources === hasDriven) return "floating";
  if (sources !== 0) return "short";
  return held & hasPull ? "high" : "floating";
}

/** Ground, the supply or a driver holds it: something stronger than a pull-up. */
export function isHeld(solved: Solved, node: number): boolean {
  return (itemAt(solved.held, itemAt(solved.group, node)) & (hasLow | hasHigh | hasDriven)) !== 0;
}

export function together(solved: Solved, a: number, b: number): boolean {
  return solved.group[a] === solved.group[b];
}
