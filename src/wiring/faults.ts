// Every single fault a bench knows, as a variant of the build: what is wrong, how to put it right, and the circuit it makes.
// Two throws swapped twice over are made here too. What is seen of them is for faultTable.ts.
import type { BuiltModel } from "./buildModel.js";
import { mirrorMap, neighbours } from "./connectors.js";
import type { Candidate } from "./design.js";
import { isLifted, type Loom, switchConnector } from "./loom.js";
import { nothingRuns, type Variant } from "./model.js";
import { groundNode, type Join } from "./netlist.js";
import type { Bank, Fault, Wire } from "./types.js";
import { endKey } from "./wires.js";

export interface FaultCase {
  readonly fault: Fault;
  readonly variant: Variant;
  /** The burn is wrong, not the wiring. */
  readonly burn: boolean;
}

export interface FaultInput {
  readonly built: BuiltModel;
  readonly candidate: Candidate;
  readonly loom: Loom;
  readonly banks: readonly Bank[];
}

type SwitchWire = Pick<Wire, "number" | "label" | "net" | "from" | "to" | "run" | "fromText" | "toText">;

export function singleFaults(input: FaultInput): FaultCase[] {
  return [
    ...throwSwaps(input),
    ...wireSwaps(input),
    ...openWires(input),
    ...groundedNets(input),
    ...bridges(input),
    ...mirroredPlugs(input),
    ...pullUpsMissing(input),
    ...pinsNotLifted(input),
    ...knobs(input),
    ...contactsStuck(input),
    ...burns(input),
  ];
}

/** Two different pairs of throws swapped. */
export function doubleSwaps(input: FaultInput): FaultCase[] {
  const swaps = throwPairs(input).filter((p) => !p.hub);
  return swaps.flatMap((first, i) =>
    swaps.slice(i + 1).map((second): FaultCase => {
      const says = `${first.says} and ${second.says} swapped`;
      const variant = swapNodes(swapNodes(input.built.good, input.built, first.a, first.b), input.built, second.a, second.b);
      return {
        fault: { id: `two-swaps:${first.id}+${second.id}`, kind: "two-swaps", says, fix: "Put both pairs right." },
        variant,
        burn: false,
      };
    }),
  );
}

interface ThrowPair {
  readonly id: string;
  readonly says: string;
  readonly a: number;
  readonly b: number;
  readonly hub: boolean;
}

/** Pairs of terminals of one section, at least one of them wired, within the positions that are used. */
function throwPairs({ built, candidate }: FaultInput): ThrowPair[] {
  const { contacts } = candidate;
  const reached = (closed: ReadonlySet<number>) => [...closed].some((p) => contacts.modeAt[p] !== undefined);
  return contacts.sections.flatMap((section, s) => {
    const use = contacts.uses[s];
    if (!use) return [];
    const throws = section.throws.filter((t) => reached(t.closed)).map((t) => t.terminal);
    const terminals = [...throws, section.hub];
    return terminals.flatMap((x, i) =>
      terminals.slice(i + 1).flatMap((y): ThrowPair[] => {
        const hub = y === section.hub;
        if (!use.throws.has(x) && !use.throws.has(y)) return [];
        if (hub && !use.throws.has(x)) return [];
        return [
          {
            id: `${x}~${y}`,
            says: `terminals ${x} and ${y} of pole ${section.pole}`,
            a: built.terminal.get(x)!,
            b: built.terminal.get(y)!,
            hub,
          },
        ];
      }),
    );
  });
}

function throwSwaps(input: FaultInput): FaultCase[] {
  return throwPairs(input).map(({ id, says, a, b }) => ({
    fault: {
      id: `throws-swapped:${id}`,
      kind: "throws-swapped",
      says: `What belongs on ${says} is swapped`,
      fix: `Exchange what is soldered to ${says}.`,
    },
    variant: swapNodes(input.built.good, input.built, a, b),
    burn: false,
  }));
}

