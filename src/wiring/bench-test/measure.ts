// The extra measurement that tells twins apart: with the power off, between which two points a meter must show a connection, at
// which position; or reading the device back. Chosen greedily: the one that splits the most comes first.

import { itemAt } from "../../records/index.js";
import type { FaultCase } from "../faults/fault-case.js";
import type { BuiltModel } from "../simulate/build-model.js";
import { solvedAt } from "../simulate/model.js";
import type { Join } from "../simulate/netlist.js";
import type { Measurement } from "../types.js";

/** A group of more faults than this gets no measurements: its wires are checked one by one. */
const mostMeasured = 80;
const mostSteps = 8;

/** A measurement on offer: what it shows for each fault, and its words, made only when it is chosen. */
interface Offer {
  readonly shows: readonly string[];
  readonly says: () => Words;
}

/** In full, and without what the head of the table says of all of them. */
type Words = Pick<Measurement, "says" | "short">;

const whole = (says: string): Words => ({ says, short: says });
const unplugged = (short: string): Words => ({ says: `Power off, device and cards out, ${short}`, short });

export interface Separated {
  readonly measurements: readonly Measurement[];
  readonly twins: readonly (readonly string[])[];
}

export function separate(
  built: BuiltModel,
  cases: readonly FaultCase[],
  positions: readonly number[],
  pointName: (node: number) => string | undefined,
): Separated {
  const ids = cases.map((c) => c.fault.id);
  if (cases.length < 2) return { measurements: [], twins: [] };
  if (cases.length > mostMeasured) return { measurements: [], twins: [ids] };
  const offers = offersFor(built, cases, positions, pointName);
  let classes: readonly number[] = cases.map(() => 0);
  let count = 1;
  const measurements: Measurement[] = [];
  while (measurements.length < mostSteps && count < cases.length) {
    let best: Offer | undefined;
    let bestCount = count;
    for (const offer of offers) {
      const split = refine(classes, offer.shows).count;
      if (split > bestCount) [best, bestCount] = [offer, split];
    }
    if (!best) break;
    const { shows } = best;
    ({ classes, count } = refine(classes, shows));
    const outcomes = [...new Set(shows)].map((sees) => ({ sees, faults: ids.filter((_, i) => shows[i] === sees) }));
    measurements.push({ ...best.says(), outcomes });
  }
  const twins = Array.from({ length: count }, (_, c) => ids.filter((_, i) => classes[i] === c)).filter((t) => t.length > 1);
  return { measurements, twins };
}

function refine(classes: readonly number[], shows: readonly string[]): { readonly classes: readonly number[]; readonly count: number } {
  const names = new Map<string, number>();
  const refined = classes.map((c, i) => {
    const key = `${c}|${shows[i]}`;
    const found = names.get(key) ?? names.size;
    names.set(key, found);
    return found;
  });
  return { classes: refined, count: names.size };
}

function offersFor(
  built: BuiltModel,
  cases: readonly FaultCase[],
  positions: readonly number[],
  pointName: (node: number) => string | undefined,
): readonly Offer[] {
  const offers = new Map<string, Offer>();
  const add = (shows: readonly string[], says: () => Words) => {
    const key = shows.join("|");
    if (!offers.has(key) && shows.some((s) => s !== shows[0])) offers.set(key, { shows, says });
  };
  for (const position of positions) addContinuity(built, cases, position, pointName, add);
  for (const position of positions) addBareSwitch(built, cases, position, add);
  if (built.plug.length > 0) addPulled(built, cases, itemAt(positions, 0), pointName, add);
  addPullUps(built, cases, pointName, add);
  for (const node of new Set(cases.flatMap((c) => c.variant.strong.map((s) => s.node)))) {
    add(
      cases.map((c) => (c.variant.strong.some((s) => s.node === node) ? "joined" : "open")),
      () => whole(`Power off: measure from ${pointName(node) ?? "the lifted pin"} to the socket contact below it; it must be open.`),
    );
  }
  if (cases.some((c) => c.burn)) {
    const planned = JSON.stringify(built.good.content);
    add(
      cases.map((c) => (c.burn && JSON.stringify(c.variant.content) !== planned ? "a bank differs" : "every bank is right")),
      () => whole("Take the device out, read it back and compare the checksum of every bank with the burn recipe."),
    );
  }
  return [...offers.values()];
}

