// The panel drawn at exactly 1:1, to be printed, checked with the ruler under it, glued on and drilled through.
// Its units are millimetres; the sheet must be printed without scaling.

import { type Cut, labelSize, type Panel } from "./panel.js";
import { circle, el, join, line, nothing, rect, round, type Svg, words } from "./svg.js";

const margin = 6;
const rulerHeight = 26;
const stroke = 0.25;

function mmText(x: number, y: number, says: string, anchor: "start" | "middle" | "end" = "middle", mono = false): Svg {
  return words("text", says, {
    x,
    y,
    class: mono ? "dw-text dw-mono" : "dw-text",
    fill: "currentColor",
    stroke: "none",
    "font-size": labelSize,
    "font-family": mono ? "ui-monospace, 'DejaVu Sans Mono', monospace" : "system-ui, sans-serif",
    "text-anchor": anchor === "start" ? undefined : anchor,
  });
}

function cross(x: number, y: number, wide: number, tall: number): Svg {
  const thin = { "stroke-width": 0.15 };
  return join([line(x - wide, y, x + wide, y, thin), line(x, y - tall, x, y + tall, thin)]);
}

function cutWords(cut: Cut): string {
  return cut.kind === "circle" ? `⌀ ${cut.diameter}` : `${cut.width} × ${cut.height}`;
}

/** A ruler of 100 mm (less on a narrow panel) with a stroke every millimetre. */
function ruler(x: number, y: number, length: number): Svg {
  const strokes = Array.from({ length: length + 1 }, (_, mm) => {
    const tall = mm % 10 === 0 ? 5 : mm % 5 === 0 ? 3.5 : 2;
    return join([
      line(x + mm, y, x + mm, y + tall, { "stroke-width": 0.15 }),
      mm % 10 === 0 ? mmText(x + mm, y + 8.5, String(mm), "middle", true) : nothing,
    ]);
  });
  return join([line(x, y, x + length, y, { "stroke-width": 0.15 }), ...strokes]);
}

export function panelTemplate(panel: Extract<Panel, { kind: "panel" }>, prefix: string): string {
  const length = panel.width >= 100 ? 100 : 50;
  const width = Math.max(panel.width, length, 90) + 2 * margin;
  const height = panel.height + 2 * margin + rulerHeight + 6;
  const x = (mm: number) => margin + mm;
  const y = (mm: number) => margin + panel.height - mm;
  const cuts = panel.cuts.map((cut) => {
    const plain = { "stroke-width": stroke, class: "dw-cut" };
    const [wide, tall] = cut.kind === "circle" ? [cut.diameter, cut.diameter] : [cut.width, cut.height];
    return join([
      cut.kind === "circle"
        ? circle(x(cut.x), y(cut.y), cut.diameter / 2, plain)
        : rect(x(cut.x - cut.width / 2), y(cut.y + cut.height / 2), cut.width, cut.height, { ...plain, rx: 0.8 }),
      cross(x(cut.x), y(cut.y), wide / 2 + 1, tall / 2 + 1),
    ]);
  });
  const table = panel.cuts.map((cut) => `${cut.item} ${cutWords(cut)} at ${round(cut.x)}, ${round(cut.y)}`);
  const says = `Seen from the front, ${panel.width} by ${panel.height} mm. Holes, middle from the lower left corner in mm: ${table.join("; ")}. Least metal between holes ${round(panel.leastWeb)} mm.`;
  return el(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      class: "dw dw-panel",
      role: "img",
      "aria-labelledby": `${prefix}-title ${prefix}-desc`,
      width: `${width}mm`,
      height: `${height}mm`,
      viewBox: `0 0 ${width} ${height}`,
    },
    words("title", "Panel template, full size", { id: `${prefix}-title` }),
    words("desc", says, { id: `${prefix}-desc` }),
    rect(margin, margin, panel.width, panel.height, { "stroke-width": stroke, rx: 0 }),
    ...cuts,
    ...panel.labels.map((l) => mmText(x(l.x), y(l.y), l.says, l.anchor)),
    ruler(margin, margin + panel.height + 6, length),
    mmText(margin, margin + panel.height + 20, "Seen from the front. Print at 100 %, then", "start"),
    mmText(margin, margin + panel.height + 24, `check the ruler: its ${length} mm must be ${length} mm.`, "start"),
    mmText(margin, margin + panel.height + 28, "Measure switch and connectors before drilling.", "start"),
  );
}
