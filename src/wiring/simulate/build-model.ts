// Turns a candidate and its loom into the model that is simulated, and into the variant that is as planned.

import { entryOf } from "../../records/index.js";
import type { Candidate, Demands, Sockets } from "../../switching/index.js";
import { bankOf } from "../harness/banks.js";
import type { Harness } from "../harness/loom.js";
import { switchConnector } from "../harness/loom.js";
import { endKey } from "../harness/wires.js";
import type { Bank } from "../types.js";
import type { JudgeState } from "./judged.js";
import type { Model, ModelCard, ModelLine, Variant } from "./model.js";
import { groundNode, type Join, supplyNode } from "./netlist.js";

export interface ModelWire {
  readonly number: number;
  readonly a: number;
  readonly b: number;
}

export interface BuiltModel {
  readonly model: Model;
  readonly good: Variant;
  /** Wires of the switch loom, in the order of their numbers. */
  readonly wires: readonly ModelWire[];
  /** Mated contacts of the switch connector. */
  readonly plug: readonly { readonly contact: string; readonly a: number; readonly b: number }[];
  readonly pullUps: readonly { readonly id: string; readonly node: number }[];
  /** Node of a terminal of the switch. */
  readonly terminal: ReadonlyMap<string, number>;
  /** Ends that are ground itself. */
  readonly grounds: readonly Join[];
  /** Left out where nobody judges states that no mode plans. */
  readonly judge?: JudgeState;
}

export function buildModel(
  candidate: Candidate,
  loom: Harness,
  banks: readonly Bank[],
  demands: Demands,
  sockets: Sockets | undefined,
): BuiltModel {
  const names = ["ground", "supply"];
  const index = new Map<string, number>([
    ["ground", groundNode],
    ["supply", supplyNode],
  ]);
  const node = (key: string): number => {
    const found = index.get(key);
    if (found !== undefined) return found;
    names.push(key);
    index.set(key, names.length - 1);
    return names.length - 1;
  };
  const part = candidate.contacts.part;
  const terminal = new Map(part.terminals.map((t) => [t, node(endKey({ at: "switch", terminal: t }))]));
  const wires: ModelWire[] = loom.wires
    .filter((wire) => loom.paths.some((p) => p.net.id === wire.net))
    .map((wire) => ({ number: wire.number, a: node(endKey(wire.from)), b: node(endKey(wire.to)) }));
  const plug = loom.paths.flatMap(({ contact }) =>
    contact === undefined
      ? []
      : [
          {
            contact,
            a: node(endKey({ at: "connector", connector: switchConnector, half: "panel", contact })),
            b: node(endKey({ at: "connector", connector: switchConnector, half: "cable", contact })),
          },
        ],
  );
  const grounds = loom.paths
    .filter((p) => p.net.kind === "ground")
    .flatMap((p) => p.machine.map((end): Join => [groundNode, node(endKey(end))]))
    .filter(([, end]) => end !== groundNode);

  const lines: ModelLine[] = candidate.lines
    .filter((use) => use.role === "switched" || use.tied)
    .map((use) => ({
      line: use.fit.line,
      bit: use.fit.bit,
      nodes: use.fit.at.map((at) => node(endKey({ at: "device", socket: at.socket, pin: use.fit.pin, lifted: false }))),
    }));
  const free = lines.reduce((bits, line) => bits | (1 << line.bit), 0);
  const fixedBits = bankOf(candidate, 0) & ~free;
  const pullUps = loom.pullUps.map((r) => ({ id: r.id, node: node(endKey(r.from)) }));
  const cards = demands.cards.map((card): ModelCard => {
    const at = (point: string) => node(endKey({ at: "card", card: card.card, point }));
    const points = card.kind === "ground" ? [card.point] : card.kind === "pair" ? card.points : [card.common, card.on, card.off];
    const closedIs = card.kind === "change-over" ? "on" : card.closedIs;
    return { card: card.card, name: demands.called(card.card), kind: card.kind, closedIs, nodes: points.map(at), points };
  });
  const lanes = candidate.fit ? (sockets?.sockets.length ?? 1) : 0;
  const content = banks.map((bank) => demands.versions.indexOf(bank.version));
  const closed = part.positions.map((position) =>
    (part.closes[position] ?? []).map(([a, b]): Join => [entryOf(terminal, a), entryOf(terminal, b)]),
  );
  const model: Model = {
    nodes: names,
    lines,
    lanes,
    rows: sockets?.rows ?? 1,
    fixedBits,
    cards,
    versions: demands.versions,
    modes: demands.modes.map((mode) => ({ id: mode.id, version: demands.versions.indexOf(mode.firmware), on: mode.on })),
    positions: part.positions,
    modeAt: candidate.contacts.modeAt,
  };
  const good: Variant = {
    joins: [...grounds, ...wires.map((w): Join => [w.a, w.b]), ...plug.map((p): Join => [p.a, p.b])],
    pullUps: pullUps.map((r) => r.node),
    strong: [],
    closed,
    content: Array.from({ length: lanes }, () => content),
  };
  return { model, good, wires, plug, pullUps, terminal, grounds };
}
