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

const throwsOf = (section: SwitchBackInput["switch"]["sections"][number]) => [...new Set(section.throws.map((t) => t.terminal))];

/** Where each terminal of a rotary switch sits, from its middle, x to the right and y down, as seen from the knob. */
function places({ switch: { sections, poles, positions } }: SwitchBackInput, ring: number): Map<string, readonly [number, number]> {
  const found = new Map<string, readonly [number, number]>();
  // Poles that are not used keep their part of the ring.
  const steps = poles * positions.length;
  const angle = (at: number) => ((at + 0.5) / Math.max(steps, 1)) * 2 * Math.PI - Math.PI / 2;
  for (const section of sections) {
    const throws = throwsOf(section);
    const first = (section.pole - 1) * positions.length;
    throws.forEach((terminal, i) => {
      found.set(terminal, [ring * Math.cos(angle(first + i)), ring * Math.sin(angle(first + i))]);
    });
    const middle = angle(first + (throws.length - 1) / 2 + (throws.length % 2 === 1 ? 0.5 : 0));
    found.set(section.hub, [ring * 0.55 * Math.cos(middle), ring * 0.55 * Math.sin(middle)]);
  }
  return found;
}

type Bare = Omit<Terminal, "x" | "y">;

/** What ends on a terminal. */
function terminalOf(plan: SwitchBackInput, name: string): Bare {
  const { sections } = plan.switch;
  const net = sections.find((s) => s.hub === name)?.hubNet ?? sections.flatMap((s) => s.throws).find((t) => t.terminal === name)?.net;
  return {
    name,
    hub: sections.some((s) => s.hub === name),
    wires: plan.wires.filter((w) => [w.from, w.to].some((e) => e.at === "switch" && e.terminal === name)).map((w) => w.number),
    label: plan.nets.find((n) => n.id === net)?.label,
  };
}

function terminalsOf(plan: SwitchBackInput, ring: number): Terminal[] {
  // Seen from behind, left is right.
  return [...places(plan, ring)].map(([name, [x, y]]) => ({ ...terminalOf(plan, name), x: x === 0 ? 0 : -x, y }));
}

const wireWords = (wires: readonly number[]) => (wires.length === 0 ? "no wire" : `wire ${wires.join(", ")}`);

const wordsOf = (t: Bare) => (t.wires.length > 0 ? (t.label ?? "") : "empty");

function lug(t: Terminal): Svg {
  return circle(t.x, t.y, t.hub ? 5.5 : 4, {
    fill: t.wires.length > 0 ? "currentColor" : "none",
    "stroke-width": t.hub ? weight.heavy : weight.line,
  });
}

function linksOf(plan: SwitchBackInput, terminals: readonly Terminal[]): Svg[] {
  return plan.wires.flatMap((w): Svg[] => {
    if (w.from.at !== "switch" || w.to.at !== "switch") return [];
    const [from, to] = [w.from.terminal, w.to.terminal];
    const [a, b] = [terminals.find((t) => t.name === from), terminals.find((t) => t.name === to)];
    return a && b ? [line(a.x, a.y, b.x, b.y, { "stroke-width": weight.heavy })] : [];
  });
}

interface Body {
  readonly terminals: readonly Terminal[];
  readonly drawn: readonly Svg[];
  readonly foot: number;
}

/** Lugs of any other switch: a column a pole, the first at the right, the common between its throws; the words beside each. */
function columns(plan: SwitchBackInput, width: number, top: number): Body {
  const { sections } = plan.switch;
  const across = Math.max(1, Math.min(sections.length, Math.floor(width / (width < 480 ? 92 : 128))));
  const pitch = width / across;
  const room = pitch - 24;
  const listed = sections.map((section) => {
    const names = throwsOf(section);
    names.splice(Math.ceil(names.length / 2), 0, section.hub);
    return names.map((name) => terminalOf(plan, name));
  });
  const most = Math.max(1, ...listed.flat().map((t) => wrap(wordsOf(t), room, { small: true }).length));
  const step = row + most * 13 + 4;
  const tallest = Math.max(1, ...listed.map((l) => l.length)) * step + 10;
  const terminals = listed.flatMap((list, p) => {
    // Seen from behind the first pole stands at the right.
    const x = (across - 1 - (p % across)) * pitch + 10;
    const y = top + Math.floor(p / across) * tallest + 14;
    return list.map((t, i): Terminal => ({ ...t, x, y: y + i * step }));
  });
  const drawn = terminals.flatMap((t) => {
    const used = t.wires.length > 0;
    const named = widthOf(t.name, { mono: true, bold: used });
    return [
      text(t.x + 12, t.y + 4, t.name, { mono: true, bold: used }),
      ...(used ? [text(t.x + 18 + named, t.y + 4, t.wires.join(", "), { bold: true, small: true })] : []),
      ...wrap(wordsOf(t), room, { small: true }).map((l, k) =>
        text(t.x + 12, t.y + 17 + k * 13, l, used ? { small: true } : { small: true, class: "dw-quiet" }),
      ),
    ];
  });
  return { terminals, drawn, foot: top + Math.ceil(sections.length / across) * tallest };
}

