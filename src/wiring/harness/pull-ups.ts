// The resistors that hold open lines high: one for each switched line, one for each line that finds no level in its socket.
import type { Catalogue } from "../../catalogue/index.js";
import type { Resistor } from "../../records/index.js";
import { type Candidate, compare, type LineUse, type Sockets } from "../../switching/index.js";
import type { PullUp, WiringOptions } from "../types.js";
import { leakage_uA, openVolts, pullUp_mA, rounded } from "./electrical.js";

export interface PullUpInput {
  readonly catalogue: Catalogue;
  readonly candidate: Candidate;
  readonly sockets?: Sockets | undefined;
  readonly options: WiringOptions;
  readonly supply_V: number;
}

/** A pin that must not stay in the socket. */
export function isLifted(carries: LineUse["fit"]["at"][number]["carries"]): boolean {
  return carries !== "open" && carries !== "overhangs";
}

export function pullUpsOf({ catalogue, candidate, sockets, options, supply_V }: PullUpInput): PullUp[] {
  const part = pickResistor(catalogue, new Set(options.atHand));
  const ohms = part?.ohms ?? 10_000;
  const pullUps: PullUp[] = [];
  const add = (use: LineUse, socket: string) => {
    const inputs = use.role === "switched" ? (sockets?.sockets.length ?? 1) : 1;
    const volts = rounded(openVolts(supply_V, ohms, leakage_uA * inputs), 3);
    const id = `R${pullUps.length + 1}`;
    const current = rounded(pullUp_mA(supply_V, ohms), 3);
    pullUps.push({
      id,
      net: use.fit.line,
      label: use.fit.line,
      ohms,
      ...(part ? { part: part.id } : {}),
      from: { at: "device", socket, pin: use.fit.pin, lifted: use.fit.at.some((a) => a.socket === socket && isLifted(a.carries)) },
      to: { at: "supply", says: "+5 V of the socket" },
      current_mA: use.role === "switched" ? current : 0,
      openVolts: volts,
      says:
        `${id}, ${ohms} ohm, from ${socket} device pin ${use.fit.pin} (${use.fit.line}) to +5 V` +
        (use.role === "switched"
          ? `: ${current} mA while the contact is closed, ${volts} V while it is open.`
          : ": holds it high for good."),
    });
  };
  for (const use of candidate.lines) {
    const [first] = use.fit.at;
    if (use.role === "switched" && first) add(use, first.socket);
    else if (use.tied) for (const at of use.fit.at) add(use, at.socket);
  }
  return pullUps;
}

/** The resistor nearest to 10 kohm among single ones, those at hand first. */
function pickResistor(catalogue: Catalogue, atHand: ReadonlySet<string>): Resistor | undefined {
  const rank = (r: Resistor) => [atHand.has(r.id) ? 0 : 1, Math.abs(Math.log(r.ohms / 10_000)), r.id] as const;
  return [...catalogue.parts.values()]
    .filter((p): p is Resistor => p.type === "resistor" && p.network === undefined && p.ohms >= 2_200 && p.ohms <= 47_000)
    .sort((a, b) => compare(rank(a), rank(b)))[0];
}
