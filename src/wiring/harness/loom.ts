// The loom of a candidate: its nets, where each ends in the machine and on the switch, the connectors and cables that carry them,
// pull-ups, and the wires. What the wires do is for the simulation.
import type { Catalogue } from "../../catalogue/index.js";
import type { Combination } from "../../planning/index.js";
import { type Cable, definedFields, itemAt, known, must } from "../../records/index.js";
import type { Candidate, Demands, Sockets, TerminalUse } from "../../switching/index.js";
import type { CablePlan, ConnectorPlan, End, Net, PullUp, WayOut, WiringOptions, WiringReason } from "../types.js";
import { type ConnectorPair, connectorPlan, contactOrder, pickCable, pickConnector } from "./connectors.js";
import { ohmPerMetre, rounded } from "./electrical.js";
import { type PinWire, pinWires } from "./pin-wires.js";
import { isLifted, pullUpsOf } from "./pull-ups.js";
import { type BareWire, type NetPath, wiresOf } from "./wires.js";

export interface Harness {
  readonly nets: readonly Net[];
  readonly paths: readonly NetPath[];
  readonly connectors: readonly ConnectorPlan[];
  /** The pair the switch loom goes through; undefined: soldered at both ends. */
  readonly pair?: ConnectorPair;
  readonly cables: readonly CablePlan[];
  readonly pullUps: readonly PullUp[];
  readonly wires: readonly BareWire[];
  /** Those of them that serve one pin, and no contact of the switch. */
  readonly pinWires: readonly PinWire[];
  /** Most current in a conductor of each lead net, in A. */
  readonly leadAmps: ReadonlyMap<string, number | "unknown">;
  readonly notes: readonly string[];
}

export interface LoomInput {
  readonly catalogue: Catalogue;
  readonly combination: Combination;
  readonly candidate: Candidate;
  readonly demands: Demands;
  readonly sockets?: Sockets | undefined;
  readonly options: WiringOptions;
  readonly supply_V: number;
}

export type LoomResult =
  | { readonly kind: "loom"; readonly loom: Harness }
  | { readonly kind: "refused"; readonly reasons: readonly WiringReason[]; readonly waysOut: readonly WayOut[] };

export const switchConnector = "J1";

