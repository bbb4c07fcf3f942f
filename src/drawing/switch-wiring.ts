// The switch as a schematic: poles with their contacts at the left, one upright for each net, where each net goes below.
// Of the uprights the leftmost ends first, and its words stand to the left of all that still run on: no wire meets a label.
import { entryOf, itemAt, lastOf } from "../records/index.js";
import type { End, SwitchSection, Wire, WiringPlan } from "../wiring/index.js";
import { circle, drawing, join, line, nothing, path, rect, type Svg, text, unitsFor, weight, widthOf, wrap } from "./svg.js";

export type SwitchWiringInput = Pick<WiringPlan, "switch" | "contacts" | "wires" | "pullUps" | "nets">;

const rowHeight = 32;
const poleGap = 18;
const lineHeight = 15;

/** Places across the page; tighter on a narrow one. */
function columns(width: number, hubs: number, longestLabel: number) {
  const narrow = width < 480;
  const hubX = 24 + (hubs - 1) * 12 + 62;
  const throwX = hubX + (narrow ? 46 : 58);
  return { hubX, throwX, railsFrom: throwX + 10 + longestLabel + 14, railStep: narrow ? 26 : 34, railLeft: (i: number) => 14 + i * 12 };
}

interface Rail {
  readonly net: string;
  readonly x: number;
  /** The label, in as many lines as it takes: a label cut short could name the wrong point. */
  readonly label: readonly string[];
  readonly lines: readonly string[];
  readonly ground: boolean;
}

/** Everything a net reaches away from the switch, each end once, with the wires' numbers. */
function destinations(plan: SwitchWiringInput, net: string, label: string): string {
  const wires = plan.wires.filter((w) => w.net === net);
  const seen = new Map<string, string>();
  const note = (end: End, says: string) => {
    if (end.at === "switch" || end.at === "resistor" || says === label) return;
    // Both halves of a connector carry the same number: said once.
    const told = end.at === "connector" ? `${end.connector} contact\u2009${end.contact}` : says;
    seen.set(told, told);
  };
  for (const w of wires) {
    note(w.from, w.fromText);
    note(w.to, w.toText);
  }
  const pullUps = plan.pullUps.filter((r) => r.net === net).map((r) => `${r.id}, ${ohms(r.ohms)} to +5\u2009V`);
  const numbers = wires.map((w: Wire) => w.number);
  const tail = numbers.length === 0 ? "" : ` (${numbers.length === 1 ? "wire" : "wires"}\u00a0${numbers.join(", ")})`;
  return `${[...seen.values(), ...pullUps].join("; ")}${tail}`;
}

function ohms(value: number): string {
  return value >= 1000 ? `${value / 1000}\u2009kΩ` : `${value}\u2009Ω`;
}

function netsOf(sections: readonly SwitchSection[]): { readonly hubs: string[]; readonly throws: string[] } {
  const hubs = [...new Set(sections.flatMap((s) => s.hubNet ?? []))];
  const throws = [...new Set(sections.flatMap((s) => s.throws.flatMap((t) => (t.net === undefined ? [] : [t.net]))))];
  // A net that is also a hub's ends lowest of all, so it stands furthest right, out of the way of the words above.
  return { hubs, throws: [...throws.filter((n) => !hubs.includes(n)), ...throws.filter((n) => hubs.includes(n))] };
}

/** Height at which each pole and throw stands. */
function poleRows(
  sections: readonly SwitchSection[],
  top: number,
): { readonly y: (pole: number, row: number) => number; readonly end: number } {
  const starts: number[] = [];
  let y = top;
  for (const s of sections) {
    starts.push(y);
    y += Math.max(1, s.throws.length) * rowHeight + poleGap;
  }
  return { y: (pole, row) => itemAt(starts, pole) + row * rowHeight + rowHeight / 2, end: y };
}

function dot(x: number, y: number): Svg {
  return circle(x, y, 3, { fill: "currentColor", stroke: "none" });
}

function groundSign(x: number, y: number): Svg {
  return path(`M${x} ${y}h6M${x + 6} ${y - 7}v14M${x + 10} ${y - 4.5}v9M${x + 14} ${y - 2}v4`);
}

function pullUpSign(x: number, foot: number, id: string): Svg {
  return join([
    text(x, foot - 50, id, { mono: true, small: true, anchor: "middle" }),
    line(x - 8, foot - 44, x + 8, foot - 44, { "stroke-width": weight.heavy }),
    line(x, foot - 44, x, foot - 36),
    rect(x - 5, foot - 36, 10, 22, { rx: 0 }),
    line(x, foot - 14, x, foot),
  ]);
}

/** A coded switch closes several contacts at once: each is drawn with a blade of its own. */
function closesSeveral(section: SwitchSection, positions: readonly string[]): boolean {
  return positions.some((position) => section.throws.filter((t) => t.positions.includes(position)).length > 1);
}