/** The ring of a rotary switch, with a line from each terminal to its words at the side. */
function ringOf(plan: SwitchBackInput, width: number, top: number): Body {
  const narrow = width < 480;
  const ring = narrow ? 40 : 62;
  const terminals = terminalsOf(plan, ring);
  const turn = (t: Terminal) => Math.atan2(t.y, Math.abs(t.x));
  // Ties in height are told from the outside in, so that no two lines cross.
  const ordered = (list: readonly Terminal[]) => [...list].sort((a, b) => turn(a) - turn(b) || Math.abs(b.x) - Math.abs(a.x));
  const middle = terminals.filter((t) => Math.abs(t.x) < 1);
  const right = ordered([...terminals.filter((t) => t.x >= 1), ...middle.filter((_, i) => i % 2 === 0)]);
  const left = ordered([...terminals.filter((t) => t.x <= -1), ...middle.filter((_, i) => i % 2 === 1)]);
  const reach = ring + 14;
  const gap = narrow ? 6 : 22;
  const room = width / 2 - reach - gap - 10;
  // A label cut short could name the wrong point: on a narrow page it takes as many lines as it needs.
  const most = Math.max(1, ...terminals.map((t) => wrap(wordsOf(t), room, { small: true }).length));
  const step = narrow ? row + most * 13 : row;
  const tall = Math.max(Math.max(left.length, right.length) * step, 2 * reach);
  const [cx, cy] = [width / 2, top + tall / 2];
  const label = (t: Terminal, i: number, count: number, side: -1 | 1): Svg => {
    const y = cy + (i - (count - 1) / 2) * step;
    const edge = cx + side * (reach + gap);
    const x = edge + side * 6;
    const anchor = side < 0 ? "end" : "start";
    const used = t.wires.length > 0;
    const named = widthOf(t.name, { mono: true, bold: used });
    const words = t.wires.join(", ");
    // Out between the others first, then to its words.
    const far = Math.hypot(t.x, t.y) || 1;
    const [ox, oy] = [cx + (t.x / far) * (ring + 12), cy + (t.y / far) * (ring + 12)];
    const numbers = used ? widthOf(words, { bold: true }) + 10 : 0;
    const style: TextStyle = { small: true, anchor, ...(used ? {} : { class: "dw-quiet" }) };
    const rest = narrow
      ? wrap(wordsOf(t), room, { small: true }).map((l, k) => text(x, y + 17 + k * 13, l, style))
      : [text(x + side * (named + 8 + numbers), y + 4, wordsOf(t), style)];
    return join([
      path(`M${cx + t.x} ${cy + t.y}L${ox} ${oy}L${edge} ${y}`, { "stroke-width": weight.thin }),
      text(x, y + 4, t.name, { mono: true, bold: used, anchor }),
      used ? text(x + side * (named + 8), y + 4, words, { bold: true, small: narrow, anchor }) : nothing,
      ...rest,
    ]);
  };
  return {
    terminals: terminals.map((t) => ({ ...t, x: cx + t.x, y: cy + t.y })),
    drawn: [
      circle(cx, cy, ring - 14, tone),
      ...right.map((t, i) => label(t, i, right.length, 1)),
      ...left.map((t, i) => label(t, i, left.length, -1)),
    ],
    foot: top + tall,
  };
}

export function switchBack(plan: SwitchBackInput, prefix: string, pixels = 640): string {
  const width = unitsFor(pixels);
  const round = plan.switch.form === "rotary";
  const { terminals, drawn, foot } = round ? ringOf(plan, width, 28) : columns(plan, width, 28);
  const turned = round ? "clockwise at the knob is anticlockwise here" : "left at the lever is right here";
  const caption = wrap(`Seen from behind, as one solders: ${turned}.`, width - 8, { small: true });
  const says = `${plan.switch.name}, from the solder side. ${terminals
    .map((t) => `${t.name}${t.hub ? " (common)" : ""}: ${wireWords(t.wires)}${t.wires.length > 0 && t.label ? `, ${t.label}` : ""}.`)
    .join(" ")}`;
  const height = foot + 16 + caption.length * 15;
  return drawing(
    { prefix, title: `Solder side of the ${plan.switch.name}`, says, width, height, class: "dw-back" },
    text(width / 2, 16, plan.switch.name, { anchor: "middle", bold: true }),
    ...drawn,
    ...linksOf(plan, terminals),
    ...terminals.map(lug),
    ...caption.map((l, i) => text(4, foot + 20 + i * 15, l, { small: true })),
  );
}
