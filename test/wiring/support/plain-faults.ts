// Every fault of a plan made again in the plan's own tables (wires, contacts, banks), by its id. What is then seen is for plain-bench.ts.
// Shares no code with the planner.
import type { Connector, Switch } from "../../../src/records/index.js";
import type { End, WiringPlan } from "../../../src/wiring/index.js";
import type { Enables } from "./plain-simulation.js";

export type Join = readonly [string, string];
/** What a bank of a device holds: a version, bytes that do not run, or nobody knows what. */
export type Held = string | null | undefined;

export interface Broken {
  /** Wires by number, then whatever else touches. */
  readonly wires: readonly { readonly number: number; readonly a: string; readonly b: string }[];
  readonly touching: readonly Join[];
  /** Contacts of the pulled apart connector, fixed half to loose half. */
  readonly plug: readonly Join[];
  readonly closes: Readonly<Record<string, readonly Join[]>>;
  readonly pullUps: readonly { readonly id: string; readonly at: string }[];
  readonly strong: readonly { readonly at: string; readonly level: "high" | "low" | "driven" }[];
  readonly content: readonly (readonly Held[])[];
  readonly unreached: readonly string[];
  /** Sockets whose device gives nobody knows what, however it was burned. */
  readonly unread: readonly string[];
}

export interface Setting {
  readonly plan: WiringPlan;
  readonly part: Switch;
  readonly enables: Enables;
  readonly connectors: ReadonlyMap<string, Connector>;
}

export function place(end: End): string {
  switch (end.at) {
    case "device":
      return `${end.socket} pin ${end.pin}`;
    case "socket":
    case "ground":
      return "ground";
    case "supply":
      return "supply";
    case "card":
      return `${end.card} ${end.point}`;
    case "connector":
      return `${end.connector} ${end.half} ${end.contact}`;
    case "switch":
      return `switch ${end.terminal}`;
    case "lead":
      return `lead ${end.card} ${end.conductor}`;
    case "resistor":
      return `resistor ${end.resistor}`;
  }
}

export function goodBuild({ plan, part }: Setting): Broken {
  const banks = [...plan.banks].sort((a, b) => a.index - b.index).map((b) => b.version);
  return {
    wires: plan.wires.filter((w) => !servesOnePin(w)).map((w) => ({ number: w.number, a: place(w.from), b: place(w.to) })),
    touching: [],
    plug: plan.connectors.flatMap((c) => c.contacts.map(({ contact }): Join => [`${c.id} panel ${contact}`, `${c.id} cable ${contact}`])),
    closes: Object.fromEntries(
      part.positions.map((p) => [p, (part.closes[p] ?? []).map(([a, b]): Join => [`switch ${a}`, `switch ${b}`])]),
    ),
    pullUps: plan.pullUps.map((r) => ({ id: r.id, at: place(r.from) })),
    strong: [],
    content: (plan.device?.sockets ?? []).map(() => banks),
    unreached: [],
    unread: [],
  };
}

const swapped = (x: string, y: string) => (at: string) => (at === x ? y : at === y ? x : at);

/** The build with this fault; undefined for an id this does not know. */
export function brokenBuild(setting: Setting, id: string): Broken | undefined {
  const good = goodBuild(setting);
  const [kind, rest = ""] = [id.split(":")[0]!, id.slice(id.indexOf(":") + 1)];
  const [x, y] = rest.split("~");
  const terminals = (a: string, b: string, from: Broken): Broken => {
    const move = swapped(`switch ${a}`, `switch ${b}`);
    return { ...from, wires: from.wires.map((w) => ({ ...w, a: move(w.a), b: move(w.b) })) };
  };
  switch (kind) {
    case "throws-swapped":
    case "terminals-swapped":
      return terminals(x!, y!, good);
    case "two-swaps": {
      const [one, two] = rest.split("+").map((pair) => pair.split("~"));
      return terminals(two![0]!, two![1]!, terminals(one![0]!, one![1]!, good));
    }
    case "wires-swapped": {
      const end = (words: string) => ({ number: Number(words.slice(0, -1)), side: words.at(-1) as "a" | "b" });
      const [one, two] = [end(x!), end(y!)];
      const at = (e: typeof one) => good.wires.find((w) => w.number === e.number)![e.side];
      const put = (w: Broken["wires"][number]) =>
        w.number === one.number ? { ...w, [one.side]: at(two) } : w.number === two.number ? { ...w, [two.side]: at(one) } : w;
      return { ...good, wires: good.wires.map(put) };
    }
    case "wire-open":
      if (servesOnePin(setting.plan.wires.find((w) => w.number === Number(rest))!)) return withoutPin(setting, good, Number(rest));
      return { ...good, wires: good.wires.filter((w) => w.number !== Number(rest)) };
    case "wire-to-ground":
    case "wire-to-supply": {
      const wire = setting.plan.wires.find((w) => w.net === rest)!;
      return { ...good, touching: [[place(wire.from), kind === "wire-to-ground" ? "ground" : "supply"]] };
    }
    case "contacts-bridged":
      return { ...good, touching: [[`J1 panel ${x}`, `J1 panel ${y}`]] };
    case "terminals-bridged":
      return { ...good, touching: [[`switch ${x}`, `switch ${y}`]] };
    case "plug-mirrored":
      return { ...good, plug: mirrored(setting, good, rest as "x" | "y") };
    case "pull-up-missing":
      return { ...good, pullUps: good.pullUps.filter((r) => r.id !== rest) };
    case "pin-not-lifted": {
      const [socket, pin] = rest.split(":");
      const carries = setting.plan.lines.find((l) => l.pin === Number(pin))!.carries;
      const level = ["high", "supply"].includes(carries) ? "high" : carries === "low" ? "low" : "driven";
      return { ...good, strong: [{ at: `${socket} pin ${pin}`, level }] };
    }
    case "knob-offset":
    case "knob-reversed":
      return turned(setting, good, kind === "knob-reversed" ? "reversed" : Number(rest));
    case "contact-stuck":
      return stuck(setting, good, rest);
    default:
      return burned(setting, good, id);
  }
}

