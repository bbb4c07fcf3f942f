// The tables of a plan that say what was chosen: modes, device, bank lines, pin work, switch and contact table.

import { entryOf, itemAt } from "../../records/index.js";
import type { Candidate, Demands, DeviceFit, LineUse, Sockets } from "../../switching/index.js";
import type { Harness } from "../harness/loom.js";
import { isLifted } from "../harness/pull-ups.js";
import type { BuiltModel } from "../simulate/build-model.js";
import { machineState, rawState } from "../simulate/model.js";
import type { BankLine, ContactRow, DevicePlan, PinWork, PlannedMode, SwitchPlan } from "../types.js";

export function plannedModes(candidate: Candidate, demands: Demands): PlannedMode[] {
  const { part, modeAt } = candidate.contacts;
  return demands.modes.map((mode, m) => ({
    id: mode.id,
    name: mode.name,
    firmware: mode.firmware,
    enabled: mode.enabled,
    safest: m === demands.safest,
    positions: part.positions.filter((_, p) => modeAt[p] === m),
  }));
}

const counted: Readonly<Record<number, string>> = { 1: "", 2: "Two of ", 4: "Four of " };

export function devicePlan(fit: DeviceFit, sockets: Sockets, atHand: ReadonlySet<string>): DevicePlan {
  const { device, grade } = fit;
  const where = sockets.sockets.map((s) => s.socket.id).join(" and ");
  return {
    part: device.id,
    name: device.name,
    family: device.family,
    capacity: fit.capacity,
    words: fit.words,
    width: fit.width,
    package: device.package,
    sockets: sockets.sockets.map((s) => ({ socket: s.socket.id, lane: s.lane, ...(s.part ? { part: s.part } : {}) })),
    grade,
    slowest_ns: sockets.slowest_ns,
    says: `${counted[sockets.sockets.length] ?? `${sockets.sockets.length} of `}${device.name} in ${where}: ${fit.banks} banks of ${sockets.share} bytes; ${speedText(fit, sockets)}.`,
    atHand: atHand.has(device.id),
  };
}

/** How fast the device must be, as far as that is known. */
export function speedText({ grade }: DeviceFit, sockets: Sockets): string {
  return grade === "unknown"
    ? "how fast it must be is unknown: take the fastest grade and try it"
    : `grade ${grade.marking} (${grade.access_ns} ns) or faster, since the socket takes ${sockets.slowest_ns} ns at most`;
}

export function lineTable(candidate: Candidate): BankLine[] {
  return candidate.lines.map((use): BankLine => {
    const [at] = use.fit.at;
    const role = use.role;
    return {
      line: use.fit.line,
      bit: use.fit.bit,
      pin: use.fit.pin,
      ...(at?.socketPin === undefined ? {} : { socketPin: at.socketPin }),
      carries: at?.carries ?? "unknown",
      role,
      ...(role === "switched" ? { net: use.fit.line } : {}),
      says: lineText(use),
    };
  });
}

function lineText(use: LineUse): string {
  const { line, pin } = use.fit;
  if (use.role === "switched") return `${line} (pin ${pin}) is switched: open is high, a closed contact takes it low.`;
  if (use.tied) return `${line} (pin ${pin}) finds no level in the socket; a resistor ties it high.`;
  return `${line} (pin ${pin}) stays ${use.role === "fixed-high" ? "high" : "low"}, as the socket has it.`;
}

const meets: Record<BankLine["carries"], string> = {
  driven: "an address line of the board",
  high: "a fixed high level",
  low: "a fixed low level",
  open: "nothing",
  supply: "+5 V",
  rail: "another supply than +5 V",
  overhangs: "nothing, as the pin hangs out beyond the socket",
  unknown: "something the records do not name",
};

const harm: Record<BankLine["carries"], string> = {
  driven: "board and contact would drive one another",
  high: "a closed contact would pull the tie to ground",
  low: "the line could never go high",
  open: "an input left open has no level of its own and may swing",
  supply: "a closed contact would short the supply",
  rail: "no address pin bears that",
  overhangs: "an input left open has no level of its own and may swing",
  unknown: "a contact could meet a driver or the supply",
};

