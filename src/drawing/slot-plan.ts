// The slot plan: the board seen from above with its slots in order of position, rear openings at the left,
// cards drawn to the length they take. What may stand where was decided before.
import { withUnit } from "./numbers.js";
import { dashes, drawing, join, line, nothing, path, rect, type Svg, shorten, text, tone, unitsFor, weight, widthOf } from "./svg.js";

export interface PlanSlot {
  readonly id: string;
  /** "long", "short": the edge in a word. */
  readonly edge: string;
  readonly position: number;
  readonly longest_mm?: number | "unknown" | undefined;
  /** Rear opening; two slots that name the same one share it. */
  readonly opening?: string | undefined;
}

export interface PlanCard {
  readonly name: string;
  readonly slot: string;
  /** Slots taken, counted upwards from its own. */
  readonly takes: number;
  readonly length_mm: number | "unknown";
  readonly usesOpening: boolean;
  /** "any of 3 long slots" */
  readonly freedom?: string;
  /** Stands in its slot but is switched off in the mode shown. */
  readonly off?: boolean;
}

export interface SlotPlan {
  readonly board: string;
  readonly slots: readonly PlanSlot[];
  readonly cards: readonly PlanCard[];
}

const row = 60;
/** Top of the bar inside its row; the label stands above it, so that neither hides the other. */
const barTop = 38;
const barHeight = 14;

/** Card and slot row it stands in. */
interface Standing {
  readonly card: PlanCard;
  readonly first: number;
  readonly rows: number;
}

function standings(plan: SlotPlan, slots: readonly PlanSlot[]): Standing[] {
  const found: Standing[] = [];
  for (const card of plan.cards) {
    const first = slots.findIndex((slot) => slot.id === card.slot);
    if (first >= 0) found.push({ card, first, rows: Math.min(Math.max(1, card.takes), slots.length - first) });
  }
  return found;
}

function describe(plan: SlotPlan, slots: readonly PlanSlot[], standing: readonly Standing[]): string {
  const lines = slots.map((slot, i) => {
    const here = standing.find((s) => i >= s.first && i < s.first + s.rows);
    if (here === undefined) return `Slot ${slot.id} (${slot.edge}): empty.`;
    const also = i > here.first ? ", second row of the card" : "";
    return `Slot ${slot.id} (${slot.edge}): ${here.card.name}${also}${here.card.off ? ", switched off" : ""}.`;
  });
  return `${plan.board}, slots in order of position. ${lines.join(" ")}`;
}

interface ScaleInput {
  readonly left: number;
  readonly base: number;
  /** Units a millimetre. */
  readonly scale: number;
  readonly longest: number;
  readonly width: number;
}

/** The rule below the slots, in mm. */
function scaleLine({ left, base, scale, longest, width }: ScaleInput): Svg {
  const step = [50, 100, 200].find((mm) => mm * scale > 80) ?? 400;
  const ticks = Array.from({ length: Math.floor(longest / step) + 1 }, (_, k) => k * step);
  return join([
    line(left, base, left + longest * scale, base, { "stroke-width": weight.thin }),
    ...ticks.map((mm) => {
      const x = left + mm * scale;
      const label = mm === 0 ? "0" : withUnit(mm, "mm", 0);
      const anchor = x + widthOf(label, { small: true }) / 2 > width ? "end" : mm === 0 ? "start" : "middle";
      return join([line(x, base, x, base + 5, { "stroke-width": weight.thin }), text(x, base + 17, label, { small: true, anchor })]);
    }),
  ]);
}