/** "position 1", "positions 1, 3" */
function positionWords(positions: readonly string[]): string {
  if (positions.length === 0) return "no position";
  return `pos ${positions.join(", ")}`;
}

function throwWords(t: SwitchSection["throws"][number]): string {
  return t.net === undefined ? `${positionWords(t.positions)}, not used` : positionWords(t.positions);
}

interface ContactPlace {
  readonly y: (pole: number, row: number) => number;
  readonly hubX: number;
  readonly throwX: number;
  /** Where the name of the common terminal begins. */
  readonly textX: number;
  readonly left: readonly Rail[];
  readonly right: readonly Rail[];
  /** All positions, and the one it is drawn in. */
  readonly positions: readonly string[];
  readonly position: string;
}

/** One pole: its common terminal, its blades, its throws, each joined to the upright of its net. */
function contact(section: SwitchSection, p: number, place: ContactPlace): Svg {
  const { y, hubX, throwX, textX, left, right, positions, position } = place;
  const rows = Math.max(1, section.throws.length);
  const middle = (y(p, 0) + y(p, rows - 1)) / 2;
  const hubRail = left.find((r) => r.net === section.hubNet);
  const blade = (x: number, from: number, to: { readonly x: number; readonly y: number }) =>
    line(x, from, to.x, to.y, { "stroke-width": weight.heavy, class: "dw-blade" });
  const closed = section.throws.findIndex((t) => t.positions.includes(position));
  // An open blade points between two contacts, never at one.
  const oneBlade = blade(
    hubX + 3.5,
    middle,
    closed >= 0 ? { x: throwX - 4, y: y(p, closed) } : { x: throwX - 22, y: middle - rowHeight / 2 + 2 },
  );
  const blades = section.throws.map((t, row) => {
    const made = t.positions.includes(position);
    const end = made ? { x: throwX - 4, y: y(p, row) } : { x: throwX - 10, y: y(p, row) - rowHeight / 3 };
    return join([dot(hubX, y(p, row)), blade(hubX, y(p, row), end)]);
  });
  return join([
    text(textX, middle - 7, section.hub, { mono: true, small: true }),
    text(textX, middle + 17, `pole ${section.pole}`, { small: true }),
    hubRail === undefined ? line(hubX - 20, middle, hubX - 4, middle) : line(hubRail.x, middle, hubX - 4, middle),
    hubRail === undefined ? nothing : dot(hubRail.x, middle),
    circle(hubX, middle, 4),
    ...(closesSeveral(section, positions) ? [line(hubX, y(p, 0), hubX, y(p, rows - 1)), ...blades] : [oneBlade]),
    ...section.throws.map((t, row) => {
      const at = y(p, row);
      const rail = t.net === undefined ? undefined : right.find((r) => r.net === t.net);
      return join([
        circle(throwX, at, 4),
        text(throwX + 10, at - 5, t.terminal, { mono: true, small: true }),
        text(throwX + 16 + widthOf(t.terminal, { mono: true, small: true }), at - 5, throwWords(t), { small: true }),
        rail === undefined ? line(throwX + 4, at, throwX + 24, at) : join([line(throwX + 4, at, rail.x, at), dot(rail.x, at)]),
      ]);
    }),
  ]);
}

type RowHeight = ContactPlace["y"];

/** The height at which a net first meets the switch: at a common terminal, or at a throw. */
function firstTouch(sections: readonly SwitchSection[], y: RowHeight, net: string, hub: boolean): number | undefined {
  for (const [p, s] of sections.entries()) {
    if (hub && s.hubNet === net) return (y(p, 0) + y(p, Math.max(1, s.throws.length) - 1)) / 2;
    const row = s.throws.findIndex((t) => t.net === net);
    if (!hub && row >= 0) return y(p, row);
  }
  return undefined;
}

/** A broken line down the blades: they all move together. */
function gangedSign(sections: readonly SwitchSection[], y: RowHeight, x: number): Svg {
  if (sections.length < 2) return nothing;
  const foot = y(sections.length - 1, Math.max(1, lastOf(sections).throws.length) - 1);
  return line(x, y(0, 0), x, foot, { "stroke-width": weight.thin, "stroke-dasharray": "2 3" });
}

/** The drawing in words, pole by pole, then net by net. */
function wiringWords(plan: SwitchWiringInput, position: string, order: readonly Rail[], labelOf: (net: string) => string): string {
  const { name, sections } = plan.switch;
  return [
    `${name}, ${sections.length} ${sections.length === 1 ? "pole" : "poles"}, drawn in position ${position}.`,
    ...sections.flatMap((s) =>
      s.throws.map((t) => {
        const goes = t.net === undefined ? "is not connected" : `goes to ${labelOf(t.net)}`;
        return `Pole ${s.pole}, common ${s.hub} (${s.hubNet === undefined ? "not wired" : labelOf(s.hubNet)}): ${t.terminal}, joined in ${positionWords(t.positions)}, ${goes}.`;
      }),
    ),
    ...order.map((r) => `${labelOf(r.net)}: ${r.lines.join(" ")}.`),
  ].join(" ");
}

