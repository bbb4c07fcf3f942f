// Faults of wires, plug, resistors and pins: open, grounded, bridged, mirrored, missing, not lifted.
import { entryOf, itemAt } from "../../records/index.js";
import { mirrorMap, neighbours } from "../harness/connectors.js";
import { switchConnector } from "../harness/loom.js";
import { isLifted } from "../harness/pull-ups.js";
import { endKey } from "../harness/wires.js";
import { groundNode, type Join, supplyNode } from "../simulate/netlist.js";
import type { Fault } from "../types.js";
import { type FaultCase, type FaultInput, switchWires } from "./fault-case.js";

export function openWires(input: FaultInput): FaultCase[] {
  const { built } = input;
  const at = built.grounds.length;
  return switchWires(input).map((wire, w) => ({
    fault: {
      id: `wire-open:${wire.number}`,
      kind: "wire-open",
      says: `Wire ${wire.number} (${wire.label}) open, ${wire.fromText} to ${wire.toText}`,
      short: `Wire ${wire.number} open, ${wire.fromText} to ${wire.toText}`,
      fix: `Measure wire ${wire.number} end to end and solder it again.`,
    },
    variant: { ...built.good, joins: built.good.joins.filter((_, j) => j !== at + w) },
    burn: false,
  }));
}

/** What a device gives that lacks a level or a supply at one pin nobody can say; a resistor that lacks an end is none. */
export function openPinWires({ built, loom, candidate }: FaultInput): FaultCase[] {
  const sockets = candidate.fit?.lines[0]?.at.map((at) => at.socket) ?? [];
  return loom.pinWires.map(({ number, label, fromText, toText, serves }): FaultCase => {
    const at = "resistor" in serves ? loom.pullUps.findIndex((r) => r.id === serves.resistor) : -1;
    const variant =
      "resistor" in serves
        ? { ...built.good, pullUps: built.good.pullUps.filter((_, k) => k !== at) }
        : {
            ...built.good,
            content: built.good.content.map((held, lane) => (sockets[lane] === serves.socket ? held.map(() => undefined) : held)),
          };
    return {
      fault: {
        id: `wire-open:${number}`,
        kind: "wire-open",
        says: `Wire ${number} (${label}) open, ${fromText} to ${toText}`,
        short: `Wire ${number} open, ${fromText} to ${toText}`,
        fix: `Measure wire ${number} end to end and solder it again.`,
      },
      variant,
      burn: false,
    };
  });
}

/** A bare place that touches ground, or +5 V. */
export function touchingNets({ built, loom }: FaultInput): FaultCase[] {
  return loom.paths
    .filter((p) => p.net.kind !== "ground")
    .flatMap(({ net, machine }) => {
      const node = built.model.nodes.indexOf(endKey(itemAt(machine, 0)));
      const touch = (kind: "wire-to-ground" | "wire-to-supply", what: string, other: number): FaultCase => ({
        fault: {
          id: `${kind}:${net.id}`,
          kind,
          says: `${net.label} touches ${what}`,
          fix: `Look along the wires of ${net.label} for a bare place against ${what}.`,
        },
        variant: { ...built.good, joins: [...built.good.joins, [other, node] as Join] },
        burn: false,
      });
      return [touch("wire-to-ground", "ground", groundNode), touch("wire-to-supply", "+5 V", supplyNode)];
    });
}