export function slotPlan(plan: SlotPlan, prefix: string, pixels = 640): string {
  const width = unitsFor(pixels);
  const slots = [...plan.slots].sort((a, b) => a.position - b.position);
  const standing = standings(plan, slots);
  const lengths = [...slots.map((s) => s.longest_mm), ...plan.cards.map((c) => c.length_mm)].filter(
    (mm): mm is number => typeof mm === "number",
  );
  const longest = Math.max(100, ...lengths);
  const marks = widest(slots.map((s) => s.id));
  const openings = slots.some((s) => s.opening !== undefined) ? widest(slots.map((s) => s.opening ?? "")) + 34 : 0;
  const left = 4 + Math.max(marks, 34) + 14 + openings;
  const room = width - left - 10;
  const scale = room / longest;
  const top = 26;
  const height = top + slots.length * row + 30;
  const y = (i: number) => top + i * row;
  const cardAt = (i: number) => standing.find((s) => i >= s.first && i < s.first + s.rows);

  const drawSlot = (slot: PlanSlot, i: number): Svg => {
    const known = typeof slot.longest_mm === "number";
    const reach = (known ? (slot.longest_mm as number) : longest) * scale;
    const frame = { "stroke-width": weight.thin, "stroke-dasharray": known ? undefined : dashes, rx: 0, class: "dw-slot" };
    return join([
      text(4, y(i) + 16, slot.id, { mono: true, bold: true }),
      text(4, y(i) + 31, slot.edge, { small: true }),
      rect(left, y(i) + barTop, reach, barHeight, frame),
      cardAt(i) === undefined ? text(left, y(i) + 31, "empty", { small: true, class: "dw-quiet" }) : nothing,
    ]);
  };

  const drawCard = ({ card, first, rows }: Standing): Svg => {
    const known = typeof card.length_mm === "number";
    const long = (known ? (card.length_mm as number) : longest * 0.75) * scale;
    const look = {
      ...(card.off ? {} : { ...tone, "fill-opacity": 0.45 }),
      "stroke-dasharray": card.off || !known ? dashes : undefined,
      rx: 0,
      class: card.off ? "dw-card dw-off" : "dw-card",
    };
    const detail = [
      card.off ? "switched off" : undefined,
      known ? withUnit(card.length_mm as number, "mm", 0) : "length not known",
      card.freedom,
    ]
      .filter(Boolean)
      .join(" · ");
    const bars = Array.from({ length: rows }, (_, k) => rect(left, y(first + k) + barTop, long, barHeight, look));
    const joints = Array.from({ length: rows - 1 }, (_, k) =>
      join([
        line(left + 3, y(first + k) + barTop + barHeight, left + 3, y(first + k + 1) + barTop, { "stroke-width": weight.heavy }),
        text(left + 12, y(first + k + 1) + 31, shorten(`${card.name}, continued`, room - 12, { small: true }), {
          small: true,
          class: "dw-quiet",
        }),
      ]),
    );
    return join([
      ...bars,
      text(left, y(first) + 16, shorten(card.name, room, { bold: true }), { bold: true }),
      text(left, y(first) + 31, shorten(detail, room, { small: true }), { small: true }),
      ...joints,
    ]);
  };

  const drawOpening = (slot: PlanSlot, i: number): Svg => {
    if (slot.opening === undefined) return nothing;
    const used = standing.some((s) => s.card.usesOpening && s.first === i);
    const sharedWith = slots.findIndex((other, j) => j > i && other.opening === slot.opening);
    const middle = barTop + barHeight / 2;
    return join([
      rect(left - 14, y(i) + barTop - 6, 7, barHeight + 12, { ...(used ? { fill: "currentColor" } : {}), rx: 0 }),
      text(left - 24, y(i) + middle + 4, slot.opening, { mono: true, small: true, anchor: "end" }),
      // A bracket beside the bars says that two slots share one opening.
      sharedWith < 0
        ? nothing
        : path(`M${left - 14} ${y(i) + middle}H${left - 19}V${y(sharedWith) + middle}H${left - 14}`, { "stroke-width": weight.thin }),
    ]);
  };

  return drawing(
    { prefix, title: `Slots of the ${plan.board}`, says: describe(plan, slots, standing), width, height, class: "dw-slots" },
    text(4, 14, "slot", { small: true }),
    openings === 0 ? nothing : text(left - 7, 14, "rear", { small: true, anchor: "end" }),
    text(width - 10, 14, "front", { small: true, anchor: "end" }),
    ...slots.map(drawSlot),
    ...standing.map(drawCard),
    ...slots.map(drawOpening),
    scaleLine({ left, base: y(slots.length) + 6, scale, longest, width }),
  );
}

function widest(labels: readonly string[]): number {
  return Math.max(0, ...labels.map((l) => widthOf(l, { mono: true, bold: true })));
}