/** Wires on two terminals exchanged; the contacts inside the switch stay as they are. */
function swapNodes(variant: Variant, built: BuiltModel, a: number, b: number): Variant {
  const fixed = built.grounds.length;
  const swap = (n: number) => (n === a ? b : n === b ? a : n);
  return { ...variant, joins: variant.joins.map((join, j): Join => (j < fixed ? join : [swap(join[0]), swap(join[1])])) };
}

function switchWires({ loom, built }: FaultInput): SwitchWire[] {
  return built.wires.map((w) => loom.wires.find((wire) => wire.number === w.number)!);
}

/** Exchanges one end of two wires. */
export function swapEnds(built: BuiltModel, first: number, second: number, end: "a" | "b"): Variant {
  const at = built.grounds.length;
  const joins = [...built.good.joins];
  const [x, y] = [joins[at + first]!, joins[at + second]!];
  joins[at + first] = end === "a" ? [y[0], x[1]] : [x[0], y[1]];
  joins[at + second] = end === "a" ? [x[0], y[1]] : [y[0], x[1]];
  return { ...built.good, joins };
}

function wireSwaps(input: FaultInput): FaultCase[] {
  const wires = switchWires(input);
  const chained = new Set(wires.filter((w) => w.run === "jumper" && w.from.at === "switch").map((w) => w.net));
  const cases: FaultCase[] = [];
  wires.forEach((x, i) => {
    wires.forEach((y, j) => {
      if (j <= i || x.run !== y.run || x.run === "jumper" || x.net === y.net) return;
      const name = `wires ${x.number} (${x.label}) and ${y.number} (${y.label})`;
      const add = (end: "a" | "b", place: string) =>
        cases.push({
          fault: {
            id: `wires-swapped:${x.number}~${y.number}:${end}`,
            kind: "wires-swapped",
            says: `${name} swapped ${place}`,
            fix: `Exchange ${name} ${place}.`,
          },
          variant: swapEnds(input.built, i, j, end),
          burn: false,
        });
      if (x.run === "board") {
        add("b", "at the connector, fixed half");
        return;
      }
      add("a", x.from.at === "connector" ? "at the connector, loose half" : "in the machine");
      if (chained.has(x.net) || chained.has(y.net)) add("b", "at the switch");
    });
  });
  return cases;
}

function openWires(input: FaultInput): FaultCase[] {
  const { built } = input;
  const at = built.grounds.length;
  return switchWires(input).map((wire, w) => ({
    fault: {
      id: `wire-open:${wire.number}`,
      kind: "wire-open",
      says: `Wire ${wire.number} (${wire.label}) open, ${wire.fromText} to ${wire.toText}`,
      fix: `Measure wire ${wire.number} end to end and solder it again.`,
    },
    variant: { ...built.good, joins: built.good.joins.filter((_, j) => j !== at + w) },
    burn: false,
  }));
}

function groundedNets({ built, loom }: FaultInput): FaultCase[] {
  return loom.paths
    .filter((p) => p.net.kind !== "ground")
    .map(({ net, machine }) => {
      const node = built.model.nodes.indexOf(endKey(machine[0]!));
      return {
        fault: {
          id: `wire-to-ground:${net.id}`,
          kind: "wire-to-ground" as const,
          says: `${net.label} touches ground`,
          fix: `Look along the wires of ${net.label} for a bare place against metal or a ground wire.`,
        },
        variant: { ...built.good, joins: [...built.good.joins, [groundNode, node] as Join] },
        burn: false,
      };
    });
}

function bridges({ built, loom, candidate }: FaultInput): FaultCase[] {
  const cases: FaultCase[] = [];
  const bridge = (id: string, kind: Fault["kind"], says: string, a: number, b: number) =>
    cases.push({
      fault: { id, kind, says, fix: "Take the bridge away and look at it with a glass." },
      variant: { ...built.good, joins: [...built.good.joins, [a, b]] },
      burn: false,
    });
  if (loom.pair) {
    const at = new Map(built.plug.map((p) => [p.contact, p.a]));
    for (const [x, y] of neighbours(loom.pair.fixed)) {
      const [a, b] = [at.get(x), at.get(y)];
      if (a === undefined || b === undefined) continue;
      bridge(`contacts-bridged:${x}~${y}`, "contacts-bridged", `${switchConnector} contacts ${x} and ${y} bridged`, a, b);
    }
  }
  const wired = new Set(loom.paths.flatMap((p) => p.terminals));
  const { terminals } = candidate.contacts.part;
  terminals.forEach((x, i) => {
    const y = terminals[i + 1];
    if (y === undefined || (!wired.has(x) && !wired.has(y))) return;
    bridge(
      `terminals-bridged:${x}~${y}`,
      "terminals-bridged",
      `switch terminals ${x} and ${y} bridged`,
      built.terminal.get(x)!,
      built.terminal.get(y)!,
    );
  });
  return cases;
}

