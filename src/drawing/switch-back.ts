// The switch as one solders it: seen from behind, every terminal with its name, the numbers of the wires that end on it, and their label.
// Clockwise at the knob is anticlockwise here. Where makes differ in where terminals sit, the marks on them count, and the caption says so.
import type { WiringPlan } from "../wiring/index.js";
import {
  circle,
  drawing,
  join,
  line,
  nothing,
  path,
  type Svg,
  type TextStyle,
  text,
  tone,
  unitsFor,
  weight,
  widthOf,
  wrap,
} from "./svg.js";

export type SwitchBackInput = Pick<WiringPlan, "switch" | "wires" | "nets">;

const row = 17;

interface Terminal {
  readonly name: string;
  readonly hub: boolean;
  readonly wires: readonly number[];
  readonly label: string | undefined;
  readonly x: number;
  readonly y: number;
}

/** Where each terminal sits, from the middle of the switch, x to the right and y down, as seen from the knob. */
function places({ switch: { sections, form, poles, positions } }: SwitchBackInput, ring: number): Map<string, readonly [number, number]> {
  const found = new Map<string, readonly [number, number]>();
  const round = form === "rotary";
  const throwsOf = (s: (typeof sections)[number]) => [...new Set(s.throws.map((t) => t.terminal))];
  // Poles that are not used keep their part of the ring.
  const steps = poles * positions.length;
  sections.forEach((section, p) => {
    const throws = throwsOf(section);
    if (round) {
      const angle = (at: number) => ((at + 0.5) / Math.max(steps, 1)) * 2 * Math.PI - Math.PI / 2;
      const first = (section.pole - 1) * positions.length;
      throws.forEach((terminal, i) => {
        found.set(terminal, [ring * Math.cos(angle(first + i)), ring * Math.sin(angle(first + i))]);
      });
      const middle = angle(first + (throws.length - 1) / 2 + (throws.length % 2 === 1 ? 0.5 : 0));
      found.set(section.hub, [ring * 0.55 * Math.cos(middle), ring * 0.55 * Math.sin(middle)]);
      return;
    }
    // Lugs of a lever switch in columns, the common between the throws.
    const column = [...throws];
    column.splice(Math.ceil(column.length / 2), 0, section.hub);
    const x = (p - (sections.length - 1) / 2) * 34;
    column.forEach((terminal, i) => {
      found.set(terminal, [x, (i - (column.length - 1) / 2) * 34]);
    });
  });
  return found;
}

function terminalsOf(plan: SwitchBackInput, ring: number): Terminal[] {
  const hubs = new Set(plan.switch.sections.map((s) => s.hub));
  const netAt = new Map(
    plan.switch.sections.flatMap((s) => [[s.hub, s.hubNet] as const, ...s.throws.map((t) => [t.terminal, t.net] as const)]),
  );
  return [...places(plan, ring)].map(([name, [x, y]]) => ({
    name,
    hub: hubs.has(name),
    wires: plan.wires.filter((w) => [w.from, w.to].some((e) => e.at === "switch" && e.terminal === name)).map((w) => w.number),
    label: plan.nets.find((n) => n.id === netAt.get(name))?.label,
    // Seen from behind, left is right.
    x: x === 0 ? 0 : -x,
    y,
  }));
}

const wireWords = (wires: readonly number[]) => (wires.length === 0 ? "no wire" : `wire ${wires.join(", ")}`);

