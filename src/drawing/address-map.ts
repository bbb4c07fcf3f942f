// The address map: one address space from low to high, each window in a lane of its own, the free runs between them.
// Heights follow the size only roughly: a 4-port window must stay readable beside a megabyte of memory.
import { entryOf, itemAt, lastOf } from "../records/index.js";
import { address, sizeOf } from "./numbers.js";
import { dashes, drawing, join, line, nothing, rect, type Svg, text, tone, unitsFor, weight, wrap } from "./svg.js";

export interface MapWindow {
  readonly base: number;
  readonly size: number;
  /** Who answers there. */
  readonly owner: string;
  /** What answers: "option ROM", "registers". */
  readonly what?: string | undefined;
  /** Against the machine as it stands: new comes in, gone goes out. */
  readonly change?: "new" | "gone";
  /** It is the echo of another window, of a card that decodes few bits. */
  readonly alias?: boolean;
  /** Only while its card is switched on; it is off in the mode shown. */
  readonly off?: boolean | undefined;
  /** Something may answer there, as said here; it is not counted among what does. */
  readonly perhaps?: string;
  /** It answers in these modes of a switched machine only; left out: in all. */
  readonly modes?: readonly string[] | undefined;
}

export interface AddressMap {
  readonly title: string;
  readonly space: "memory" | "ports";
  /** First and last-plus-one address shown. */
  readonly from: number;
  readonly to: number;
  readonly windows: readonly MapWindow[];
}

interface Strip {
  readonly from: number;
  readonly to: number;
  readonly free: boolean;
  /** How many windows answer there at once, those that are off or gone not counted. */
  readonly answer: number;
}

/** The space cut at every edge of a window. */
function strips(map: AddressMap, shown: readonly MapWindow[]): Strip[] {
  const inside = (at: number) => Math.min(map.to, Math.max(map.from, at));
  const edges = [...new Set([map.from, map.to, ...shown.flatMap((w) => [inside(w.base), inside(w.base + w.size)])])].sort((a, b) => a - b);
  return edges.slice(1).map((to, i) => {
    const from = itemAt(edges, i);
    const here = shown.filter((w) => w.base < to && w.base + w.size > from);
    return { from, to, free: here.length === 0, answer: mostAtOnce(here) };
  });
}

/** Windows that never answer in one mode do not meet. */
function mostAtOnce(here: readonly MapWindow[]): number {
  const live = here.filter((w) => !w.off && w.change !== "gone" && w.perhaps === undefined);
  const modes = [...new Set(live.flatMap((w) => w.modes ?? []))];
  const always = live.filter((w) => w.modes === undefined).length;
  return Math.max(always, ...modes.map((m) => always + live.filter((w) => w.modes?.includes(m)).length));
}

/** Lane for each window: the first one where it overlaps nothing. */
function lanes(shown: readonly MapWindow[]): number[] {
  const ends: number[] = [];
  return shown.map((w) => {
    const free = ends.findIndex((end) => end <= w.base);
    const lane = free < 0 ? ends.length : free;
    ends[lane] = w.base + w.size;
    return lane;
  });
}

function stripHeight(strip: Strip, smallest: number): number {
  const doublings = Math.log2((strip.to - strip.from) / smallest);
  const least = strip.answer > 1 ? 34 : 22;
  return Math.round(Math.min(strip.free ? 34 : 52, least + Math.max(0, doublings) * 3));
}

function nameOf(w: MapWindow): string {
  const remarks = [
    w.what,
    w.alias ? "echo" : undefined,
    w.perhaps,
    w.off ? "off in this mode" : undefined,
    w.modes && `on in ${w.modes.join(", ") || "no mode"}`,
    w.change,
  ].filter(Boolean);
  return remarks.length === 0 ? w.owner : `${w.owner}: ${remarks.join(", ")}`;
}

/** The lines of a window's label; beside a neighbour the size goes into it. */
function label(w: MapWindow, alone: boolean, wide: number): string[] {
  return wrap(alone ? nameOf(w) : `${nameOf(w)}, ${sizeOf(w.size)}`, wide);
}

