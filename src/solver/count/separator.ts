// Where a long component is cut: a variable in the middle whose rules lead both ways. A chain of a thousand variables split at its end falls
// asunder variable by variable, and each time all that is left is looked through; split in its middle it halves (nested dissection: George,
// "Nested Dissection of a Regular Finite Element Mesh", 1973). Layers of neighbours are gone through from one end, and the thinnest layer
// of the middle half is the cut.
import type { Component } from "./components.js";

/** Shorter components are cut by what their rules see. */
const long = 16;
/** A layer of more variables separates too dearly. */
const thickest = 3;

/** A variable to split a long component at; undefined when it is short, or holds together by more than pairs, or has no thin middle. */
export function separator(component: Component): number | undefined {
  const { variables, arcs } = component;
  if (variables.length <= long || component.clauses.length > 0 || component.propagators.length > 0) return undefined;
  const neighbours = new Map<number, number[]>(variables.map((v) => [v, []]));
  for (const { from, to } of arcs) neighbours.get(from)?.push(to);
  const end = layersFrom(variables[0] as number, neighbours).at(-1)?.[0];
  if (end === undefined) return undefined;
  let best: readonly number[] | undefined;
  let before = 0;
  for (const layer of layersFrom(end, neighbours)) {
    const middle = before >= variables.length / 4 && before <= (3 * variables.length) / 4;
    if (middle && layer.length <= thickest && (best === undefined || layer.length < best.length || nearer(before, variables.length)))
      best = best !== undefined && layer.length > best.length ? best : layer;
    before += layer.length;
  }
  return best?.[0];
}

/** Whether a layer begins in the first half: of equal layers the last such is nearest to the middle. */
const nearer = (before: number, count: number): boolean => before <= count / 2;

/** The variables by how many steps they are away, the nearest first. */
function layersFrom(start: number, neighbours: ReadonlyMap<number, readonly number[]>): number[][] {
  const seen = new Set([start]);
  const layers = [[start]];
  for (let layer = layers[0] as number[]; layer.length > 0; ) {
    const next: number[] = [];
    for (const v of layer) {
      for (const w of neighbours.get(v) ?? []) {
        if (seen.has(w)) continue;
        seen.add(w);
        next.push(w);
      }
    }
    if (next.length > 0) layers.push(next);
    layer = next;
  }
  return layers;
}
