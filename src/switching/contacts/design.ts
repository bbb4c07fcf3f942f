// Which device, which switch, which lines: every candidate, ranked. What is at hand comes first, then the fewest poles, then the
// fewest switched lines, then the fewest pins to work on. Turning a candidate into wires is for plan.ts.
import type { Catalogue } from "../../catalogue/index.js";
import { itemAt, known, type MemoryDevice, type Switch } from "../../records/index.js";
import { compare } from "../compare.js";
import type { Demands } from "../demand/demands.js";
import type { Sockets } from "../demand/sockets.js";
import type { WayOut, WiringOptions, WiringReason } from "../types.js";
import type { ContactPlan } from "./contact-plan.js";
import { contactPlans } from "./contacts.js";
import { type DeviceFit, fitDevice, type LineFit } from "./device.js";

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
  const atHand = new Set(options.atHand);
  const devices = sockets ? fittingDevices(catalogue, sockets, options.switch?.device) : { fits: [], reasons: [], waysOut: [] };
  const { fits } = devices;
  if (sockets && fits.length === 0) {
    return { ranked: [], complete: true, looked: 0, switches: 0, devices: 0, reasons: devices.reasons, waysOut: devices.waysOut };
  }
  const switches = [...catalogue.parts.values()].filter((p): p is Switch => p.type === "switch");
  const chosen = options.switch?.switch;
  // The levers of a DIP switch move one by one: it is offered only to an owner who names it.
  const named = switches.filter((s) => (chosen === undefined ? s.form !== "dip" : s.id === chosen));
  const usable = named.filter((s) => bears(s, demands));
  const mostLines = Math.max(0, ...fits.map((f) => f.lines.length));
  const searches = usable.map((s) => contactPlans(s, demands, mostLines));
  const ranked = searches
    .flatMap((search) => search.plans.flatMap((contacts) => withDevices(contacts, fits, sockets !== undefined, atHand)))
    .sort((a, b) => compare(rankOf(a), rankOf(b)));
  const complete = searches.every((s) => s.complete);
  const looked = searches.reduce((sum, s) => sum + s.looked, 0);
  const counts = { complete, looked, switches: usable.length, devices: fits.length };
  if (ranked.length > 0) return { ranked, ...counts, reasons: [], waysOut: [] };
  const why = searches.flatMap((s) => (s.says ? [`${s.says}.`] : []));
  return {
    ranked,
    ...counts,
    reasons: [noSwitch(demands, chosen, named, usable, why, complete, mostLines)],
    waysOut: [
      ...(chosen === undefined ? [] : otherSwitch(switches, demands, mostLines)),
      { says: "Plan fewer modes, or modes in which fewer cards differ." },
    ],
  };
}

interface FittingDevices {
  readonly fits: readonly DeviceFit[];
  readonly reasons: readonly WiringReason[];
  readonly waysOut: readonly WayOut[];
}

function fittingDevices(catalogue: Catalogue, sockets: Sockets, wanted: string | undefined): FittingDevices {
  const memories = [...catalogue.parts.values()].filter((p): p is MemoryDevice => p.type === "memory");
  const families = new Map(memories.map((m) => [m.family, m]));
  const results = memories.map((device) => ({ device, result: fitDevice(device, sockets, families) }));
  const fitting = results.flatMap(({ result }) => (result.kind === "fits" ? [result.fit] : []));
  const fits = wanted === undefined ? fitting : fitting.filter((f) => f.device.id === wanted);
  if (fits.length > 0) return { fits, reasons: [], waysOut: [] };
  if (wanted === undefined) {
    const unknown = sockets.sockets.find(({ socket }) => !families.has(socket.wired_for));
    const says = unknown
      ? `The pin order of ${unknown.socket.wired_for}, which ${unknown.socket.id} is wired for, is in no part record.`
      : `No memory device in the parts records fits ${socketText(sockets)}.`;
    const way = unknown ? [{ says: `Write a part record for the ${unknown.socket.wired_for} with its pins.` }] : [];
    return { fits, reasons: [{ code: "no-device", says, refs: [] }], waysOut: way };
  }
  const given = results.find(({ device }) => device.id === wanted);
  const says = given?.result.kind === "unfit" ? given.result.says : `The parts records hold no memory device ${wanted}.`;
  const other = fitting[0]?.device;
  return {
    fits,
    reasons: [{ code: "device-unfit", says, refs: [part(wanted)] }],
    waysOut: other ? [{ says: `Use ${other.name} instead.`, part: other.id }] : [],
  };
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

/** The most that one enable sends through a contact, of those known, in mA. */
export function mostCurrent_mA(demands: Demands): number {
  return Math.max(0, ...demands.cards.map((c) => (c.current_mA === "unknown" ? 0 : c.current_mA)));
}

/** A rating nobody knows rules nothing out; the plan lists it as a check left open. */
function bears(part: Switch, demands: Demands): boolean {
  const rating = known(part.rating_A);
  return rating === "unknown" || rating * 1000 >= mostCurrent_mA(demands);
}

function noSwitch(
  demands: Demands,
  chosen: string | undefined,
  named: readonly Switch[],
  usable: readonly Switch[],
  why: readonly string[],
  complete: boolean,
  lines: number,
): WiringReason {
  const asks =
    `${demands.modes.length} modes with ${demands.versions.length} firmware version${demands.versions.length === 1 ? "" : "s"} ` +
    `and ${demands.cards.length} switched card${demands.cards.length === 1 ? "" : "s"}`;
  if (named.length > 0 && usable.length === 0) {
    const says = `An enable sends ${mostCurrent_mA(demands)} mA through its contact, more than ${chosen === undefined ? "any switch here" : itemAt(named, 0).name} is rated for.`;
    return { code: "rating", says, refs: named.map((s) => part(s.id)) };
  }
  if (chosen !== undefined && named.length === 0) {
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
    .filter((s) => s.form !== "dip" && bears(s, demands))
    .flatMap((s) => contactPlans(s, demands, lines).plans.slice(0, 1))
    .sort((a, b) => a.part.terminals.length - b.part.terminals.length);
  return fitting.slice(0, 1).map(({ part: { id, name } }) => ({ says: `Use ${name} instead.`, part: id }));
}

export function part(id: string): { readonly kind: string; readonly id: string; readonly pointer: string } {
  return { kind: "part", id, pointer: "" };
}

function socketText(sockets: Sockets): string {
  const names = sockets.sockets.map((s) => s.socket.id).join(" and ");
  return `${names} (${itemAt(sockets.sockets, 0).socket.pins} pins, ${sockets.width} bits, wired for ${itemAt(sockets.sockets, 0).socket.wired_for})`;
}
