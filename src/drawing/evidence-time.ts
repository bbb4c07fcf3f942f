// Tests over the years: one mark a tested build on a line of time. The list of them stands on the page; each mark carries its line as a title.
import { entryOf, must } from "../records/index.js";
import { circle, drawing, group, join, line, path, type Svg, text, unitsFor, weight, words } from "./svg.js";

export interface EvidenceEvent {
  /** YYYY, YYYY-MM or YYYY-MM-DD. */
  readonly date: string;
  readonly outcome: "worked" | "partly" | "failed";
  readonly label: string;
}

const laneWord = { worked: "worked", partly: "in part", failed: "failed" } as const;
const left = 70;

/** Years since the year 0, as exact as the date is; a bare year stands at its middle. */
function years(date: string): number {
  const [y, m, d] = date.split("-").map(Number);
  if (m === undefined) return must(y, "y") + 0.5;
  return must(y, "y") + (m - 1) / 12 + ((d ?? 15) - 1) / 372;
}

function mark(outcome: EvidenceEvent["outcome"], x: number, y: number): Svg {
  switch (outcome) {
    case "worked":
      return circle(x, y, 5, { fill: "currentColor", stroke: "none" });
    case "partly":
      return join([circle(x, y, 5), path(`M${x} ${y - 5}a5 5 0 0 0 0 10Z`, { fill: "currentColor", stroke: "none" })]);
    case "failed":
      return path(`M${x - 4} ${y - 4}l8 8M${x + 4} ${y - 4}l-8 8`, { "stroke-width": weight.heavy });
    default:
      return outcome satisfies never;
  }
}

export function evidenceTime(events: readonly EvidenceEvent[], prefix: string, pixels = 640): string {
  const width = unitsFor(pixels);
  const sorted = [...events].sort((a, b) => years(a.date) - years(b.date));
  const from = Math.floor(Math.min(...sorted.map((e) => years(e.date)), Number.POSITIVE_INFINITY));
  const to = Math.max(from + 1, Math.ceil(Math.max(...sorted.map((e) => years(e.date)), Number.NEGATIVE_INFINITY)));
  if (sorted.length === 0)
    return drawing(
      { prefix, title: "Tests over the years", says: "Nobody has tested it yet.", width, height: 28 },
      text(4, 18, "Nobody has tested it yet."),
    );
  const x = (date: string) => left + ((years(date) - from) / (to - from)) * (width - left - 24);
  // Marks that would touch are set above one another.
  const placed: { event: EvidenceEvent; x: number; level: number }[] = [];
  for (const event of sorted) {
    const at = x(event.date);
    const taken = placed.filter((p) => p.event.outcome === event.outcome && Math.abs(p.x - at) < 13).map((p) => p.level);
    let level = 0;
    while (taken.includes(level)) level++;
    placed.push({ event, x: at, level });
  }
  const levels = (outcome: EvidenceEvent["outcome"]) =>
    1 + Math.max(0, ...placed.filter((p) => p.event.outcome === outcome).map((p) => p.level));
  const used = (["worked", "partly", "failed"] as const).filter((o) => sorted.some((e) => e.outcome === o));
  const base = new Map<string, number>();
  let y = 8;
  for (const outcome of used) {
    y += levels(outcome) * 13 + 10;
    base.set(outcome, y - 10);
  }
  const axis = y + 4;
  const every = Math.ceil((to - from) / Math.floor((width - left - 24) / 44));
  const ticks = Array.from({ length: Math.floor((to - from) / every) + 1 }, (_, i) => from + i * every);
  const height = axis + 28;
  const says = sorted.map((e) => `${e.date}: ${e.label}, ${laneWord[e.outcome]}.`).join(" ");

  return drawing(
    { prefix, title: "Tests over the years", says, width, height, class: "dw-evidence" },
    ...used.map((o) => text(left - 10, entryOf(base, o) + 4, laneWord[o], { small: true, anchor: "end" })),
    line(left, axis, width - 24, axis, { "stroke-width": weight.thin }),
    ...ticks.map((year) => {
      const at = x(`${year}-01-01`);
      return join([
        line(at, axis, at, axis + 5, { "stroke-width": weight.thin }),
        text(at, axis + 18, String(year), { mono: true, small: true, anchor: "middle" }),
      ]);
    }),
    ...placed.map((p) => {
      const at = entryOf(base, p.event.outcome) - p.level * 13;
      return group({}, words("title", `${p.event.date}: ${p.event.label}, ${laneWord[p.event.outcome]}`), mark(p.event.outcome, p.x, at));
    }),
  );
}
