// The continuity list: what a meter must and must not show of the finished loom, power off, memory device and switched cards out. Every
// wire from end to end; every contact of the plug and every terminal of the switch against its neighbours; every net against ground and
// +5 V. Read off the simulation, position by position.
import { itemAt, must } from "../../records/index.js";
import { neighbours } from "../harness/connectors.js";
import { type Harness, switchConnector } from "../harness/loom.js";
import type { BuiltModel } from "../simulate/build-model.js";
import { solvedAt } from "../simulate/model.js";
import { groundNode, supplyNode, together } from "../simulate/netlist.js";
import type { ContinuityRow } from "../types.js";

interface Pair {
  readonly kind: ContinuityRow["kind"];
  readonly from: string;
  readonly to: string;
  readonly nodes: readonly [number, number];
}

/** Every pair of points that is measured at each position. */
function pairsOf(loom: Harness, built: BuiltModel): Pair[] {
  const pairs: Pair[] = [];
  const at = new Map(built.plug.map((p) => [p.contact, p.a]));
  if (loom.pair)
    for (const [x, y] of neighbours(loom.pair.fixed)) {
      const [a, b] = [at.get(x), at.get(y)];
      if (a !== undefined && b !== undefined)
        pairs.push({ kind: "contacts", from: `${switchConnector} contact ${x}`, to: `${switchConnector} contact ${y}`, nodes: [a, b] });
    }
  const terminals = [...built.terminal];
  terminals.forEach(([x, a], i) => {
    for (const [y, b] of terminals.slice(i + 1)) pairs.push({ kind: "terminals", from: `switch ${x}`, to: `switch ${y}`, nodes: [a, b] });
  });
  for (const { net, terminals: ends } of loom.paths) {
    const node = must(built.terminal.get(itemAt(ends, 0)), net.id);
    if (net.kind !== "ground") pairs.push({ kind: "ground", from: net.label, to: "ground", nodes: [node, groundNode] });
    pairs.push({ kind: "supply", from: net.label, to: "+5 V", nodes: [node, supplyNode] });
  }
  pairs.push({ kind: "supply", from: "ground", to: "+5 V", nodes: [groundNode, supplyNode] });
  return pairs;
}

export function continuityRows(loom: Harness, built: BuiltModel): ContinuityRow[] {
  const wires = loom.wires.map(
    ({ number, label, fromText, toText }): ContinuityRow => ({
      kind: "wire",
      wire: number,
      label,
      from: fromText,
      to: toText,
      must: "beep",
    }),
  );
  const resistors = loom.pullUps.map(
    ({ id, label, ohms }): ContinuityRow => ({ kind: "resistor", label: id, from: label, to: "+5 V", must: "resistance", ohms }),
  );
  const pairs = pairsOf(loom, built);
  const { model, good } = built;
  const positions = model.positions.flatMap((position, p) => {
    if (model.modeAt[p] === undefined) return [];
    const solved = solvedAt(model, good, p);
    return pairs.map(({ kind, from, to, nodes }): ContinuityRow => {
      return { kind, position, from, to, must: together(solved, ...nodes) ? "beep" : "silent" };
    });
  });
  return [...wires, ...resistors, ...positions];
}
