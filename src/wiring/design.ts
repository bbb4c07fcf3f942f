// Which device, which switch, which lines: every candidate, ranked. What is at hand comes first, then the fewest poles, then the
// fewest switched lines, then the fewest pins to work on. Turning a candidate into wires is for assemble.ts.
import type { Catalogue } from "../catalogue/index.js";
import type { MemoryDevice, Switch } from "../records/index.js";
import { compare } from "./connectors.js";
import type { ContactPlan } from "./contactPlan.js";
import { contactPlans } from "./contacts.js";
import type { Demands } from "./demands.js";
import { type DeviceFit, fitDevice, type LineFit } from "./device.js";
import type { Sockets } from "./sockets.js";
import type { WayOut, WiringOptions, WiringReason } from "./types.js";

export interface LineUse {
  readonly fit: LineFit;
  readonly role: "switched" | "fixed-high" | "fixed-low";
  /** Fixed by a resistor of ours, since the socket gives it no level. */
  readonly tied: boolean;
}

export interface Candidate {
  readonly contacts: ContactPlan;
  readonly fit?: DeviceFit;
  /** Every bank line, lowest first. */
  readonly lines: readonly LineUse[];
  /** Pins to lift, reach or tie, over all sockets. */
  readonly works: number;
  /** Parts the owner does not have: switch and device. */
  readonly toGet: number;
}

export interface Candidates {
  readonly ranked: readonly Candidate[];
  /** Every switch and device was looked at to the end. */
  readonly complete: boolean;
  readonly looked: number;
  readonly switches: number;
  readonly devices: number;
  readonly reasons: readonly WiringReason[];
  readonly waysOut: readonly WayOut[];
}

export function candidates(catalogue: Catalogue, sockets: Sockets | undefined, demands: Demands, options: WiringOptions): Candidates {
  const parts = [...catalogue.parts.values()];
  const atHand = new Set(options.atHand);
  const memories = parts.filter((p): p is MemoryDevice => p.type === "memory");
  const families = new Map(memories.map((m) => [m.family, m]));
  const reasons: WiringReason[] = [];
  const waysOut: WayOut[] = [];

  const fits: DeviceFit[] = [];
  if (sockets) {
    const named = options.switch?.device;
    const tried = named === undefined ? memories : memories.filter((m) => m.id === named);
    const unfit: string[] = [];
    for (const device of tried) {
      const result = fitDevice(device, sockets, families);
      if (result.kind === "fits") fits.push(result.fit);
      else unfit.push(result.says);
    }
    if (named !== undefined && tried.length === 0) unfit.push(`The parts records hold no memory device ${named}.`);
    if (fits.length === 0) {
      const says = named === undefined ? `No memory device in the parts records fits ${socketText(sockets)}.` : (unfit[0] ?? "");
      reasons.push({ code: named === undefined ? "no-device" : "device-unfit", says, refs: named === undefined ? [] : [part(named)] });
      if (named !== undefined) {
        const other = memories.find((m) => fitDevice(m, sockets, families).kind === "fits");
        if (other) waysOut.push({ says: `Use ${other.name} instead.`, part: other.id });
      }
    }
  }

  const switches = parts.filter((p): p is Switch => p.type === "switch");
  const chosen = options.switch?.switch;
  // The levers of a DIP switch move one by one: it is offered only to an owner who names it.
  const usable = chosen === undefined ? switches.filter((s) => s.form !== "dip") : switches.filter((s) => s.id === chosen);
  const mostLines = Math.max(0, ...fits.map((f) => f.lines.length));
  const found: Candidate[] = [];
  let complete = true;
  let looked = 0;
  const why: string[] = [];
  if (!sockets || fits.length > 0) {
    for (const part of usable) {
      const search = contactPlans(part, demands, mostLines);
      complete &&= search.complete;
      looked += search.looked;
      if (search.says) why.push(`${search.says}.`);
      for (const contacts of search.plans) found.push(...withDevices(contacts, fits, sockets !== undefined, atHand));
    }
  }
  if (found.length === 0 && reasons.length === 0) {
    reasons.push(noSwitch(demands, chosen, usable.length, why, complete, mostLines));
    if (chosen !== undefined) waysOut.push(...otherSwitch(switches, demands, mostLines));
    waysOut.push({ says: "Plan fewer modes, or modes in which fewer cards differ." });
  }
  const ranked = found.sort((a, b) => compare(rankOf(a), rankOf(b)));
  return { ranked, complete, looked, switches: usable.length, devices: fits.length, reasons, waysOut };
}