export function switchBack(plan: SwitchBackInput, prefix: string, pixels = 640): string {
  const width = unitsFor(pixels);
  const narrow = width < 480;
  const ring = narrow ? 40 : 62;
  const terminals = terminalsOf(plan, ring);
  const turn = (t: Terminal) => Math.atan2(t.y, Math.abs(t.x));
  // Ties in height are told from the outside in, so that no two leaders cross.
  const ordered = (list: readonly Terminal[]) => [...list].sort((a, b) => turn(a) - turn(b) || Math.abs(b.x) - Math.abs(a.x));
  const middle = terminals.filter((t) => Math.abs(t.x) < 1);
  const right = ordered([...terminals.filter((t) => t.x >= 1), ...middle.filter((_, i) => i % 2 === 0)]);
  const left = ordered([...terminals.filter((t) => t.x <= -1), ...middle.filter((_, i) => i % 2 === 1)]);
  const reach = Math.max(...terminals.map((t) => Math.max(Math.abs(t.x), Math.abs(t.y))), 20) + 14;
  const rows = Math.max(left.length, right.length);
  const gap = narrow ? 6 : 22;
  const room = width / 2 - reach - gap - 10;
  const wordsOf = (t: Terminal) => (t.wires.length > 0 ? (t.label ?? "") : "empty");
  // A label cut short could name the wrong point: on a narrow page it takes as many lines as it needs.
  const most = Math.max(1, ...terminals.map((t) => wrap(wordsOf(t), room, { small: true }).length));
  const step = narrow ? row + most * 13 : row;
  const tall = Math.max(rows * step, 2 * reach);
  const top = 28;
  const [cx, cy] = [width / 2, top + tall / 2];
  const round = plan.switch.form === "rotary";

  const label = (t: Terminal, i: number, count: number, side: -1 | 1): Svg => {
    const y = cy + (i - (count - 1) / 2) * step;
    const edge = cx + side * (reach + gap);
    const x = edge + side * 6;
    const anchor = side < 0 ? "end" : "start";
    const used = t.wires.length > 0;
    const named = widthOf(t.name, { mono: true, bold: used });
    const words = used ? `${t.wires.join(", ")}` : "";
    // Out between the others first, then to its words.
    const out = round ? ring + 12 : Math.max(Math.abs(t.x), Math.abs(t.y));
    const far = Math.hypot(t.x, t.y) || 1;
    const [ox, oy] = round ? [cx + (t.x / far) * out, cy + (t.y / far) * out] : [cx + t.x, cy + t.y];
    const leader = path(`M${cx + t.x} ${cy + t.y}L${ox} ${oy}L${edge} ${y}`, { "stroke-width": weight.thin });
    const number = used ? text(x + side * (named + 8), y + 4, words, { bold: true, small: narrow, anchor }) : nothing;
    const numbers = used ? widthOf(words, { bold: true }) + 10 : 0;
    const style: TextStyle = { small: true, anchor, ...(used ? {} : { class: "dw-quiet" }) };
    const rest = narrow
      ? wrap(wordsOf(t), room, { small: true }).map((l, k) => text(x, y + 17 + k * 13, l, style))
      : [text(x + side * (named + 8 + numbers), y + 4, wordsOf(t), style)];
    return join([leader, text(x, y + 4, t.name, { mono: true, bold: used, anchor }), number, ...rest]);
  };
  const lugs = terminals.map((t) =>
    circle(cx + t.x, cy + t.y, t.hub ? 5.5 : 4, {
      ...(t.wires.length > 0 ? { fill: "currentColor" } : { fill: "none" }),
      "stroke-width": t.hub ? weight.heavy : weight.line,
    }),
  );
  const links = plan.wires.flatMap((w): Svg[] => {
    if (w.from.at !== "switch" || w.to.at !== "switch") return [];
    const ends = [w.from.terminal, w.to.terminal].map((name) => terminals.find((t) => t.name === name));
    const [a, b] = [ends[0], ends[1]];
    return a && b ? [line(cx + a.x, cy + a.y, cx + b.x, cy + b.y, { "stroke-width": weight.heavy })] : [];
  });
  const caption = wrap(
    `Seen from behind, as one solders${round ? ": clockwise at the knob is anticlockwise here" : ""}. Bold: wires.`,
    width - 8,
    { small: true },
  );
  const says = `${plan.switch.name}, from the solder side. ${[...right, ...left]
    .map((t) => `${t.name}${t.hub ? " (common)" : ""}: ${wireWords(t.wires)}${t.wires.length > 0 && t.label ? `, ${t.label}` : ""}.`)
    .join(" ")}`;
  return drawing(
    {
      prefix,
      title: `Solder side of the ${plan.switch.name}`,
      says,
      width,
      height: top + tall + 16 + caption.length * 15,
      class: "dw-back",
    },
    text(cx, 16, plan.switch.name, { anchor: "middle", bold: true }),
    round ? circle(cx, cy, ring - 14, tone) : nothing,
    ...right.map((t, i) => label(t, i, right.length, 1)),
    ...left.map((t, i) => label(t, i, left.length, -1)),
    ...links,
    ...lugs,
    ...caption.map((l, i) => text(4, top + tall + 20 + i * 15, l, { small: true })),
  );
}