/** A wire between a pin and its own socket, or at a resistor: no net of the switch. */
function servesOnePin({ from, to }: WiringPlan["wires"][number]): boolean {
  return from.at === "resistor" || to.at === "resistor" || (from.at === "device" && to.at === "socket" && from.socket === to.socket);
}

function withoutPin({ plan }: Setting, good: Broken, number: number): Broken {
  const { from, to } = plan.wires.find((w) => w.number === number)!;
  const resistor = from.at === "resistor" ? from.resistor : to.at === "resistor" ? to.resistor : undefined;
  if (resistor !== undefined) return { ...good, pullUps: good.pullUps.filter((r) => r.id !== resistor) };
  return { ...good, unread: from.at === "device" ? [from.socket] : [] };
}

function mirrored({ plan, connectors }: Setting, good: Broken, axis: "x" | "y"): readonly Join[] {
  const face = connectors.get(plan.connectors.find((c) => c.id === "J1")!.part)!.face;
  const twin = (contact: string) => {
    const at = face.find((c) => c.contact === contact)!;
    const [dx, dy] = axis === "x" ? [-at.x_mm, at.y_mm] : [at.x_mm, -at.y_mm];
    return face.find((c) => Math.hypot(c.x_mm - dx, c.y_mm - dy) < 0.08)?.contact;
  };
  return good.plug.flatMap(([a, b]): Join[] => {
    if (!a.startsWith("J1 ")) return [[a, b]];
    const other = twin(a.slice("J1 panel ".length));
    return other === undefined ? [] : [[a, `J1 cable ${other}`]];
  });
}

function turned({ plan, part }: Setting, good: Broken, by: number | "reversed"): Broken {
  const count = part.positions.length;
  const last = Math.max(...plan.contacts.map((row) => part.positions.indexOf(row.position)));
  const unreached: string[] = [];
  const closes = part.positions.map((label, p): [string, readonly Join[]] => {
    let at = by === "reversed" ? last - p : p + by;
    if (part.form !== "rotary") at = (at + count) % count;
    else if (at < 0 || at > last) {
      unreached.push(label);
      at = at < 0 ? 0 : last;
    }
    return [label, good.closes[part.positions[at]!]!];
  });
  return { ...good, closes: Object.fromEntries(closes), unreached };
}

function stuck({ plan }: Setting, good: Broken, rest: string): Broken {
  const cut = rest.lastIndexOf(":");
  const [terminal, how] = [rest.slice(0, cut), rest.slice(cut + 1)];
  const hub = plan.switch.sections.find((s) => s.throws.some((t) => t.terminal === terminal))!.hub;
  const [a, b] = [`switch ${hub}`, `switch ${terminal}`];
  const is = ([x, y]: Join) => (x === a && y === b) || (x === b && y === a);
  const change = (joins: readonly Join[]): readonly Join[] =>
    how === "dead" ? joins.filter((j) => !is(j)) : joins.some(is) ? joins : [...joins, [a, b]];
  return { ...good, closes: Object.fromEntries(Object.entries(good.closes).map(([p, joins]) => [p, change(joins)])) };
}

function burned({ plan }: Setting, good: Broken, id: string): Broken | undefined {
  const sockets = plan.device!.sockets;
  const [what, only] = id.split("@");
  const [kind, rest = ""] = what!.split(":");
  const repeats = (version: Held) => plan.banks.find((b) => b.version === version)?.repeats ?? 1;
  const each = (change: (banks: readonly Held[]) => readonly Held[]): Broken => ({
    ...good,
    content: good.content.map((banks, s) => (only === undefined || sockets[s]!.socket === only ? change(banks) : banks)),
  });
  const whole = (change: (version: Held) => Held): Broken => each((banks) => banks.map(change));
  const [x, y] = rest.split("~");
  switch (kind) {
    case "halves-swapped":
      return whole((v) => (v === rest && repeats(v) < 2 ? null : v));
    case "image-not-repeated":
      return whole((v) => (v === rest ? null : v));
    case "banks-reversed":
      return each((banks) => banks.map((_, i) => banks[banks.length - 1 - i]));
    case "banks-shifted":
      return each((banks) => banks.map((_, i) => banks[(i + banks.length - Number(rest)) % banks.length]));
    case "banks-exchanged":
      return whole((v) => (v === x ? y : v === y ? x : v));
    case "bytes-swapped":
      return whole(() => null);
    case "lanes-exchanged":
    case "lane-twice": {
      // Devices in a row that each hold the whole of a short image may change places; any others may not.
      const rows = sockets[0]!.part?.of ?? 1;
      const named = rest === "" || kind === "lane-twice" ? sockets : sockets.filter((s) => s.socket === x || s.socket === y);
      if (named.length !== 2) return undefined;
      const rowwise = named[0]!.lane === named[1]!.lane;
      return whole((v) => (!rowwise ? null : repeats(v) >= rows ? v : undefined));
    }
    default:
      return undefined;
  }
}
