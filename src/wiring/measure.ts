// The extra measurement that tells twins apart: with the power off, between which two points a meter must show a connection, at
// which position; or reading the device back. Chosen greedily: the one that splits the most comes first.
import type { BuiltModel } from "./buildModel.js";
import type { FaultCase } from "./faults.js";
import { solveVariant } from "./model.js";
import type { Solved } from "./netlist.js";
import type { Measurement } from "./types.js";

/** A group of more faults than this gets no tree of measurements: the plan asks for the wires to be checked one by one. */
const mostMeasured = 60;
const mostSteps = 8;

interface Candidate {
  readonly says: string;
  /** What each fault would show. */
  readonly shows: readonly string[];
}

export function separate(
  built: BuiltModel,
  cases: readonly FaultCase[],
  positions: readonly number[],
  pointName: (node: number) => string | undefined,
): { readonly measurements: readonly Measurement[]; readonly twins: readonly (readonly string[])[] } {
  const ids = cases.map((c) => c.fault.id);
  if (cases.length < 2) return { measurements: [], twins: [] };
  if (cases.length > mostMeasured) return { measurements: [], twins: [ids] };
  const offered = offer(built, cases, positions, pointName);
  let classes: string[] = cases.map(() => "");
  const measurements: Measurement[] = [];
  while (measurements.length < mostSteps) {
    const now = new Set(classes).size;
    if (now === cases.length) break;
    let best: Candidate | undefined;
    let bestCount = now;
    for (const candidate of offered) {
      const count = new Set(classes.map((c, i) => `${c}|${candidate.shows[i]}`)).size;
      if (count > bestCount) {
        best = candidate;
        bestCount = count;
      }
    }
    if (!best) break;
    const chosen = best;
    classes = classes.map((c, i) => `${c}|${chosen.shows[i]}`);
    const outcomes = [...new Set(chosen.shows)].map((sees) => ({ sees, faults: ids.filter((_, i) => chosen.shows[i] === sees) }));
    measurements.push({ says: chosen.says, outcomes });
  }
  const twins = [...new Set(classes)].map((c) => ids.filter((_, i) => classes[i] === c)).filter((t) => t.length > 1);
  return { measurements, twins };
}

function offer(
  built: BuiltModel,
  cases: readonly FaultCase[],
  positions: readonly number[],
  pointName: (node: number) => string | undefined,
): Candidate[] {
  const { model, good } = built;
  const offered: Candidate[] = [];
  const add = (says: string, shows: readonly string[]) => {
    if (new Set(shows).size > 1) offered.push({ says, shows });
  };
  if (cases.some((c) => c.burn)) {
    const same = JSON.stringify(good.content);
    add(
      "Take the device out, read it back and compare the checksum of every bank with the burn recipe.",
      cases.map((c) => (c.burn && JSON.stringify(c.variant.content) !== same ? "a bank differs" : "every bank is right")),
    );
  }
  built.pullUps.forEach(({ id, node }, i) => {
    add(
      `Power off, device out: measure the resistance from ${pointName(node) ?? id} to +5 V; ${id} must show.`,
      cases.map((c) =>
        c.variant.pullUps.length <= i && c.variant.pullUps.length < good.pullUps.length
          ? "open"
          : c.variant.pullUps.includes(node)
            ? "as marked"
            : "open",
      ),
    );
  });
  const strong = [...new Set(cases.flatMap((c) => c.variant.strong.map((s) => s.node)))];
  for (const node of strong) {
    add(
      `Power off: measure from ${pointName(node) ?? ""} to the socket contact below it; it must be open.`,
      cases.map((c) => (c.variant.strong.some((s) => s.node === node) ? "joined" : "open")),
    );
  }
  const points = model.nodes.map((_, node) => node).filter((node) => node !== 1 && pointName(node) !== undefined);
  for (const position of positions) {
    const solved: Solved[] = cases.map((c) => solveVariant(model, c.variant, c.variant.closed[position]!));
    for (let i = 0; i < points.length; i += 1) {
      for (let j = i + 1; j < points.length; j += 1) {
        const [a, b] = [points[i]!, points[j]!];
        const first = solved[0]!.group[a] === solved[0]!.group[b];
        if (solved.every((s) => (s.group[a] === s.group[b]) === first)) continue;
        add(
          `Power off, device and cards out, switch at ${model.positions[position]}: measure from ${pointName(a)} to ${pointName(b)}.`,
          solved.map((s) => (s.group[a] === s.group[b] ? "joined" : "open")),
        );
      }
    }
  }
  return offered;
}