export function switchWiring(plan: SwitchWiringInput, prefix: string, pixels = 640): string {
  const atMost = unitsFor(pixels);
  const { sections } = plan.switch;
  const { hubs, throws } = netsOf(sections);
  const { hubX, throwX, railsFrom, railStep, railLeft } = columns(
    atMost,
    hubs.length,
    Math.max(
      0,
      ...sections.flatMap((s) =>
        s.throws.map((t) => widthOf(t.terminal, { mono: true, small: true }) + 6 + widthOf(throwWords(t), { small: true })),
      ),
    ),
  );
  const position = plan.contacts[0]?.position ?? plan.switch.positions[0] ?? "";
  const railX = (i: number) => railsFrom + i * railStep;
  const width = Math.max(railX(throws.length - 1) + 24, 300);
  const wordsX = railLeft(hubs.length - 1) + 34;
  const top = plan.pullUps.length > 0 ? 70 : 22;
  const { y, end } = poleRows(sections, top);

  const labelOf = (net: string) => plan.nets.find((n) => n.id === net)?.label ?? net;
  const makeRail = (net: string, x: number, until: number): Rail => ({
    net,
    x,
    label: wrap(labelOf(net), until - wordsX - 30, { mono: true, bold: true }),
    lines: wrap(destinations(plan, net, labelOf(net)), until - wordsX - 14, { small: true }),
    ground: plan.nets.find((n) => n.id === net)?.kind === "ground",
  });
  // A net that is hub and throw alike has an upright on each side and one row, among the hubs' rows at the bottom.
  const right = throws.map((net, i) => makeRail(net, railX(i), railX(i)));
  const both = right.filter((r) => hubs.includes(r.net));
  const until = Math.min(width, ...both.map((r) => r.x));
  const left = hubs.map((net, i) => makeRail(net, railLeft(i), until));
  const order = [...right.filter((r) => !hubs.includes(r.net)), ...[...left].reverse()];
  const rowY = new Map<string, number>();
  let foot = end + 8;
  for (const r of order) {
    rowY.set(r.net, foot + 10);
    foot += 9 + (r.label.length + r.lines.length) * lineHeight;
  }

  const place: ContactPlace = {
    y,
    hubX,
    throwX,
    textX: railLeft(hubs.length - 1) + 12,
    left,
    right,
    positions: plan.switch.positions,
    position,
  };

  const upright = (rail: Rail, hub: boolean): Svg => {
    const pullUp = hub ? undefined : plan.pullUps.find((r) => r.net === rail.net);
    const from = pullUp ? top - 4 : (firstTouch(sections, y, rail.net, hub) ?? end);
    const to = entryOf(rowY, rail.net);
    const written = widthOf(itemAt(rail.label, 0), { mono: true, bold: true });
    const words = [
      ...rail.label.map((l, k) => text(wordsX, to + 4 + k * lineHeight, l, { mono: true, bold: true })),
      ...rail.lines.map((l, k) => text(wordsX, to + 4 + (rail.label.length + k) * lineHeight, l, { small: true })),
    ];
    if (hub)
      return join([
        line(rail.x, from, rail.x, to),
        line(rail.x, to, wordsX - (rail.ground ? 20 : 6), to),
        rail.ground ? groundSign(wordsX - 20, to) : path(`M${wordsX - 11} ${to - 3}l5 3l-5 3`),
        ...words,
      ]);
    const tip = wordsX + written + 6;
    return join([
      line(rail.x, from, rail.x, to),
      pullUp ? pullUpSign(rail.x, top - 4, pullUp.id) : nothing,
      line(rail.x, to, tip, to),
      path(`M${tip + 5} ${to - 3}l-5 3l5 3`),
      ...(hubs.includes(rail.net) ? [] : words),
    ]);
  };

  const caption = wrap(`Drawn in position ${position}. A dot joins; wires that cross without one do not touch.`, width - 8, {
    small: true,
  });
  const height = foot + 8 + caption.length * lineHeight;
  const says = wiringWords(plan, position, order, labelOf);

  return drawing(
    { prefix, title: `Wiring of the ${plan.switch.name}`, says, width, height, class: "dw-switch" },
    gangedSign(sections, y, (hubX + throwX) / 2),
    ...left.map((r) => upright(r, true)),
    ...right.map((r) => upright(r, false)),
    ...sections.map((section, p) => contact(section, p, place)),
    ...caption.map((l, i) => text(4, foot + 16 + i * lineHeight, l, { small: true })),
  );
}