function mirroredPlugs({ built, loom }: FaultInput): FaultCase[] {
  const { pair } = loom;
  if (!pair) return [];
  const from = built.grounds.length + built.wires.length;
  return (["x", "y"] as const).flatMap((axis): FaultCase[] => {
    const map = mirrorMap(pair.fixed, axis);
    if ([...map].every(([a, b]) => a === b)) return [];
    const loose = new Map(built.plug.map((p) => [p.contact, p.b]));
    const plug = built.plug.flatMap(({ contact, a }): Join[] => {
      const other = loose.get(map.get(contact) ?? "");
      return other === undefined ? [] : [[a, other]];
    });
    const how = axis === "x" ? "left and right" : "the upper and the lower row";
    return [
      {
        fault: {
          id: `plug-mirrored:${axis}`,
          kind: "plug-mirrored",
          says: `${switchConnector} wired as its mirror image, ${how} exchanged`,
          fix: `Solder ${switchConnector} again by the drawing of its solder side.`,
        },
        variant: { ...built.good, joins: [...built.good.joins.slice(0, from), ...plug] },
        burn: false,
      },
    ];
  });
}

function pullUpsMissing({ built, loom }: FaultInput): FaultCase[] {
  return loom.pullUps.map((r, i) => ({
    fault: {
      id: `pull-up-missing:${r.id}`,
      kind: "pull-up-missing",
      says: `${r.id} on ${r.label} missing or open`,
      fix: `Fit ${r.id}, ${r.ohms} ohm, between ${r.label} and +5 V.`,
    },
    variant: { ...built.good, pullUps: built.good.pullUps.filter((_, k) => k !== i) },
    burn: false,
  }));
}

function pinsNotLifted({ built, candidate }: FaultInput): FaultCase[] {
  return candidate.lines
    .filter((use) => use.role === "switched" || use.tied)
    .flatMap((use) =>
      use.fit.at
        .filter((at) => isLifted(at.carries))
        .map((at): FaultCase => {
          const node = built.model.nodes.indexOf(endKey({ at: "device", socket: at.socket, pin: use.fit.pin, lifted: false }));
          const level = at.carries === "high" || at.carries === "supply" ? "high" : at.carries === "low" ? "low" : "driven";
          return {
            fault: {
              id: `pin-not-lifted:${at.socket}:${use.fit.pin}`,
              kind: "pin-not-lifted",
              says: `${at.socket} device pin ${use.fit.pin} (${use.fit.line}) still touches socket pin ${at.socketPin}`,
              fix: `Lift device pin ${use.fit.pin} clear of the socket in ${at.socket}.`,
            },
            variant: { ...built.good, strong: [{ node, level }] },
            burn: false,
          };
        }),
    );
}

function knobs({ built, candidate }: FaultInput): FaultCase[] {
  const { closed } = built.good;
  const n = closed.length;
  const make = (id: string, kind: Fault["kind"], says: string, fix: string, order: (p: number) => number): FaultCase => ({
    fault: { id, kind, says, fix },
    variant: { ...built.good, closed: closed.map((_, p) => closed[(order(p) + n) % n]!) },
    burn: false,
  });
  const reached = candidate.contacts.modeAt.filter((m) => m !== undefined).length;
  const cases = [
    make(
      "knob-reversed",
      "knob-reversed",
      "Positions counted from the wrong end",
      "Turn the switch or its labels round.",
      (p) => reached - 1 - p,
    ),
  ];
  if (candidate.contacts.part.form === "rotary" || candidate.contacts.part.form === "coded-rotary") {
    cases.push(
      make("knob-offset:+1", "knob-offset", "Knob fixed one position too low", "Loosen the knob and set it one position up.", (p) => p + 1),
    );
    cases.push(
      make(
        "knob-offset:-1",
        "knob-offset",
        "Knob fixed one position too high",
        "Loosen the knob and set it one position down.",
        (p) => p - 1,
      ),
    );
  }
  return cases;
}

