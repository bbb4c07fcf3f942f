// The proof: every position, every way between two positions, every wire open, the plug pulled, each simulated and judged.
// A state is safe when it is one of the planned modes. Everything else is named with its cure.

import { entryOf, itemAt } from "../../records/index.js";
import type { Hazard, Proof, ProofCase } from "../types.js";
import type { BuiltModel } from "./build-model.js";
import { isMode, machineState, modeOf, type RawState, rawState, runningText } from "./model.js";
import type { Join } from "./netlist.js";

const powerOff = "Move the switch only with the power off.";

export function prove(
  built: BuiltModel,
  transit: "break-before-make" | "make-before-break",
  hubs: readonly string[],
  stop: boolean,
): Proof {
  const { model, good } = built;
  const cases: ProofCase[] = [];
  const hazards = new Map<string, Hazard>();
  let simulated = 0;
  const look = (joins: readonly Join[], closed: readonly Join[]): RawState => {
    simulated += 1;
    return rawState(model, joins === good.joins ? good : { ...good, joins }, closed);
  };
  const add = (of: Omit<ProofCase, "states" | "safe">, raws: readonly RawState[], cure: string) => {
    const seen = new Map<string, RawState>();
    for (const raw of raws) seen.set(JSON.stringify(raw), raw);
    const states = [...seen.values()].map((raw) => machineState(model, raw));
    const safe = states.every((s) => s.verdict === "planned");
    cases.push({ ...of, states, safe, ...(safe ? {} : { cure }) });
    if (of.kind !== "open-wire" && of.kind !== "pulled-plug") return;
    for (const raw of seen.values()) addHazard(hazards, built, raw, of);
  };

  let holds = true;
  model.positions.forEach((position, p) => {
    const raw = look(good.joins, itemAt(good.closed, p));
    const mode = model.modeAt[p];
    if (mode !== undefined && !isMode(model, raw, mode)) holds = false;
    if (mode === undefined && !stop) holds = false;
    const says = mode === undefined ? `Position ${position}, beyond the stop` : `Position ${position}`;
    add({ kind: "position", says, position, fitted: true }, [raw], "Set the stop ring of the knob so that it cannot be reached.");
  });
  if (model.modes.some((_, m) => !model.modeAt.includes(m))) holds = false;

  const reached = model.positions.flatMap((_, p) => (model.modeAt[p] === undefined ? [] : [p]));
  for (const manner of ["break-before-make", "make-before-break"] as const) {
    for (let i = 1; i < reached.length; i += 1) {
      const [from, to] = [itemAt(reached, i - 1), itemAt(reached, i)];
      const raws = between(itemAt(good.closed, from), itemAt(good.closed, to), manner, groupsOf(built, hubs)).map((closed) =>
        look(good.joins, closed),
      );
      const name = `${model.positions[from]} > ${model.positions[to]}`;
      const cure = raws.some((r) => r.short)
        ? `${powerOff} A shorting contact joins what must not meet: fit a break-before-make switch.`
        : `${powerOff} Between two positions the machine passes through states nobody planned.`;
      add({ kind: "transit", says: `Between ${name}, ${manner}`, position: name, manner, fitted: manner === transit }, raws, cure);
    }
  }

  const better = betterOrder(built, reached, transit, hubs, look);
  const fixed = built.grounds.length;
  built.wires.forEach((wire, w) => {
    const joins = good.joins.filter((_, j) => j !== fixed + w);
    const raws = reached.map((p) => look(joins, itemAt(good.closed, p)));
    const cure = "Check every wire for continuity before the cards go in, and do the bench test at every position after each change.";
    add({ kind: "open-wire", says: `Wire ${wire.number} open`, position: "all", wire: wire.number, fitted: true }, raws, cure);
  });
  if (built.plug.length > 0) {
    const joins = good.joins.slice(0, fixed + built.wires.length);
    const raws = reached.map((p) => look(joins, itemAt(good.closed, p)));
    add({ kind: "pulled-plug", says: "Plug pulled", position: "all", fitted: true }, raws, plugCure(built, itemAt(raws, 0)));
  }

  const unsafe = summed(cases, better);
  const says = holds
    ? `Every position gives its planned mode. ${simulated} states were simulated; ${unsafe.length === 0 ? "none" : "some"} outside the positions ${unsafe.length === 0 ? "is" : "are"} not a planned mode.`
    : "The simulation does not give the planned modes.";
  return { holds, cases, hazards: [...hazards.values()].sort(byWorst), unsafe, simulated, says };
}

/** States are one where the same runs and the same is on, whatever the lines say. */
function addHazard(
  hazards: Map<string, Hazard>,
  built: BuiltModel,
  raw: RawState,
  { says: after, wire }: Pick<ProofCase, "says" | "wire">,
) {
  const judged = built.judge?.(raw);
  if (!judged || judged.verdict === "workable") return;
  const says = runningText(built.model, raw);
  const before = hazards.get(says);
  const add = <T>(list: readonly T[] | undefined, item: T | undefined) => [
    ...new Set([...(list ?? []), ...(item === undefined ? [] : [item])]),
  ];
  hazards.set(says, {
    says,
    verdict: judged.verdict,
    why: judged.says,
    after: add(before?.after, after),
    wires: add(before?.wires, wire),
  });
}

const worst = ["ruled-out", "unknown", "conditional", "workable"];

function byWorst(a: Hazard, b: Hazard): number {
  return worst.indexOf(a.verdict) - worst.indexOf(b.verdict);
}

