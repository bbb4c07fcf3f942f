// The wires of a plan: for every net the path from the machine over the connector to the switch, numbered, with both ends.
// Currents, lengths and drops are put on by electrical.ts.
import { itemAt } from "../../records/index.js";
import type { Called } from "../../switching/index.js";
import type { End, Net, Wire } from "../types.js";

/** What a net joins on each side of the connector. */
export interface NetPath {
  readonly net: Net;
  /** Ends in the machine; the first carries the wire to the connector, the others are linked to the first. */
  readonly machine: readonly End[];
  /** Terminals of the switch. */
  readonly terminals: readonly string[];
  /** Contact of the connector; undefined: wired straight to the switch. */
  readonly contact?: string;
}

export type BareWire = Omit<Wire, "current_mA" | "length_m" | "drop_mV">;

export function wiresOf(paths: readonly NetPath[], connector: string | undefined, called: Called): BareWire[] {
  const wires: BareWire[] = [];
  let conductor = 0;
  const add = (net: Net, from: End, to: End, run: Wire["run"]) => {
    if (run === "cable") conductor += 1;
    const of = run === "cable" ? { conductor } : {};
    const texts = { fromText: endText(from, called), toText: endText(to, called) };
    wires.push({ number: 0, net: net.id, label: net.label, from, to, ...texts, run, ...of });
  };
  for (const { net, machine, terminals, contact } of paths) {
    const [first, ...others] = machine;
    const [terminal] = terminals;
    if (!first || terminal === undefined) continue;
    for (const other of others) add(net, first, other, "jumper");
    const lug: End = { at: "switch", terminal };
    if (connector !== undefined && contact !== undefined) {
      add(net, first, { at: "connector", connector, half: "panel", contact }, "board");
      add(net, { at: "connector", connector, half: "cable", contact }, lug, "cable");
    } else add(net, first, lug, "cable");
    for (let i = 1; i < terminals.length; i += 1) {
      add(net, { at: "switch", terminal: itemAt(terminals, i - 1) }, { at: "switch", terminal: itemAt(terminals, i) }, "jumper");
    }
  }
  const order = { board: 0, cable: 1, jumper: 2 };
  return [...wires].sort((a, b) => order[a.run] - order[b.run]).map((wire, i) => ({ ...wire, number: i + 1 }));
}

export function endText(end: End, called: Called): string {
  switch (end.at) {
    case "device":
      return `${end.socket} device pin ${end.pin}${end.lifted ? " (lifted)" : ""}`;
    case "socket":
      return `${end.socket} socket pin ${end.pin}`;
    case "card":
      return `${called(end.card)} ${end.point}`;
    case "connector":
      return `${end.connector} ${end.half === "panel" ? "fixed half" : "loose half"} contact ${end.contact}`;
    case "switch":
      return `switch ${end.terminal}`;
    case "lead":
      return `${called(end.card)} lead, conductor ${end.conductor} (${end.signal})`;
    case "resistor":
      return end.resistor;
    case "ground":
    case "supply":
      return end.says;
  }
}

/** One name for each end, the same for the same place. */
export function endKey(end: End): string {
  switch (end.at) {
    case "device":
      return `device ${end.socket} ${end.pin}`;
    case "socket":
      return `socket ${end.socket} ${end.pin}`;
    case "card":
      return `card ${end.card} ${end.point}`;
    case "connector":
      return `connector ${end.connector} ${end.half} ${end.contact}`;
    case "switch":
      return `switch ${end.terminal}`;
    case "lead":
      return `lead ${end.card} ${end.conductor}`;
    case "resistor":
      return `resistor ${end.resistor}`;
    case "ground":
      return "ground";
    case "supply":
      return "supply";
  }
}
