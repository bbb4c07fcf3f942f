// The finished plan put together again from its tables alone (wires, pull-ups, pin work, connector contacts, the switch's record) and
// judged with the path table: what would this wiring do? Shares no code with the planner.
import type { Card, Switch } from "../../../src/records/index.js";
import type { End, WiringPlan } from "../../../src/wiring/index.js";
import { levelsByPaths, pathTable } from "./truth-table.js";

type Enable = NonNullable<Card["enable"]>;
export type Enables = Readonly<Record<string, Enable>>;

export interface PlainState {
  /** Version the lines select; undefined when they decide none. */
  readonly version: string | undefined;
  readonly cards: Readonly<Record<string, "on" | "off" | "undefined">>;
  readonly short: boolean;
}

function name(end: End): string {
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
    case "resistor":
      return `${end.at} elsewhere`;
  }
}

/** Nodes and joins of the finished build at one position; what is changed in the plan's tables is changed here. */
export function plainCircuit(plan: WiringPlan, part: Pick<Switch, "closes">, enables: Readonly<Record<string, Enable>>, position: string) {
  const names = ["ground", "supply"];
  const node = (key: string): number => {
    if (!names.includes(key)) names.push(key);
    return names.indexOf(key);
  };
  // Resistors are judged as such, by what they pull up; a wire from a pin to its own socket joins no net of the switch.
  const joining = plan.wires.filter(
    ({ from, to }) =>
      from.at !== "resistor" && to.at !== "resistor" && !(from.at === "device" && to.at === "socket" && from.socket === to.socket),
  );
  const joins: [number, number][] = joining.map((w) => [node(name(w.from)), node(name(w.to))]);
  for (const c of plan.connectors) {
    for (const { contact } of c.contacts) joins.push([node(`${c.id} panel ${contact}`), node(`${c.id} cable ${contact}`)]);
  }
  for (const [a, b] of part.closes[position] ?? []) joins.push([node(`switch ${a}`), node(`switch ${b}`)]);
  for (const [card, enable] of Object.entries(enables)) {
    for (const p of enable.points ?? []) {
      if (p.role === "ground") joins.push([0, node(`${card} ${p.id}`)]);
      else node(`${card} ${p.id}`);
    }
  }
  return { names, node, joins };
}

/** Whether a meter between two places of the finished build shows a connection, power off, device and cards out. */
export function plainMeter(plan: WiringPlan, part: Pick<Switch, "closes">, enables: Readonly<Record<string, Enable>>, position: string) {
  const { names, joins } = plainCircuit(plan, part, enables, position);
  const paths = pathTable({ nodes: names.length, joins, pullUps: [], strong: [] });
  return (a: string, b: string): boolean => {
    const [x, y] = [names.indexOf(a), names.indexOf(b)];
    return a === b || (x >= 0 && y >= 0 && paths[x]![y]!);
  };
}

export function plainState(
  plan: WiringPlan,
  part: Pick<Switch, "closes">,
  enables: Readonly<Record<string, Enable>>,
  position: string,
): PlainState {
  const { names, node, joins } = plainCircuit(plan, part, enables, position);
  const pullUps = plan.pullUps.map((r) => node(name(r.from)));
  const sockets = plan.device?.sockets.map((s) => s.socket) ?? [];
  const lines = plan.lines.map((l) => ({ ...l, nodes: sockets.map((s) => node(`${s} pin ${l.pin}`)) }));
  // A line nothing is done to keeps the level its socket gives it.
  const worked = new Set(plan.pinWork.map((w) => `${w.socket} pin ${w.pin}`));
  const strong = lines.flatMap((l) =>
    l.nodes.flatMap((n, i) => (worked.has(`${sockets[i]} pin ${l.pin}`) ? [] : [{ node: n, level: socketLevel(l.carries) }])),
  );
  const circuit = { nodes: names.length, joins, pullUps, strong };
  const { levels, short } = levelsByPaths(circuit);
  const paths = pathTable(circuit);
  const banks = sockets.map((_, lane) => {
    let bank = 0;
    for (const l of lines) {
      const level = levels[l.nodes[lane]!];
      if (level === "high") bank += 2 ** l.bit;
      else if (level !== "low") return undefined;
    }
    return bank;
  });
  const shown = banks.map((bank) => plan.banks.find((b) => b.index === bank)?.version);
  const version = shown.every((v) => v === shown[0]) ? shown[0] : undefined;
  const cards: Record<string, "on" | "off" | "undefined"> = {};
  for (const [card, enable] of Object.entries(enables)) {
    const at = (role: string) => {
      const point = enable.points?.find((p) => p.role === role);
      return point && node(`${card} ${point.id}`);
    };
    if (enable.sense === "change-over") {
      const [on, off] = [paths[at("common")!]![at("on")!]!, paths[at("common")!]![at("off")!]!];
      cards[card] = on === off ? "undefined" : on ? "on" : "off";
      continue;
    }
    const [a, b] = [at("a")!, at("b")];
    const closed = paths[a]![b ?? 0]!;
    // Points between which nothing but the card's own contact belongs: any other company leaves the card in doubt.
    const company = (point: number) =>
      [
        0,
        1,
        ...pullUps,
        ...Object.entries(enables).flatMap(([other, e]) =>
          other === card ? [] : (e.points ?? []).flatMap((p) => (p.role === "ground" ? [] : [node(`${other} ${p.id}`)])),
        ),
      ].some((n) => paths[point]![n]);
    const doubt = b === undefined ? !closed && paths[a]![1]! : !closed && (company(a) || company(b));
    cards[card] = doubt ? "undefined" : closed === (enable.sense === "closed-enables") ? "on" : "off";
  }
  return { version, cards, short };
}

function socketLevel(carries: string): "high" | "low" | "driven" {
  if (carries === "high" || carries === "supply") return "high";
  return carries === "low" ? "low" : "driven";
}
