// Everything to have on the bench before the work begins: counted, with what each is for and whether it is at hand.
import type { Catalogue } from "../../catalogue/index.js";
import type { Called, Candidate, Sockets } from "../../switching/index.js";
import type { DevicePlan, End, PartLine, PinWork } from "../types.js";
import { type Harness, switchConnector } from "./loom.js";

export interface PartsInput {
  readonly pinWork: readonly PinWork[];
  readonly catalogue: Catalogue;
  readonly candidate: Candidate;
  readonly device?: DevicePlan | undefined;
  readonly loom: Harness;
  readonly sockets?: Sockets | undefined;
  readonly atHand: ReadonlySet<string>;
  readonly called: Called;
}

export function partsList({ pinWork, catalogue, candidate, device, loom, sockets, atHand, called }: PartsInput): PartLine[] {
  const lines: PartLine[] = [];
  const add = (part: string | undefined, name: string, count: number, use: string) => {
    if (count > 0)
      lines.push({ ...(part === undefined ? {} : { part }), name, count, use, atHand: part !== undefined && atHand.has(part) });
  };
  if (device) {
    const grade = device.grade === "unknown" ? "the fastest grade" : `grade ${device.grade.marking} or faster`;
    add(device.part, device.name, sockets?.sockets.length ?? 1, `holds the images; ${grade}`);
  }
  add(candidate.contacts.part.id, candidate.contacts.part.name, 1, "chooses the mode");
  for (const c of loom.connectors) {
    const use = c.purpose === "switch" ? `${c.id}, loom of the switch` : `${c.id}, lead to the outside`;
    add(c.part, c.name, 1, use);
    add(
      c.mates,
      c.mates === undefined ? `Other half for ${c.name}` : (catalogue.parts.get(c.mates)?.name ?? c.mates),
      1,
      `${c.id}, other half`,
    );
  }
  for (const c of loom.cables) add(c.part, c.name, 1, c.purpose === "switch" ? "loom of the switch" : "lead to the outside");
  const resistors = new Map<string, { part?: string | undefined; ohms: number; names: string[] }>();
  for (const r of loom.pullUps) {
    const key = r.part ?? String(r.ohms);
    const entry = resistors.get(key) ?? { part: r.part, ohms: r.ohms, names: [] as string[] };
    entry.names.push(r.id);
    resistors.set(key, entry);
  }
  for (const r of resistors.values())
    add(r.part, catalogue.parts.get(r.part ?? "")?.name ?? `Resistor ${r.ohms} ohm`, r.names.length, `pull-ups ${r.names.join(", ")}`);
  // A device is bent once and never straight again: a socket between takes the lifted pins.
  const lifting = new Set(pinWork.filter((w) => w.does !== "wire-in-place" && w.does !== "tie").map((w) => w.socket));
  add(
    undefined,
    "Turned-pin socket or adapter that carries the lifted and overhanging pins",
    lifting.size,
    `between device and ${[...lifting].join(" and ")}`,
  );
  const board = loom.wires.filter((w) => w.run !== "cable").length;
  add(undefined, "Thin insulated wire", board, "pieces inside the machine and links at the switch");
  for (const [card, points] of enablePoints(loom))
    add(undefined, "Small socket or clip for a post", points.length, `enable points of ${called(card)}: ${points.join(", ")}`);
  add(undefined, "Heat-shrink sleeve", solderedEnds(loom), "soldered ends at the switch and the connectors");
  add(undefined, "Label for a wire", 2 * loom.wires.length, "one at each end of every wire");
  if (candidate.contacts.part.form === "rotary") add(undefined, "Knob with a pointer", 1, "on the shaft of the switch");
  if (candidate.fit?.device.technology === "uv-eprom")
    add(undefined, "Opaque label for the window", sockets?.sockets.length ?? 1, "on the burned device, with version, checksum and date");
  return lines;
}

/** Points of each card that a wire of the loom ends on. */
function enablePoints(loom: Harness): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const { machine } of loom.paths)
    for (const end of machine) if (end.at === "card") found.set(end.card, [...(found.get(end.card) ?? []), end.point]);
  return found;
}

/** Ends of wires on a terminal of the switch, or on a contact that is not pressed on a ribbon. */
function solderedEnds(loom: Harness): number {
  const pressed = loom.pair?.loose?.ribbon === true;
  const soldered = (end: End) =>
    end.at === "switch" || (end.at === "connector" && !(pressed && end.half === "cable" && end.connector === switchConnector));
  return loom.wires.flatMap((w) => [w.from, w.to]).filter(soldered).length;
}
