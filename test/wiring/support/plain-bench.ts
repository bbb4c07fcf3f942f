// What somebody at the bench sees and measures of a build, sound or broken, from the definition: what is joined to what by following
// wires. Shares no code with the planner; it reads the words of measurements.
import type { WiringPlan } from "../../../src/wiring/index.js";
import { type Broken, goodBuild, type Held, type Join, place, type Setting } from "./plain-faults.js";

/** The name of the piece of copper each place belongs to, found by following joins. */
function copper(joins: readonly Join[]): (at: string) => string {
  const next = new Map<string, string[]>();
  for (const [a, b] of joins) {
    next.set(a, [...(next.get(a) ?? []), b]);
    next.set(b, [...(next.get(b) ?? []), a]);
  }
  const piece = new Map<string, string>();
  for (const start of next.keys()) {
    if (piece.has(start)) continue;
    piece.set(start, start);
    const walk = [start];
    for (let at = walk.pop(); at !== undefined; at = walk.pop())
      for (const other of next.get(at)!)
        if (!piece.has(other)) {
          piece.set(other, start);
          walk.push(other);
        }
  }
  return (at) => piece.get(at) ?? at;
}

function joinsOf({ enables }: Setting, b: Broken, position: string, plug: readonly Join[]): Join[] {
  const grounds = Object.entries(enables).flatMap(([card, e]) =>
    (e.points ?? []).flatMap((p): Join[] => (p.role === "ground" ? [["ground", `${card} ${p.id}`]] : [])),
  );
  return [...b.wires.map((w): Join => [w.a, w.b]), ...b.touching, ...plug, ...(b.closes[position] ?? []), ...grounds];
}

export interface Seen {
  readonly position: string;
  readonly shows: string;
  readonly answers: readonly string[];
  readonly unsure: readonly string[];
}

/** What somebody at the bench writes down at a position. */
export function seenAt(setting: Setting, b: Broken, position: string): Seen {
  if (b.unreached.includes(position)) return { position, shows: "the knob does not turn so far", answers: [], unsure: [] };
  const { plan, enables } = setting;
  const of = copper(joinsOf(setting, b, position, b.plug));
  const sources = new Map<string, Set<string>>();
  const drivers = new Map<string, number>();
  const add = (at: string, source: string) => sources.set(of(at), (sources.get(of(at)) ?? new Set()).add(source));
  add("ground", "low");
  add("supply", "high");
  for (const { at, level } of b.strong) {
    add(at, level);
    if (level === "driven") drivers.set(of(at), (drivers.get(of(at)) ?? 0) + 1);
  }
  const pulled = new Set(b.pullUps.map((r) => of(r.at)));
  if ([...sources.values()].some((s) => s.size > 1) || [...drivers.values()].some((n) => n > 1))
    return { position, shows: "supply shorted", answers: [], unsure: [] };
  const level = (at: string): "high" | "low" | undefined => {
    const [source] = sources.get(of(at)) ?? [];
    if (source === "low" || source === "high") return source;
    return source === undefined && pulled.has(of(at)) ? "high" : undefined;
  };
  const sockets = plan.device?.sockets ?? [];
  const switchedOrTied = (line: WiringPlan["lines"][number]) => line.role === "switched" || /a resistor ties/.test(line.says);
  const held = sockets.map(({ socket }, s): Held => {
    if (b.unread.includes(socket)) return undefined;
    let bank = 0;
    for (const line of plan.lines) {
      const is = switchedOrTied(line) ? level(`${socket} pin ${line.pin}`) : line.role === "fixed-high" ? "high" : "low";
      if (is === undefined) return undefined;
      if (is === "high") bank += 2 ** line.bit;
    }
    return b.content[s]![bank];
  });
  const shows = sockets.length === 0 ? "starts" : together(held, sockets[0]!.part?.of ?? 1);
  if (shows === "does not start") return { position, shows, answers: [], unsure: [] };
  const states = Object.keys(enables).map((card) => [card, cardAt(setting, card, of, sources, pulled)] as const);
  const are = (is: string) => states.flatMap(([card, state]) => (state === is ? [card] : [])).sort();
  return { position, shows, answers: are("on"), unsure: are("doubt") };
}

function together(held: readonly Held[], rows: number): string {
  const unknown = "not certain which firmware";
  if (held.some((v) => v === undefined)) return unknown;
  const lanes = held.length / rows;
  for (let row = 0; row < rows; row += 1) {
    const mine = held.slice(row * lanes, (row + 1) * lanes);
    if (mine.some((v) => v === null || v !== mine[0])) return "does not start";
  }
  return held.every((v) => v === held[0]) ? held[0]! : unknown;
}