export function rankOf(c: Candidate): readonly (number | string)[] {
  const { contacts, fit } = c;
  return [
    c.toGet,
    contacts.poles,
    contacts.lines,
    c.works,
    contacts.part.positions.length - contacts.modeAt.filter((m) => m !== undefined).length,
    contacts.contacts,
    contacts.part.terminals.length,
    fit?.device.technology === "flash" ? 1 : 0,
    fit?.capacity ?? 0,
    contacts.part.id,
    fit?.device.id ?? "",
  ];
}

function withDevices(contacts: ContactPlan, fits: readonly DeviceFit[], needed: boolean, atHand: ReadonlySet<string>): Candidate[] {
  const missing = atHand.has(contacts.part.id) ? 0 : 1;
  if (!needed) return [{ contacts, lines: [], works: 0, toGet: missing }];
  return fits
    .filter((fit) => fit.lines.length >= contacts.lines)
    .map((fit) => {
      const lines = chooseLines(fit, contacts.lines);
      const works =
        fit.pinWork.length + lines.reduce((sum, use) => sum + (use.role === "switched" ? use.fit.liftsToSwitch : use.fit.worksToFix), 0);
      return { contacts, fit, lines, works, toGet: missing + (atHand.has(fit.device.id) ? 0 : 1) };
    });
}

/** The lines whose switching costs the least pin work against leaving them as they are; of equals the lowest. */
function chooseLines(fit: DeviceFit, count: number): LineUse[] {
  const price = (line: LineFit) => line.liftsToSwitch - line.worksToFix;
  const switched = new Set([...fit.lines].sort((a, b) => price(a) - price(b) || a.bit - b.bit).slice(0, count));
  return fit.lines.map((line) => ({
    fit: line,
    role: switched.has(line) ? "switched" : line.rest === "low" ? "fixed-low" : "fixed-high",
    tied: !switched.has(line) && line.rest === undefined,
  }));
}

function noSwitch(
  demands: Demands,
  chosen: string | undefined,
  tried: number,
  why: readonly string[],
  complete: boolean,
  lines: number,
): WiringReason {
  const asks =
    `${demands.modes.length} modes with ${demands.versions.length} firmware version${demands.versions.length === 1 ? "" : "s"} ` +
    `and ${demands.cards.length} switched card${demands.cards.length === 1 ? "" : "s"}`;
  if (chosen !== undefined && tried === 0) {
    return { code: "switch-unfit", says: `The parts records hold no switch ${chosen}.`, refs: [part(chosen)] };
  }
  const end = complete ? "" : " Not every assignment was tried.";
  if (2 ** lines < demands.versions.length) {
    return { code: "no-device", says: `No device that fits has banks for ${demands.versions.length} versions.`, refs: [] };
  }
  if (chosen !== undefined) return { code: "switch-unfit", says: `${why[0] ?? ""}${end}`, refs: [part(chosen)] };
  return { code: "no-switch", says: `No single switch in the parts records can give ${asks}.${end}`, refs: [] };
}

function otherSwitch(switches: readonly Switch[], demands: Demands, lines: number): WayOut[] {
  const fitting = switches
    .filter((s) => s.form !== "dip")
    .flatMap((s) => contactPlans(s, demands, lines).plans.slice(0, 1))
    .sort((a, b) => a.part.terminals.length - b.part.terminals.length);
  return fitting.slice(0, 1).map(({ part: { id, name } }) => ({ says: `Use ${name} instead.`, part: id }));
}

export function part(id: string): { readonly kind: string; readonly id: string; readonly pointer: string } {
  return { kind: "part", id, pointer: "" };
}

function socketText(sockets: Sockets): string {
  const names = sockets.sockets.map((s) => s.socket.id).join(" and ");
  return `${names} (${sockets.sockets[0]!.socket.pins} pins, ${sockets.width} bits, wired for ${sockets.sockets[0]!.socket.wired_for})`;
}