export function loomOf(input: LoomInput): LoomResult {
  const { catalogue, options } = input;
  const atHand = new Set(options.atHand);
  const notes: string[] = [];
  const paths = netPaths(input);
  const leads = leadsOf(input);
  const roles = rolesOf(input, leads.length > 0);

  const refuse = (
    code: "connector-unfit" | "cable-unfit",
    says: string,
    named: string | undefined,
    instead: string | undefined,
  ): LoomResult => ({
    kind: "refused",
    reasons: [{ code, says, refs: named === undefined ? [] : [{ kind: "part", id: named, pointer: "" }] }],
    waysOut: instead === undefined ? [] : [{ says: `Use ${catalogue.parts.get(instead)?.name ?? instead} instead.`, part: instead }],
  });

  // The switch's own connector and cable.
  const named = roles.connector === "switch" ? options.switch?.connector : undefined;
  const amps = Math.max(0, ...input.demands.cards.map((c) => (c.current_mA === "unknown" ? 0 : c.current_mA / 1000)));
  const picked = pickConnector(catalogue, paths.length, { atHand, named, amps });
  if (picked.kind === "none" && named !== undefined) return refuse("connector-unfit", picked.says, named, picked.instead);
  const pair = picked.kind === "picked" ? picked.value : undefined;
  if (picked.kind === "none") notes.push(`${picked.says} The loom is soldered at both ends; there is no plug to pull.`);
  const ribbon = pair?.loose?.ribbon === true;
  const namedCable = roles.cable === "switch" ? options.switch?.cable : undefined;
  const cable = pickCable(catalogue, paths.length, { atHand, named: namedCable, ribbon });
  if (cable.kind === "none" && namedCable !== undefined) return refuse("cable-unfit", cable.says, namedCable, cable.instead);
  if (cable.kind === "none") notes.push(`${cable.says} Use single wires for the loom and mark both ends.`);

  const order = pair ? contactOrder(pair.fixed) : [];
  const carried = paths.map((path, i): NetPath => (pair ? { ...path, contact: itemAt(order, i) } : path));
  const connectors: ConnectorPlan[] = [];
  const cables: CablePlan[] = [];
  if (pair) {
    const netOf = new Map(carried.map((p) => [must(p.contact, "p.contact"), { net: p.net.id, label: p.net.label }]));
    connectors.push(connectorPlan(switchConnector, "switch", pair, netOf, atHand));
  }
  if (cable.kind === "picked") cables.push(cablePlan(cable.value, "switch", paths.length, atHand, options.length_m));
  const { called } = input.demands;
  const bare = wiresOf(carried, pair ? switchConnector : undefined, called);
  const wires: BareWire[] = bare.map((wire) =>
    wire.run === "cable" && ribbon && wire.from.at === "connector"
      ? { ...wire, ...definedFields({ conductor: Number(wire.from.contact) || wire.conductor }) }
      : wire,
  );

  // Leads that cards bring to the outside.
  const nets = paths.map((p) => p.net);
  const leadAmps = new Map<string, number | "unknown">();
  for (const lead of leads) {
    const mine = roles.connector === "lead" ? options.switch?.connector : undefined;
    const found = pickConnector(catalogue, lead.conductors, {
      atHand,
      named: mine,
      panel: mine === undefined ? true : undefined,
      amps: lead.amps === "unknown" ? 0 : lead.amps,
    });
    if (found.kind === "none") return refuse("connector-unfit", `${called(lead.card)}, ${lead.name}: ${found.says}`, mine, found.instead);
    const theirs = roles.cable === "lead" ? options.switch?.cable : undefined;
    const wire = pickCable(catalogue, lead.conductors, { atHand, named: theirs, ribbon: false });
    if (wire.kind === "none" && theirs !== undefined)
      return refuse("cable-unfit", `${called(lead.card)}, ${lead.name}: ${wire.says}`, theirs, wire.instead);
    const id = `J${connectors.length + (pair ? 1 : 2)}`;
    const contacts = contactOrder(found.value.fixed);
    const netOf = new Map<string, { net: string; label: string }>();
    for (let i = 0; i < lead.conductors; i += 1) {
      const signal = lead.signals[i] ?? `${i + 1}`;
      const net: Net = { id: `${lead.card}:${lead.name}:${i + 1}`, label: `${called(lead.card)} ${signal}`, kind: "lead", card: lead.card };
      nets.push(net);
      leadAmps.set(net.id, lead.amps);
      netOf.set(itemAt(contacts, i), { net: net.id, label: net.label });
      wires.push(leadWire(net, lead, called(lead.card), i, signal, id, itemAt(contacts, i)));
    }
    connectors.push(connectorPlan(id, "lead", found.value, netOf, atHand));
    if (wire.kind === "picked") cables.push(cablePlan(wire.value, "lead", lead.conductors, atHand, undefined));
    else notes.push(`${called(lead.card)}, ${lead.name}: ${wire.says}`);
  }
  const pullUps = pullUpsOf(input);
  const fixed = pinWires(input.candidate.fit?.pinWork ?? [], pullUps, called).map((wire, i) => ({ ...wire, number: wires.length + i + 1 }));
  const numbered = [...wires.map((wire, i) => ({ ...wire, number: i + 1 })), ...fixed.map(({ serves: _, ...wire }) => wire)];
  return {
    kind: "loom",
    loom: {
      nets,
      paths: carried,
      connectors,
      ...(pair ? { pair } : {}),
      cables,
      pullUps,
      pinWires: fixed,
      wires: numbered,
      leadAmps,
      notes,
    },
  };
}

interface Lead {
  readonly card: string;
  readonly name: string;
  readonly conductors: number;
  readonly signals: readonly string[];
  readonly amps: number | "unknown";
}

function leadsOf({ catalogue, combination }: LoomInput): Lead[] {
  return combination.cards.flatMap((placed) =>
    (catalogue.cards.get(placed.card)?.panel ?? []).map((panel): Lead => {
      return {
        card: placed.as,
        name: panel.name,
        conductors: panel.conductors,
        signals: panel.signals ?? [],
        amps: known(panel.current_A),
      };
    }),
  );
}