export function bridges({ built, loom, candidate }: FaultInput): FaultCase[] {
  const cases: FaultCase[] = [];
  const bridge = (id: string, kind: Fault["kind"], says: string, a: number, b: number) =>
    cases.push({
      fault: { id, kind, says, fix: "Take the bridge away and look at it with a glass." },
      variant: { ...built.good, joins: [...built.good.joins, [a, b]] },
      burn: false,
    });
  if (loom.pair) {
    const at = new Map(built.plug.map((p) => [p.contact, p.a]));
    for (const [x, y] of neighbours(loom.pair.fixed)) {
      const [a, b] = [at.get(x), at.get(y)];
      if (a === undefined || b === undefined) continue;
      bridge(`contacts-bridged:${x}~${y}`, "contacts-bridged", `${switchConnector} contacts ${x} and ${y} bridged`, a, b);
    }
  }
  const wired = new Set(loom.paths.flatMap((p) => p.terminals));
  const { terminals } = candidate.contacts.part;
  terminals.forEach((x, i) => {
    const y = terminals[i + 1];
    if (y === undefined || (!wired.has(x) && !wired.has(y))) return;
    bridge(
      `terminals-bridged:${x}~${y}`,
      "terminals-bridged",
      `switch terminals ${x} and ${y} bridged`,
      entryOf(built.terminal, x),
      entryOf(built.terminal, y),
    );
  });
  return cases;
}

export function mirroredPlugs({ built, loom }: FaultInput): FaultCase[] {
  const { pair } = loom;
  if (!pair) return [];
  const from = built.grounds.length + built.wires.length;
  return (["x", "y"] as const).flatMap((axis): FaultCase[] => {
    const map = mirrorMap(pair.fixed, axis);
    if ([...map].every(([a, b]) => a === b)) return [];
    const loose = new Map(built.plug.map((p) => [p.contact, p.b]));
    const plug = built.plug.flatMap(({ contact, a }): Join[] => {
      const other = loose.get(map.get(contact) ?? "");
      return other === undefined ? [] : [[a, other]];
    });
    const how = axis === "x" ? "left and right" : "the upper and the lower row";
    return [
      {
        fault: {
          id: `plug-mirrored:${axis}`,
          kind: "plug-mirrored",
          says: `${switchConnector} wired as its mirror image, ${how} exchanged`,
          fix: `Solder ${switchConnector} again by the drawing of its solder side.`,
        },
        variant: { ...built.good, joins: [...built.good.joins.slice(0, from), ...plug] },
        burn: false,
      },
    ];
  });
}

export function pullUpsMissing({ built, loom }: FaultInput): FaultCase[] {
  return loom.pullUps.map((r, i) => ({
    fault: {
      id: `pull-up-missing:${r.id}`,
      kind: "pull-up-missing",
      says: `${r.id} on ${r.label} missing or open`,
      fix: `Fit ${r.id}, ${r.ohms} ohm, between ${r.label} and +5 V.`,
    },
    variant: { ...built.good, pullUps: built.good.pullUps.filter((_, k) => k !== i) },
    burn: false,
  }));
}

export function pinsNotLifted({ built, candidate }: FaultInput): FaultCase[] {
  return candidate.lines
    .filter((use) => use.role === "switched" || use.tied)
    .flatMap((use) =>
      use.fit.at
        .filter((at) => isLifted(at.carries))
        .map((at): FaultCase => {
          const node = built.model.nodes.indexOf(endKey({ at: "device", socket: at.socket, pin: use.fit.pin, lifted: false }));
          const level = at.carries === "high" || at.carries === "supply" ? "high" : at.carries === "low" ? "low" : "driven";
          return {
            fault: {
              id: `pin-not-lifted:${at.socket}:${use.fit.pin}`,
              kind: "pin-not-lifted",
              says: `${at.socket} device pin ${use.fit.pin} (${use.fit.line}) still touches socket pin ${at.socketPin}`,
              // Another supply than +5 V is no level: what the device does, or whether it still lives, nobody can say.
              fix:
                at.carries === "rail"
                  ? `Power off at once; lift device pin ${use.fit.pin} clear of the socket in ${at.socket} and try another device: this one has met another supply than +5 V.`
                  : `Lift device pin ${use.fit.pin} clear of the socket in ${at.socket}.`,
            },
            variant: { ...built.good, strong: [{ node, level }] },
            burn: false,
          };
        }),
    );
}