function contactsStuck({ built, candidate }: FaultInput): FaultCase[] {
  const { contacts } = candidate;
  return contacts.sections.flatMap((section, s) => {
    const use = contacts.uses[s];
    if (!use) return [];
    const hub = built.terminal.get(section.hub)!;
    return [...use.throws.keys()].flatMap((terminal): FaultCase[] => {
      const node = built.terminal.get(terminal)!;
      const is = ([a, b]: Join) => (a === hub && b === node) || (a === node && b === hub);
      const name = `${section.hub} to ${terminal}`;
      return [
        {
          fault: {
            id: `contact-stuck:${terminal}:dead`,
            kind: "contact-stuck",
            says: `Contact ${name} never makes`,
            fix: "Clean the switch or fit another.",
          },
          variant: { ...built.good, closed: built.good.closed.map((joins) => joins.filter((j) => !is(j))) },
          burn: false,
        },
        {
          fault: {
            id: `contact-stuck:${terminal}:welded`,
            kind: "contact-stuck",
            says: `Contact ${name} never opens`,
            fix: "Fit another switch.",
          },
          variant: { ...built.good, closed: built.good.closed.map((joins) => (joins.some(is) ? joins : [...joins, [hub, node] as Join])) },
          burn: false,
        },
      ];
    });
  });
}

function burns({ built, banks, candidate }: FaultInput): FaultCase[] {
  const { good, model } = built;
  if (model.lanes === 0) return [];
  const content = good.content[0]!;
  const make = (id: string, kind: Fault["kind"], says: string, fix: string, to: readonly number[]): FaultCase => ({
    fault: { id, kind, says, fix },
    variant: { ...good, content: good.content.map(() => to) },
    burn: true,
  });
  const cases: FaultCase[] = [];
  const used = [...new Set(content)];
  const label = (v: number) => model.versions[v]!;
  for (const v of used) {
    // A repeated image has two equal halves: exchanging them changes nothing.
    const repeats = banks.find((b) => b.version === label(v))?.repeats ?? 1;
    const spoilt = repeats >= 2 ? content : content.map((c) => (c === v ? nothingRuns : c));
    cases.push(
      make(
        `halves-swapped:${label(v)}`,
        "halves-swapped",
        `The halves of ${label(v)} are swapped in the burn`,
        `Burn ${label(v)} again by the recipe.`,
        spoilt,
      ),
    );
  }
  cases.push(
    make(
      "banks-reversed",
      "banks-reversed",
      "The banks were burned in the reverse order",
      "Burn again by the recipe, bank 0 first.",
      [...content].reverse(),
    ),
  );
  used.forEach((x, i) => {
    for (const y of used.slice(i + 1)) {
      const swapped = content.map((c) => (c === x ? y : c === y ? x : c));
      cases.push(
        make(
          `banks-exchanged:${label(x)}~${label(y)}`,
          "banks-exchanged",
          `${label(x)} and ${label(y)} were burned in one another's banks`,
          "Burn again by the recipe.",
          swapped,
        ),
      );
    }
  });
  const dead = content.map(() => nothingRuns);
  if (model.lanes === 2) {
    cases.push(
      make(
        "lanes-exchanged",
        "lanes-exchanged",
        "The devices for even and odd bytes stand in one another's socket",
        "Exchange the two devices.",
        dead,
      ),
    );
  }
  if (candidate.fit && candidate.fit.width === 16) {
    cases.push(
      make(
        "bytes-swapped",
        "bytes-swapped",
        "The bytes of every word are swapped in the burn",
        "Burn again with the bytes of each word the other way round.",
        dead,
      ),
    );
  }
  return cases;
}
