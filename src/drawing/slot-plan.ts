// The slot plan: the board seen from above with its slots in order of position, rear openings at the left,
// cards drawn to the length they take. What may stand where was decided before.
import { withUnit } from "./numbers.js";
import { dashes, drawing, join, line, nothing, path, rect, type Svg, shorten, text, tone, weight, widthOf } from "./svg.js";

export interface PlanSlot {
  readonly id: string;
  /** "long", "short": the edge in a word. */
  readonly edge: string;
  readonly position: number;
  readonly longest_mm?: number | "unknown";
  /** Rear opening; two slots that name the same one share it. */
  readonly opening?: string;
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

const row = 50;
const left = 134;

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

export function slotPlan(plan: SlotPlan, prefix: string, width = 640): string {
  const slots = [...plan.slots].sort((a, b) => a.position - b.position);
  const standing = standings(plan, slots);
  const lengths = [...slots.map((s) => s.longest_mm), ...plan.cards.map((c) => c.length_mm)].filter(
    (mm): mm is number => typeof mm === "number",
  );
  const longest = Math.max(100, ...lengths);
  const room = width - left - 10;
  const scale = room / longest;
  const top = 26;
  const height = top + slots.length * row + 30;
  const y = (i: number) => top + i * row;

  const drawSlot = (slot: PlanSlot, i: number): Svg => {
    const reach = (typeof slot.longest_mm === "number" ? slot.longest_mm : longest) * scale;
    const known = typeof slot.longest_mm === "number";
    const empty = !standing.some((s) => i >= s.first && i < s.first + s.rows);
    return join([
      text(4, y(i) + 20, slot.id, { mono: true, bold: true }),
      text(4, y(i) + 35, shorten(slot.edge, 62, { small: true }), { small: true }),
      rect(left, y(i) + 4, reach, row - 8, {
        "stroke-width": weight.thin,
        "stroke-dasharray": known ? undefined : dashes,
        class: "dw-slot",
      }),
      line(left + 14, y(i) + row - 7, left + Math.min(reach, 150 * scale), y(i) + row - 7, { "stroke-width": weight.heavy }),
      empty ? text(left + 14, y(i) + 25, "empty", { class: "dw-quiet" }) : nothing,
    ]);
  };

  const drawCard = ({ card, first, rows }: Standing): Svg => {
    const known = typeof card.length_mm === "number";
    const long = (known ? (card.length_mm as number) : longest * 0.75) * scale;
    const tall = rows * row - 12;
    const detail = [
      card.off ? "switched off" : undefined,
      known ? withUnit(card.length_mm as number, "mm", 0) : "length not known",
      card.freedom,
    ]
      .filter(Boolean)
      .join(" · ");
    // A card too short for its label keeps it, running on over the empty part of its slot.
    const label = Math.max(long, room) - 22;
    return join([
      rect(left, y(first) + 6, long, tall, {
        ...(card.off ? {} : tone),
        "stroke-dasharray": card.off || !known ? dashes : undefined,
        class: card.off ? "dw-card dw-off" : "dw-card",
      }),
      text(left + 14, y(first) + 20, shorten(card.name, label, { bold: true }), { bold: true }),
      text(left + 14, y(first) + 34, shorten(detail, label, { small: true }), { small: true }),
    ]);
  };

  const drawOpening = (slot: PlanSlot, i: number): Svg => {
    if (slot.opening === undefined) return nothing;
    const used = standing.some((s) => s.card.usesOpening && s.first === i);
    const sharedWith = slots.findIndex((other, j) => j > i && other.opening === slot.opening);
    const name = slot.opening.length > 5 ? "" : slot.opening;
    const bracket =
      sharedWith < 0
        ? nothing
        : join([
            path(`M${left - 20} ${y(i) + 23}H${left - 27}V${y(sharedWith) + 23}H${left - 20}`, { "stroke-width": weight.thin }),
            text(left - 32, (y(i) + y(sharedWith)) / 2 + 27, "shared", { small: true, anchor: "end" }),
          ]);
    return join([
      rect(left - 18, y(i) + 8, 9, row - 16, { ...(used ? { fill: "currentColor" } : {}), rx: 0 }),
      name === "" ? nothing : text(left - 32, y(i) + 20, name, { mono: true, small: true, anchor: "end" }),
      bracket,
    ]);
  };

  const scaleLine = (): Svg => {
    const step = longest > 200 ? 100 : 50;
    const marks = Array.from({ length: Math.floor(longest / step) + 1 }, (_, k) => k * step);
    const base = y(slots.length) + 6;
    return join([
      line(left, base, left + longest * scale, base, { "stroke-width": weight.thin }),
      ...marks.map((mm) => {
        const x = left + mm * scale;
        const label = mm === 0 ? "0" : withUnit(mm, "mm", 0);
        const anchor = x + widthOf(label, { small: true }) / 2 > width ? "end" : mm === 0 ? "start" : "middle";
        return join([line(x, base, x, base + 5, { "stroke-width": weight.thin }), text(x, base + 17, label, { small: true, anchor })]);
      }),
    ]);
  };

  return drawing(
    { prefix, title: `Slots of the ${plan.board}`, says: describe(plan, slots, standing), width, height, class: "dw-slots" },
    text(4, 14, "slot", { small: true }),
    text(left - 4, 14, "rear", { small: true, anchor: "end" }),
    text(width - 10, 14, "front", { small: true, anchor: "end" }),
    ...slots.map(drawSlot),
    ...standing.map(drawCard),
    ...slots.map(drawOpening),
    scaleLine(),
  );
}
