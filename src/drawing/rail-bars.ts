// Load of each supply rail against its limit. A current nobody has measured is drawn as an open end, never as nothing.
import { itemAt } from "../records/index.js";
import { withUnit } from "./numbers.js";
import { dashes, drawing, join, line, nothing, rect, type Svg, text, tone, unitsFor, weight, wrap } from "./svg.js";

export interface RailLoad {
  readonly rail: string;
  /** What all cards and the board take together, in A; unknown as soon as one of them is. */
  readonly used_A: number | "unknown";
  /** The part that is known, when the whole is not. */
  readonly atLeast_A?: number;
  readonly limit_A: number | "unknown";
  /** Whose current is not known. */
  readonly unknownFrom?: readonly string[];
}

const row = 48;
const lineHeight = 14;
const left = 56;

/** "1.85 A of 4 A, 2.15 A to spare": the same words beside the bar and for a screen reader. */
export function railWords(load: RailLoad): string {
  const limit = load.limit_A === "unknown" ? "limit not known" : undefined;
  if (load.used_A === "unknown") {
    const least = load.atLeast_A === undefined ? "load not known" : `at least ${withUnit(load.atLeast_A, "A")}`;
    const whose = load.unknownFrom === undefined || load.unknownFrom.length === 0 ? "" : `; not known: ${load.unknownFrom.join(", ")}`;
    return `${least}${limit ? `, ${limit}` : ` of ${withUnit(load.limit_A as number, "A")}`}${whose}`;
  }
  if (load.limit_A === "unknown") return `${withUnit(load.used_A, "A")}, limit not known`;
  const spare = load.limit_A - load.used_A;
  const rest = spare >= 0 ? `${withUnit(spare, "A")} to spare` : `over by ${withUnit(-spare, "A")}`;
  return `${withUnit(load.used_A, "A")} of ${withUnit(load.limit_A, "A")}, ${rest}`;
}

export function railBars(loads: readonly RailLoad[], prefix: string, pixels = 640): string {
  const width = unitsFor(pixels);
  const full = width - left - 12;
  // Each rail is drawn against its own limit, at four fifths of the width, so that an overload has room to show.
  const limitX = left + full * 0.8;
  const lines = loads.map((load) => wrap(railWords(load), full, { small: true }));
  const tops: number[] = [];
  let height = 8;
  for (const l of lines) {
    tops.push(height);
    height += row + (l.length - 1) * lineHeight;
  }
  const bar = (load: RailLoad, i: number): Svg => {
    const top = itemAt(tops, i);
    const sure = load.used_A === "unknown" ? (load.atLeast_A ?? 0) : load.used_A;
    const part = sure === 0 ? 0 : load.limit_A === "unknown" ? 0.5 : load.limit_A === 0 ? 1.25 : sure / load.limit_A;
    const end = left + Math.min(full, full * 0.8 * part);
    const over = load.limit_A !== "unknown" && sure > load.limit_A;
    const open = load.used_A === "unknown";
    return join([
      text(4, top + 18, load.rail, { mono: true, bold: true }),
      rect(left, top + 6, limitX - left, 16, {
        "stroke-width": weight.thin,
        "stroke-dasharray": load.limit_A === "unknown" ? dashes : undefined,
        rx: 0,
      }),
      rect(left, top + 6, end - left, 16, { ...tone, "fill-opacity": 0.35, rx: 0, class: over ? "dw-over" : "dw-load" }),
      open ? rect(end, top + 9, Math.min(36, left + full - end), 10, { "stroke-dasharray": "3 2", rx: 0 }) : nothing,
      open ? text(end + 14, top + 18, "?", { small: true, bold: true }) : nothing,
      load.limit_A === "unknown" ? nothing : line(limitX, top + 1, limitX, top + 27, { "stroke-width": weight.heavy }),
      ...itemAt(lines, i).map((l, k) => text(left, top + 38 + k * lineHeight, l, { small: true })),
    ]);
  };
  const says = `Each bar ends at the heavy line when the rail is fully loaded. ${loads.map((l) => `${l.rail}: ${railWords(l)}.`).join(" ")}`;
  return drawing({ prefix, title: "Load of the supply rails", says, width, height, class: "dw-rails" }, ...loads.map(bar));
}