export function pinWorkOf(candidate: Candidate, loom: Harness): PinWork[] {
  const work: PinWork[] = [...(candidate.fit?.pinWork ?? [])];
  for (const use of candidate.lines) {
    if (use.role !== "switched" && !use.tied) continue;
    for (const at of use.fit.at) {
      const lifted = isLifted(at.carries);
      const does =
        use.role === "switched"
          ? lifted
            ? "lift-and-switch"
            : at.carries === "overhangs"
              ? "overhang-and-switch"
              : "wire-in-place"
          : lifted
            ? "lift-and-tie"
            : "tie";
      const pin = `pin ${use.fit.pin} (${use.fit.line}) of the device in ${at.socket}`;
      const resistor = loom.pullUps.find((r) => r.net === use.fit.line)?.id ?? "a resistor";
      const lift = lifted ? `Lift ${pin}` : at.carries === "overhangs" ? `Leave ${pin} beside the socket` : `Leave ${pin} in the socket`;
      const then = use.role === "switched" ? `wire it as net ${use.fit.line}` : `tie it to +5 V through ${resistor}`;
      work.push({
        socket: at.socket,
        pin: use.fit.pin,
        signal: use.fit.line,
        does,
        to: use.role === "switched" ? use.fit.line : "+5 V",
        says: `${lift} and ${then}.`,
        why: `${at.socketPin === undefined ? "It" : `At socket pin ${at.socketPin} it`} meets ${meets[at.carries]}; ${harm[at.carries]}.`,
      });
    }
  }
  return work;
}

export function switchPlanOf(candidate: Candidate, loom: Harness, atHand: ReadonlySet<string>): SwitchPlan {
  const { part, sections, uses, poles } = candidate.contacts;
  const netAt = new Map(loom.paths.flatMap((p) => p.terminals.map((t) => [t, p.net.id] as const)));
  return {
    part: part.id,
    name: part.name,
    form: part.form,
    poles: part.poles,
    polesUsed: poles,
    positions: part.positions,
    transit: part.transit,
    atHand: atHand.has(part.id),
    sections: sections.flatMap((section, s) =>
      uses[s]
        ? [
            {
              pole: section.pole,
              hub: section.hub,
              ...(netAt.has(section.hub) ? { hubNet: entryOf(netAt, section.hub) } : {}),
              throws: section.throws.map((t) => ({
                terminal: t.terminal,
                ...(netAt.has(t.terminal) ? { net: entryOf(netAt, t.terminal) } : {}),
                positions: [...t.closed].map((p) => itemAt(part.positions, p)),
              })),
            },
          ]
        : [],
    ),
    spareTerminals: part.terminals.filter((t) => !netAt.has(t)),
  };
}

/** The contact table, read off the simulation of the finished wiring. */
export function contactRows(built: BuiltModel, candidate: Candidate, demands: Demands): ContactRow[] {
  const { part, modeAt, sections, uses } = candidate.contacts;
  const used = new Set(sections.flatMap((section, s) => (uses[s] ? [section.hub, ...section.throws.map((t) => t.terminal)] : [])));
  const wired = new Set(uses.flatMap((use) => (use ? [...use.keys()] : [])));
  const hubs = new Set(sections.map((s) => s.hub));
  // A hub that carries nothing still passes a contact on.
  const counts = (terminal: string) => wired.has(terminal) || (used.has(terminal) && hubs.has(terminal));
  return part.positions.flatMap((position, p): ContactRow[] => {
    const mode = modeAt[p];
    if (mode === undefined) return [];
    const state = machineState(built.model, rawState(built.model, built.good, itemAt(built.good.closed, p)));
    return [
      {
        position,
        mode: itemAt(demands.modes, mode).id,
        joined: (part.closes[position] ?? []).filter(([a, b]) => counts(a) && counts(b)),
        levels: state.levels,
        ...(state.bank === undefined || built.model.lanes === 0 ? {} : { bank: state.bank }),
        version: built.model.lanes === 0 ? itemAt(demands.modes, mode).firmware : (state.version ?? ""),
        cards: state.cards,
      },
    ];
  });
}
