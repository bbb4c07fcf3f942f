// Currents on every wire, and the checks of a plan: switch and connector ratings, levels of open and closed lines, drop in the cable.
import { known } from "../../records/index.js";
import type { Candidate, Demands } from "../../switching/index.js";
import type { ContactRow, Electrical, Wire, WiringOptions } from "../types.js";
import { cmosHigh, drop_mV, rounded, ttlHigh_V, ttlLow_V } from "./electrical.js";
import type { Harness } from "./loom.js";

type Amount = number | "unknown";

/** The most each net carries, ground being the sum of what is low at one position. */
function netCurrents(demands: Demands, loom: Harness, contacts: readonly ContactRow[]): Map<string, Amount> {
  const of = new Map<string, Amount>();
  for (const r of loom.pullUps) of.set(r.net, r.current_mA);
  for (const [net, amps] of loom.leadAmps) of.set(net, amps === "unknown" ? amps : amps * 1000);
  for (const card of demands.cards) {
    const points = card.kind === "ground" ? [card.point] : card.kind === "pair" ? card.points : [card.common, card.on, card.off];
    for (const point of points) of.set(`${card.card}:${point}`, card.current_mA);
  }
  const atOnce = contacts.map((row): Amount => {
    const lines = row.levels.flatMap((l) => (l.level === "low" ? [of.get(l.line) ?? "unknown"] : []));
    const cards = demands.cards.flatMap((card): Amount[] => {
      if (card.kind !== "ground") return [];
      const state = row.cards.find((c) => c.card === card.card)?.state;
      return state === card.closedIs ? [card.current_mA] : [];
    });
    return [...lines, ...cards].reduce<Amount>((sum, x) => (sum === "unknown" || x === "unknown" ? "unknown" : sum + x), 0);
  });
  of.set(
    "GND",
    atOnce.reduce<Amount>((most, x) => (most === "unknown" || x === "unknown" ? "unknown" : Math.max(most, x)), 0),
  );
  return of;
}

export function currents(demands: Demands, loom: Harness, contacts: readonly ContactRow[], options: WiringOptions): Wire[] {
  const of = netCurrents(demands, loom, contacts);
  const cable = loom.cables.find((c) => c.purpose === "switch");
  return loom.wires.map((wire): Wire => {
    const raw = of.get(wire.net) ?? "unknown";
    const current = raw === "unknown" ? raw : rounded(raw, 3);
    if (wire.run !== "cable" || options.length_m === undefined) return { ...wire, current_mA: current };
    const length = { length_m: options.length_m };
    if (!cable || current === "unknown") return { ...wire, current_mA: current, ...length };
    return { ...wire, current_mA: current, ...length, drop_mV: rounded(drop_mV(cable.awg, options.length_m, current), 2) };
  });
}

export function electricalOf(candidate: Candidate, loom: Harness, wires: readonly Wire[], supply_V: number): Electrical {
  const part = candidate.contacts.part;
  const switched = wires.filter((w) => loom.paths.some((p) => p.net.id === w.net));
  const most = switched.reduce<Amount>(
    (m, w) => (m === "unknown" || w.current_mA === "unknown" ? "unknown" : Math.max(m, w.current_mA)),
    0,
  );
  const checks: Electrical["checks"][number][] = [];
  const rate = (what: string, rating: Amount) => {
    if (rating === "unknown") {
      checks.push({ what, ok: "unknown", says: `The rating of ${what} is unknown; read it off the part.` });
    } else if (most === "unknown") {
      checks.push({
        what,
        ok: "unknown",
        says: `The current of one enable is unknown; ${what} takes ${rating} A. Measure it across the open contact.`,
      });
    } else {
      checks.push({ what, ok: most / 1000 <= rating, says: `At most ${rounded(most, 3)} mA in one contact; ${what} takes ${rating} A.` });
    }
  };
  rate(part.name, known(part.rating_A));
  const j = loom.connectors.find((c) => c.purpose === "switch");
  if (j) rate(j.name, j.rating_A);
  for (const lead of loom.connectors.filter((c) => c.purpose === "lead")) {
    const amps = lead.contacts.flatMap((c) => (c.net === undefined ? [] : [loom.leadAmps.get(c.net) ?? "unknown"]))[0] ?? "unknown";
    checks.push(leadCheck(`${lead.id}, ${lead.name}`, amps, lead.rating_A));
  }
  for (const r of loom.pullUps) {
    const fine = r.openVolts >= ttlHigh_V && r.openVolts >= cmosHigh * supply_V;
    checks.push({
      what: r.label,
      ok: fine,
      says: `${r.label} open stands at ${r.openVolts} V; high begins at ${ttlHigh_V} V (TTL) and ${rounded(cmosHigh * supply_V, 2)} V (CMOS).`,
    });
  }
  const drops = switched.flatMap((w) => (w.drop_mV === undefined ? [] : [w.drop_mV]));
  if (drops.length > 0) {
    const worst = Math.max(...drops);
    checks.push({
      what: "cable",
      ok: worst / 1000 <= ttlLow_V / 2,
      says: `At most ${worst} mV are lost in the cable, there and back; low ends at ${ttlLow_V} V.`,
    });
  }
  const lines = loom.pullUps.reduce((sum, r) => sum + r.current_mA, 0);
  const ground = wires.find((w) => w.net === "GND")?.current_mA ?? 0;
  const says = loom.pullUps.map((r) => r.says);
  return { supply_V, pullUps_mA: rounded(lines, 3), ground_mA: ground, says, checks };
}

function leadCheck(what: string, amps: Amount, rating: Amount): Electrical["checks"][number] {
  if (amps === "unknown")
    return { what, ok: "unknown", says: `The current of the lead at ${what} is unknown; measure it before the plug is trusted.` };
  if (rating === "unknown")
    return { what, ok: "unknown", says: `The lead carries ${amps} A; the rating of ${what} is unknown, read it off the part.` };
  return { what, ok: amps <= rating, says: `The lead carries at most ${amps} A in one conductor; ${what} takes ${rating} A.` };
}