/** Another order of the modes round the knob that passes through fewer unplanned states, in words; none for six modes and more. */
function betterOrder(
  built: BuiltModel,
  reached: readonly number[],
  manner: "break-before-make" | "make-before-break",
  hubs: readonly string[],
  look: (joins: readonly Join[], closed: readonly Join[]) => RawState,
): string | undefined {
  const { model, good } = built;
  if (
    reached.length < 3 ||
    reached.length > 5 ||
    reached.some((p) => itemAt(good.closed, p).length !== itemAt(good.closed, itemAt(reached, 0)).length)
  )
    return undefined;
  const groups = groupsOf(built, hubs);
  const safe = new Map<string, boolean>();
  const step = (a: number, b: number): boolean => {
    const key = `${Math.min(a, b)} ${Math.max(a, b)}`;
    const before = safe.get(key);
    if (before !== undefined) return before;
    const fine = between(itemAt(good.closed, a), itemAt(good.closed, b), manner, groups).every((closed) => {
      const raw = look(good.joins, closed);
      return model.modes.some((_, m) => isMode(model, raw, m));
    });
    safe.set(key, fine);
    return fine;
  };
  const unsafeIn = (order: readonly number[]) => order.slice(1).filter((p, i) => !step(itemAt(order, i), p)).length;
  const now = unsafeIn(reached);
  const [best] = orders(reached)
    .map((order) => ({ order, unsafe: unsafeIn(order) }))
    .sort((a, b) => a.unsafe - b.unsafe);
  if (!best || best.unsafe >= now) return undefined;
  const names = best.order.map((p) => itemAt(model.modes, itemAt(model.modeAt, p)).id).join(", ");
  return `With the modes in the order ${names} only ${best.unsafe} of ${reached.length - 1} steps would do so, not ${now}.`;
}

function orders(of: readonly number[]): number[][] {
  if (of.length < 2) return [[...of]];
  return of.flatMap((first, i) => orders([...of.slice(0, i), ...of.slice(i + 1)]).map((rest) => [first, ...rest]));
}

function plugCure(built: BuiltModel, raw: RawState): string {
  const base = "Pull or fit the plug only with the power off, and never run the machine without it.";
  const on = built.model.cards.flatMap((card, i) => (raw.cards[i] === "on" ? [card.name] : []));
  const neither = built.model.cards.flatMap((card, i) => (raw.cards[i] === "undefined" ? [card.name] : []));
  const parts = [base];
  if (modeOf(built.model, raw) === undefined && on.length > 0)
    parts.push(`Without it ${on.join(", ")} ${on.length === 1 ? "is" : "are"} on.`);
  if (neither.length > 0)
    parts.push(
      `Without it ${neither.join(", ")} ${neither.length === 1 ? "is" : "are"} neither on nor off: keep a spare plug with that contact linked.`,
    );
  return parts.join(" ");
}

/** Poles move one after the other in any order; each is at its old contact, between, or at its new one. */
export function between(
  from: readonly Join[],
  to: readonly Join[],
  manner: "break-before-make" | "make-before-break",
  groups: readonly ReadonlySet<number>[],
): Join[][] {
  const same = (a: Join, b: Join) => (a[0] === b[0] && a[1] === b[1]) || (a[0] === b[1] && a[1] === b[0]);
  const steady = from.filter((a) => to.some((b) => same(a, b)));
  const choices = groups.map((group) => {
    const old = from.filter((j) => group.has(j[0]) && !steady.some((s) => same(s, j)));
    const next = to.filter((j) => group.has(j[0]) && !steady.some((s) => same(s, j)));
    const half =
      manner === "break-before-make"
        ? [...subsets(old), ...subsets(next)]
        : [...subsets(next).map((s) => [...old, ...s]), ...subsets(old).map((s) => [...next, ...s])];
    return unique(half);
  });
  let states: Join[][] = [[...steady]];
  for (const options of choices) {
    states = states.flatMap((state) => options.map((option) => [...state, ...option]));
    if (states.length > 5000) break;
  }
  return states;
}

/** Contacts of a coded switch move one by one as well. */
function subsets(joins: readonly Join[]): Join[][] {
  return Array.from({ length: 2 ** joins.length }, (_, mask) => joins.filter((_, i) => (mask >> i) & 1));
}

function unique(states: readonly Join[][]): Join[][] {
  const seen = new Map(
    states.map((s) => [
      s
        .map((j) => j.join("-"))
        .sort()
        .join(" "),
      s,
    ]),
  );
  return [...seen.values()];
}

/** Nodes of the terminals of each wired section. */
function groupsOf(built: BuiltModel, hubs: readonly string[]): ReadonlySet<number>[] {
  return hubs.map((hub) => {
    const start = entryOf(built.terminal, hub);
    const group = new Set([start]);
    for (const at of group) {
      for (const joins of built.good.closed) {
        for (const [a, b] of joins) {
          if (a === at) group.add(b);
          if (b === at) group.add(a);
        }
      }
    }
    return group;
  });
}

/** What the cases come to, kind by kind; `better` is a remedy for what happens on the way from one position to the next. */
function summed(cases: readonly ProofCase[], better: string | undefined): Proof["unsafe"] {
  const by = new Map<string, { says: string; cure: string; count: number }>();
  for (const c of cases) {
    if (c.safe || !c.fitted) continue;
    const worst = c.states.some((s) => s.verdict === "short")
      ? "supply shorted"
      : c.states.some((s) => s.verdict === "undefined")
        ? "undefined levels or enables"
        : "modes nobody planned";
    const what = {
      position: "A position beyond the stop",
      transit: "Moving the switch",
      "open-wire": "A broken wire",
      "pulled-plug": "The plug pulled",
    }[c.kind];
    const says = `${what}: ${worst}.`;
    const entry = by.get(says) ?? {
      says,
      cure: [c.cure ?? "", ...(better !== undefined && c.kind === "transit" ? [better] : [])].join(" "),
      count: 0,
    };
    entry.count += 1;
    by.set(says, entry);
  }
  return [...by.values()];
}
