// What works with which release: one row a thing, bars over the line of releases in their declared order.
// A run of releases with the same verdict is one bar; where nothing is known the bar is an empty dashed frame.
import { itemAt } from "../records/index.js";
import { type Verdict, verdictWords } from "../words/index.js";
import {
  dashes,
  drawing,
  group,
  join,
  line,
  nothing,
  path,
  rect,
  round,
  type Svg,
  shorten,
  text,
  tone,
  unitsFor,
  weight,
  widthOf,
  wrap,
} from "./svg.js";

export interface FirmwareRow {
  readonly name: string;
  /** One for each release, in the order of `releases`. */
  readonly verdicts: readonly Verdict[];
}

export interface FirmwareBars {
  readonly family: string;
  readonly releases: readonly { readonly id: string; readonly date?: string | undefined }[];
  readonly rows: readonly FirmwareRow[];
}

interface Run {
  readonly verdict: Verdict;
  readonly from: number;
  readonly to: number;
}

export function runsOf(verdicts: readonly Verdict[]): Run[] {
  const runs: Run[] = [];
  for (const [i, verdict] of verdicts.entries()) {
    const last = runs.at(-1);
    if (last?.verdict === verdict) runs[runs.length - 1] = { ...last, to: i };
    else runs.push({ verdict, from: i, to: i });
  }
  return runs;
}

/** One bar, `middle` its middle line. */
export function look(verdict: Verdict, from: number, middle: number, wide: number, tall: number): Svg {
  const top = middle - tall / 2;
  switch (verdict) {
    case "workable":
      return rect(from, top, wide, tall, { fill: "currentColor", "fill-opacity": 0.55, class: "dw-works" });
    case "conditional":
      return join([
        rect(from, top, wide, tall, { ...tone, class: "dw-if" }),
        path(`M${from + 5} ${middle + 4.5}v-9l7 2.7l-7 2.7`, { fill: "currentColor" }),
      ]);
    case "unknown":
      return rect(from, top, wide, tall, { "stroke-dasharray": dashes, class: "dw-unknown" });
    case "ruled-out":
      return line(from, middle, from + wide, middle, { "stroke-width": weight.thin, class: "dw-no" });
    default:
      return verdict satisfies never;
  }
}

export function firmwareBars(bars: FirmwareBars, prefix: string, pixels = 640): string {
  const width = unitsFor(pixels);
  // On a narrow page the name stands above its bar, not beside it.
  const narrow = width < 480;
  const left = narrow ? 4 : 190;
  const row = narrow ? 44 : 30;
  const count = Math.max(1, bars.releases.length);
  const step = (width - left - 8) / count;
  const labels = bars.releases.map((r) => r.id);
  const upright = labels.some((l) => widthOf(l, { mono: true, small: true }) > step - 6);
  const top = upright ? 16 + Math.max(...labels.map((l) => widthOf(l, { mono: true, small: true }))) : 30;
  const x = (i: number) => left + i * step;
  const y = (i: number) => top + i * row;
  const rule = (i: number) =>
    narrow
      ? join(bars.rows.map((_, k) => line(x(i), y(k) + 20, x(i), y(k) + row - 4, { "stroke-width": weight.thin, "stroke-opacity": 0.3 })))
      : line(x(i), top, x(i), bottom - 8, { "stroke-width": weight.thin, "stroke-opacity": 0.3 });
  const bottom = top + bars.rows.length * row + 8;

  // Where even upright names would touch, only every second or third is written; the description names them all.
  const nth = Math.max(1, Math.ceil(13 / step));
  const heads = bars.releases.map((r, i) => {
    if (upright && i % nth !== 0) return nothing;
    const middle = x(i) + step / 2;
    const label = text(upright ? 0 : middle, upright ? 0 : top - 10, r.id, {
      mono: true,
      small: true,
      anchor: upright ? "start" : "middle",
    });
    return upright ? group({ transform: `translate(${round(middle + 4)} ${round(top - 8)}) rotate(-90)` }, label) : label;
  });

  /** Beside the bar: in one line, or in two small ones. */
  const name = (says: string, middle: number): Svg => {
    if (widthOf(says) <= left - 14) return text(left - 10, middle + 4, says, { anchor: "end" });
    const style = { small: true, anchor: "end" } as const;
    const lines = wrap(says, left - 14, style);
    const shown = lines.length <= 2 ? lines : [itemAt(lines, 0), shorten(lines.slice(1).join(" "), left - 14, style)];
    return join(shown.map((l, k) => text(left - 10, middle + (shown.length === 1 ? 4 : k * 12 - 2), l, style)));
  };

  const bar = (run: Run, i: number): Svg => look(run.verdict, x(run.from) + 1, y(i) + row - 15, (run.to - run.from + 1) * step - 2, 16);

  // What the four kinds of bar mean, under them, in as many lines as it takes.
  const kinds = ["workable", "conditional", "unknown", "ruled-out"] as const;
  const legend: Svg[] = [];
  let at = 4;
  let legendY = bottom + 8;
  for (const kind of kinds) {
    const needs = 32 + widthOf(verdictWords[kind].word, { small: true });
    if (at + needs > width) {
      at = 4;
      legendY += 18;
    }
    legend.push(look(kind, at, legendY, 26, 12), text(at + 32, legendY + 4, verdictWords[kind].word, { small: true }));
    at += needs + 12;
  }
  const height = legendY + 14;

  const said = (r: FirmwareRow) =>
    runsOf(r.verdicts)
      .map((run) => {
        const [from, to] = [labels[run.from], labels[run.to]];
        return `${from === to ? from : `${from} to ${to}`} ${verdictWords[run.verdict].word}`;
      })
      .join(", ");
  const says = `Releases of ${bars.family}, oldest first: ${labels.join(", ")}. ${bars.rows.map((r) => `${r.name}: ${said(r)}.`).join(" ")}`;

  return drawing(
    { prefix, title: `${bars.family}: what works with which release`, says, width, height, class: "dw-firmware" },
    ...heads,
    ...bars.releases.map((_, i) => (i === 0 ? nothing : rule(i))),
    line(left, top - 2, width - 8, top - 2, { "stroke-width": weight.thin }),
    ...bars.rows.flatMap((r, i) => [
      narrow ? text(left, y(i) + 16, shorten(r.name, width - 8)) : name(r.name, y(i) + row / 2),
      ...runsOf(r.verdicts).map((run) => bar(run, i)),
    ]),
    ...legend,
  );
}