/** A connector or cable the owner named serves a card's lead when it is made for that; else it serves the switch. */
function rolesOf(
  { catalogue, options }: LoomInput,
  leads: boolean,
): { readonly connector: "switch" | "lead"; readonly cable: "switch" | "lead" } {
  const connector = catalogue.parts.get(options.switch?.connector ?? "");
  const mate = connector?.type === "connector" ? catalogue.parts.get(connector.mates ?? "") : undefined;
  const inPanel = (connector?.type === "connector" && connector.panel) || (mate?.type === "connector" && mate.panel);
  const cable = catalogue.parts.get(options.switch?.cable ?? "");
  const flat = cable?.type === "cable" && cable.ribbon === true;
  return { connector: leads && inPanel ? "lead" : "switch", cable: leads && !flat ? "lead" : "switch" };
}

function netPaths({ candidate, demands, sockets }: LoomInput): NetPath[] {
  const { contacts, fit, lines } = candidate;
  const paths: NetPath[] = [];
  const terminals = (wanted: (use: TerminalUse) => boolean) =>
    contacts.uses.flatMap((use) => (use ? [...use].filter(([, t]) => wanted(t)).map(([terminal]) => terminal) : []));

  lines
    .filter((use) => use.role === "switched")
    .forEach((use, line) => {
      paths.push({
        net: { id: use.fit.line, label: use.fit.line, kind: "bank-line" },
        machine: use.fit.at.map((at): End => ({ at: "device", socket: at.socket, pin: use.fit.pin, lifted: isLifted(at.carries) })),
        terminals: terminals((t) => t.kind === "line" && t.line === line),
      });
    });
  demands.cards.forEach((card, i) => {
    const enable = (point: string): Net => ({
      id: `${card.card}:${point}`,
      label: `${demands.called(card.card)} ${point}`,
      kind: "enable",
      card: card.card,
      point,
    });
    const path = (point: string, at: readonly string[]): NetPath => ({
      net: enable(point),
      machine: [{ at: "card", card: card.card, point }],
      terminals: at,
    });
    const side = (name: string) => terminals((t) => t.kind === "card" && t.card === i && t.side === name);
    if (card.kind === "ground") paths.push(path(card.point, side("closed")));
    else if (card.kind === "pair") paths.push(path(card.points[0], side("common")), path(card.points[1], side("closed")));
    else paths.push(path(card.common, side("common")), path(card.on, side("on")), path(card.off, side("off")));
  });
  const ground = terminals((t) => t.kind === "ground");
  if (ground.length > 0) {
    paths.push({ net: { id: "GND", label: "GND", kind: "ground" }, machine: [groundEnd(fit, sockets, demands)], terminals: ground });
  }
  return paths.filter((p) => p.terminals.length > 0);
}

/** One ground return for all: the memory socket's ground, or the card's own where no memory device is switched. */
function groundEnd(fit: Candidate["fit"], sockets: Sockets | undefined, demands: Demands): End {
  const socket = sockets?.sockets[0]?.socket;
  if (fit && socket) return { at: "socket", socket: socket.id, pin: fit.groundPin };
  const card = demands.cards.find((c) => c.kind === "ground" && c.groundPoint !== undefined);
  if (card?.kind === "ground" && card.groundPoint !== undefined) return { at: "card", card: card.card, point: card.groundPoint };
  return { at: "ground", says: "ground of the board" };
}

function cablePlan(
  cable: Cable,
  purpose: "switch" | "lead",
  used: number,
  atHand: ReadonlySet<string>,
  length: number | undefined,
): CablePlan {
  return {
    part: cable.id,
    name: cable.name,
    purpose,
    conductors: cable.conductors,
    used,
    spare: cable.conductors - used,
    awg: cable.awg,
    ohm_per_m: rounded(ohmPerMetre(cable.awg), 5),
    ...(length === undefined ? {} : { length_m: length }),
    atHand: atHand.has(cable.id),
  };
}

function leadWire(net: Net, lead: Lead, card: string, index: number, signal: string, connector: string, contact: string): BareWire {
  const from: End = { at: "lead", card: lead.card, conductor: index + 1, signal };
  const to: End = { at: "connector", connector, half: "panel", contact };
  return {
    number: 0,
    net: net.id,
    label: net.label,
    from,
    to,
    fromText: `${card} ${lead.name}, conductor ${index + 1} (${signal})`,
    toText: `${connector} fixed half contact ${contact}`,
    run: "board",
  };
}