export function addressMap(map: AddressMap, prefix: string, pixels = 640): string {
  const width = unitsFor(pixels);
  const digits = Math.max(3, (map.to - 1).toString(16).length);
  const shown = map.windows.filter((w) => w.base < map.to && w.base + w.size > map.from).sort((a, b) => a.base - b.base || b.size - a.size);
  const lane = lanes(shown);
  const laneCount = Math.max(1, ...lane.map((n) => n + 1));
  const rows = strips(map, shown);
  const smallest = Math.min(...rows.map((r) => r.to - r.from));
  const left = 30 + digits * 9;
  const right = width - 64;
  const laneWidth = (right - left) / laneCount;

  // A window that overlaps nothing takes the whole width; one that does leaves the other lanes visible.
  const alone = shown.map((w, i) => !shown.some((o, j) => j !== i && o.base < w.base + w.size && o.base + o.size > w.base));
  const heights = rows.map((r) => stripHeight(r, smallest));
  for (const [i, w] of shown.entries()) {
    const mine = rows.flatMap((r, k) => (r.from < w.base + w.size && r.to > w.base ? [k] : []));
    const wanted = label(w, itemAt(alone, i), (alone[i] ? right - left : laneWidth) - 14).length * 15 + 7;
    const lacks = wanted - mine.reduce((sum, k) => sum + itemAt(heights, k), 0);
    const last = lastOf(mine);
    if (lacks > 0) heights[last] = itemAt(heights, last) + lacks;
  }
  const tops = new Map<number, number>();
  let y = 12;
  for (const [i, strip] of rows.entries()) {
    tops.set(strip.from, y);
    y += itemAt(heights, i);
  }
  tops.set(map.to, y);
  const at = (value: number) => entryOf(tops, Math.min(map.to, Math.max(map.from, value)));

  const addressMark = (value: number): Svg =>
    join([
      line(left - 6, at(value), left, at(value), { "stroke-width": weight.thin }),
      text(left - 10, at(value) + 4, address(value, digits), { mono: true, small: true, anchor: "end" }),
    ]);

  const free = rows
    .filter((r) => r.free)
    .map((r) =>
      join([
        rect(left, at(r.from), right - left, at(r.to) - at(r.from), { "stroke-width": weight.thin, "stroke-dasharray": "2 3", rx: 0 }),
        text(left + 8, (at(r.from) + at(r.to)) / 2 + 4, "free", { small: true, class: "dw-quiet" }),
        text(right + 8, (at(r.from) + at(r.to)) / 2 + 4, sizeOf(r.to - r.from), { mono: true, small: true }),
      ]),
    );

  const windows = shown.map((w, i) => {
    const x = left + itemAt(lane, i) * laneWidth;
    const wide = alone[i] ? right - left : laneWidth;
    const top = at(w.base);
    const tall = at(w.base + w.size) - top;
    const quiet = w.off || w.change === "gone" || w.alias || w.perhaps !== undefined;
    return join([
      rect(x, top, wide, tall, {
        ...(quiet ? {} : tone),
        "stroke-dasharray": quiet ? dashes : undefined,
        "stroke-width": w.change === "new" ? weight.heavy : weight.line,
        class: `dw-window${w.change === undefined ? "" : ` dw-${w.change}`}`,
      }),
      ...label(w, itemAt(alone, i), wide - 14).map((says, k) => text(x + 8, top + 15 + k * 15, says)),
      alone[i] ? text(right + 8, top + 15, sizeOf(w.size), { mono: true, small: true }) : nothing,
    ]);
  });

  const crowded = rows
    .filter((r) => r.answer > 1)
    .map((r) => text(right + 8, at(r.from) + 15, `${r.answer} answer`, { small: true, bold: true, class: "dw-crowded" }));

  const says = [
    `${map.space === "memory" ? "Memory" : "Port"} addresses from ${address(map.from, digits)} to ${address(map.to - 1, digits)}.`,
    ...rows.filter((r) => r.free).map((r) => `Free: ${address(r.from, digits)} to ${address(r.to - 1, digits)}.`),
    ...rows
      .filter((r) => r.answer > 1)
      .map((r) => `${address(r.from, digits)} to ${address(r.to - 1, digits)}: ${r.answer} answer at once.`),
    ...shown.map((w) => `${address(w.base, digits)} to ${address(w.base + w.size - 1, digits)}: ${nameOf(w)}.`),
  ].join(" ");

  return drawing(
    { prefix, title: map.title, says, width, height: y + 14, class: "dw-map" },
    ...free,
    ...windows,
    ...crowded,
    ...[...tops.keys()].map(addressMark),
  );
}