function cardAt(
  { enables }: Setting,
  card: string,
  of: (at: string) => string,
  sources: ReadonlyMap<string, ReadonlySet<string>>,
  pulled: ReadonlySet<string>,
): "on" | "off" | "doubt" {
  const enable = enables[card]!;
  const at = (role: string) => {
    const point = enable.points?.find((p) => p.role === role);
    return point && `${card} ${point.id}`;
  };
  if (enable.sense === "change-over") {
    const [on, off] = ["on", "off"].map((role) => of(at("common")!) === of(at(role)!));
    return on === off ? "doubt" : on ? "on" : "off";
  }
  const [a, b] = [at("a")!, at("b")];
  const closedIs = enable.sense === "closed-enables" ? "on" : "off";
  const openIs = closedIs === "on" ? "off" : "on";
  if (b === undefined) {
    const held = sources.get(of(a));
    return held === undefined ? openIs : held.has("low") ? closedIs : "doubt";
  }
  if (of(a) === of(b)) return closedIs;
  // A point that belongs to the card alone and meets anything else leaves the card in doubt.
  const others = Object.entries(enables).flatMap(([other, e]) =>
    other === card ? [] : (e.points ?? []).flatMap((p) => (p.role === "ground" ? [] : [of(`${other} ${p.id}`)])),
  );
  const company = (point: string) => sources.has(of(point)) || pulled.has(of(point)) || others.includes(of(point));
  return company(a) || company(b) ? "doubt" : openIs;
}

/** Whether a meter beeps between two points of the continuity list, at a position; loom plugged in, device and cards out. */
export function meterAt(setting: Setting, b: Broken, position: string): (from: string, to: string) => boolean {
  const { plan } = setting;
  const at = (words: string): string => {
    const contact = /^J1 contact (.+)$/.exec(words)?.[1];
    if (contact !== undefined) return `J1 panel ${contact}`;
    if (words === "ground") return "ground";
    if (words === "+5 V") return "supply";
    // A net by its label: where its loom ends on the switch.
    const end = plan.wires.flatMap((w) => (w.label === words ? [w.from, w.to] : [])).find((e) => e.at === "switch");
    return end === undefined ? words : place(end);
  };
  const of = copper(joinsOf(setting, b, position, b.plug));
  return (from, to) => of(at(from)) === of(at(to));
}

/** What a measurement, in the plan's words, gives in this build; undefined for words this does not know. */
export function reading(setting: Setting, b: Broken, says: string): string | undefined {
  const { plan } = setting;
  const called = new Map<string, string>([
    ["ground", "ground"],
    ["+5 V", "supply"],
    ...plan.wires.flatMap((w): [string, string][] => [
      [w.fromText, place(w.from)],
      [w.toText, place(w.to)],
    ]),
    ...plan.pullUps.map((r): [string, string] => [
      /from (.*? device pin \d+)/.exec(r.says)![1]! + (r.from.at === "device" && r.from.lifted ? " (lifted)" : ""),
      place(r.from),
    ]),
    ...plan.pinWork.map((w): [string, string] => [`${w.socket} device pin ${w.pin}`, `${w.socket} pin ${w.pin}`]),
  ]);
  const at = (words: string) => called.get(words);
  const points = /measure from (.+) to (.+?)(?: of the bare switch)?\.$/.exec(says);
  const position = / (?:switch )?at ([^:]+): /.exec(says)?.[1];
  if (says.includes("compare the checksum of every bank"))
    return JSON.stringify(b.content) === JSON.stringify(goodBuild(setting).content) ? "every bank is right" : "a bank differs";
  if (says.includes("must show")) {
    const id = /; (R\d+) must show/.exec(says)![1];
    return b.pullUps.some((r) => r.id === id) ? "as marked" : "open";
  }
  const lifted = /measure from (.+) to the socket contact below it/.exec(says)?.[1];
  if (lifted !== undefined) {
    const pin = at(lifted);
    return pin === undefined ? undefined : b.strong.some((s) => s.at === pin) ? "joined" : "open";
  }
  if (!points || position === undefined) return undefined;
  if (says.includes("bare switch")) {
    const joins = b.closes[position] ?? [];
    const [x, y] = [`switch ${points[1]}`, `switch ${points[2]}`];
    return joins.some(([p, q]) => (p === x && q === y) || (p === y && q === x)) ? "joined" : "open";
  }
  const [x, y] = [at(points[1]!), at(points[2]!)];
  if (x === undefined || y === undefined) return undefined;
  const plug = says.includes("plug pulled") ? b.plug.filter(([p]) => !p.startsWith("J1 ")) : b.plug;
  const of = copper(joinsOf(setting, b, position, plug));
  return of(x) === of(y) ? "joined" : "open";
}