type Add = (shows: readonly string[], says: () => Words) => void;

function addPullUps(built: BuiltModel, cases: readonly FaultCase[], pointName: (node: number) => string | undefined, add: Add): void {
  for (const { id, node } of built.pullUps) {
    add(
      cases.map((c) => (c.variant.pullUps.includes(node) ? "as marked" : "open")),
      () => whole(`Power off, device out: measure the resistance from ${pointName(node) ?? id} to +5 V; ${id} must show.`),
    );
  }
}

/** The switch on its own: tells a contact that sticks from a bridge of solder. */
function addBareSwitch(built: BuiltModel, cases: readonly FaultCase[], position: number, add: Add): void {
  const key = ([a, b]: Join) => `${Math.min(a, b)} ${Math.max(a, b)}`;
  const made = cases.map((c) => new Set(itemAt(c.variant.closed, position).map(key)));
  const pairs = new Map(cases.flatMap((c) => itemAt(c.variant.closed, position).map((pair) => [key(pair), pair])));
  const terminals = [...built.terminal];
  for (const [pair, [a, b]] of pairs) {
    if (made.every((m) => m.has(pair))) continue;
    const [x, y] = [Math.min(a, b), Math.max(a, b)].map((n) => terminals.find(([, node]) => node === n)?.[0] ?? "");
    add(
      made.map((m) => (m.has(pair) ? "joined" : "open")),
      () => whole(`Power off, wires off the switch, at ${built.model.positions[position]}: measure from ${x} to ${y} of the bare switch.`),
    );
  }
}

/** Either side of the pulled plug: tells what is wrong in the machine from what is wrong at the switch. */
function addPulled(
  built: BuiltModel,
  cases: readonly FaultCase[],
  position: number,
  pointName: (node: number) => string | undefined,
  add: Add,
): void {
  const loose = new Set(built.plug.map((p) => p.b));
  const fixed = new Set(built.plug.map((p) => p.a));
  const groups = cases.map(({ variant }) => {
    const joins = variant.joins.filter(([a, b]) => !(fixed.has(a) && loose.has(b)));
    return solvedAt(built.model, { ...variant, joins }, position).group;
  });
  for (const side of [fixed, loose]) {
    addPairs([...side], groups, add, (a, b) =>
      whole(`Power off, plug pulled, switch at ${built.model.positions[position]}: measure from ${pointName(a)} to ${pointName(b)}.`),
    );
  }
}

function addContinuity(
  built: BuiltModel,
  cases: readonly FaultCase[],
  position: number,
  pointName: (node: number) => string | undefined,
  add: Add,
): void {
  const { model } = built;
  const groups = cases.map((c) => solvedAt(model, c.variant, position).group);
  const points = model.nodes.flatMap((_, node) => (pointName(node) !== undefined ? [node] : []));
  addPairs(points, groups, add, (a, b) =>
    unplugged(`switch at ${model.positions[position]}: measure from ${pointName(a)} to ${pointName(b)}.`),
  );
}

function addPairs(points: readonly number[], groups: readonly Int16Array[], add: Add, says: (a: number, b: number) => Words): void {
  points.forEach((a, i) => {
    for (let j = i + 1; j < points.length; j += 1) {
      const b = itemAt(points, j);
      const first = itemAt(groups, 0)[a] === itemAt(groups, 0)[b];
      if (groups.every((g) => (g[a] === g[b]) === first)) continue;
      add(
        groups.map((g) => (g[a] === g[b] ? "joined" : "open")),
        () => says(a, b),
      );
    }
  });
}
