// The panel: where the holes for switch and connectors lie, with enough metal between them. All in millimetres,
// from the panel's lower left corner, y upwards, seen from the front.

import { lastOf } from "../records/index.js";
import type { PanelPart } from "../wiring/index.js";

/** What is to be fixed in the panel. A hole nobody has measured leaves no template. */
export type PanelItem = PanelPart;

export interface PanelOptions {
  /** Least metal between two holes, and between a hole and the edge. */
  readonly web_mm?: number;
  /** Degrees between two positions of a rotary switch. */
  readonly step_deg?: number;
}

export type Cut =
  | { readonly kind: "circle"; readonly x: number; readonly y: number; readonly diameter: number; readonly item: string }
  | {
      readonly kind: "rect";
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly item: string;
    };

export interface PanelLabel {
  readonly x: number;
  readonly y: number;
  readonly says: string;
  readonly anchor: "start" | "middle" | "end";
}

export type Panel =
  | {
      readonly kind: "panel";
      readonly width: number;
      readonly height: number;
      readonly web: number;
      readonly cuts: readonly Cut[];
      readonly labels: readonly PanelLabel[];
      /** Least metal found between two cuts, or a cut and the edge. */
      readonly leastWeb: number;
    }
  | { readonly kind: "refused"; readonly problems: readonly string[] };

export const labelSize = 3;
/** What A4 and Letter hold beside margins and the sheet's own border. */
const mostWide = 170;
/** Common practice for stepping of rotary switches with twelve places. */
const usualStep = 30;

function labelWidth(says: string): number {
  return says.length * labelSize * 0.64;
}

function cutsOf(item: PanelItem, x: number, y: number): Cut[] {
  const cuts: Cut[] = [];
  if (item.hole.kind === "round") cuts.push({ kind: "circle", x, y, diameter: item.hole.diameter, item: item.id });
  if (item.hole.kind === "cut-out") cuts.push({ kind: "rect", x, y, width: item.hole.width, height: item.hole.height, item: item.id });
  if (item.screws)
    for (const side of [-1, 1])
      cuts.push({ kind: "circle", x: x + (side * item.screws.apart) / 2, y, diameter: item.screws.diameter, item: item.id });
  return cuts;
}

/** Half the width and half the height of everything the item needs, labels included. */
function reachOf(item: PanelItem, options: PanelOptions): { readonly x: number; readonly up: number; readonly down: number } {
  const cuts = cutsOf(item, 0, 0);
  const labels = labelsOf(item, 0, 0, options);
  const xs = [
    ...cuts.map((c) => Math.abs(c.x) + (c.kind === "circle" ? c.diameter : c.width) / 2),
    (item.body?.width ?? 0) / 2,
    ...labels.map((l) => Math.abs(l.x) + labelWidth(l.says) * (l.anchor === "middle" ? 0.5 : 1)),
  ];
  const tall = Math.max(...cuts.map((c) => (c.kind === "circle" ? c.diameter : c.height) / 2), (item.body?.height ?? 0) / 2);
  return {
    x: Math.max(...xs),
    up: Math.max(tall, ...labels.map((l) => l.y + labelSize)),
    down: Math.max(tall, ...labels.map((l) => -l.y + 1)),
  };
}

function labelsOf(item: PanelItem, x: number, y: number, options: PanelOptions): PanelLabel[] {
  const radius = item.hole.kind === "round" ? item.hole.diameter / 2 : item.hole.kind === "cut-out" ? item.hole.height / 2 : 0;
  const size =
    item.hole.kind === "round"
      ? ` ${item.hole.diameter} mm`
      : item.hole.kind === "cut-out"
        ? ` ${item.hole.width} x ${item.hole.height} mm`
        : "";
  const under = (gap: number): PanelLabel => ({ x, y: y - gap - labelSize, says: `${item.id}${size}`, anchor: "middle" });
  const below = under(Math.max(radius, (item.screws?.diameter ?? 0) / 2) + 3);
  const positions = item.positions ?? [];
  if (positions.length === 0) return [below];
  if (item.form === "rotary") {
    // Clockwise from the left, the middle of the arc at the top; outside the usual knob.
    const step = Math.min(options.step_deg ?? usualStep, 360 / positions.length);
    const out = Math.max(radius + 8, 13);
    return [
      below,
      ...positions.map((says, i): PanelLabel => {
        const angle = ((i - (positions.length - 1) / 2) * step * Math.PI) / 180;
        const anchor = Math.abs(angle) < 0.15 ? "middle" : angle < 0 ? "end" : "start";
        return { x: x + Math.sin(angle) * out, y: y + Math.cos(angle) * out - (anchor === "middle" ? 0 : labelSize / 2), says, anchor };
      }),
    ];
  }
  // A lever: first position above, last below, the others beside it.
  const gap = radius + 4;
  const beside = positions.map((says, i): PanelLabel => {
    if (i === 0) return { x, y: y + gap, says, anchor: "middle" };
    if (i === positions.length - 1) return { x, y: y - gap - labelSize, says, anchor: "middle" };
    const row = (positions.length - 1) / 2 - i;
    return { x: x + gap, y: y - labelSize / 2 + row * (labelSize + 1), says, anchor: "start" };
  });
  return [...beside, under(gap + labelSize + 2)];
}

/** Metal between two cuts: along the line of centres for circles, along the axes for anything with corners. */
export function webBetween(a: Cut, b: Cut): number {
  if (a.kind === "circle" && b.kind === "circle") return Math.hypot(a.x - b.x, a.y - b.y) - (a.diameter + b.diameter) / 2;
  const half = (c: Cut) => (c.kind === "circle" ? [c.diameter / 2, c.diameter / 2] : [c.width / 2, c.height / 2]) as [number, number];
  const [ax, ay] = half(a);
  const [bx, by] = half(b);
  const dx = Math.abs(a.x - b.x) - ax - bx;
  const dy = Math.abs(a.y - b.y) - ay - by;
  if (dx > 0 && dy > 0) return Math.hypot(dx, dy);
  return Math.max(dx, dy);
}

function webToEdge(c: Cut, width: number, height: number): number {
  const [hx, hy] = c.kind === "circle" ? [c.diameter / 2, c.diameter / 2] : [c.width / 2, c.height / 2];
  return Math.min(c.x - hx, width - c.x - hx, c.y - hy, height - c.y - hy);
}

/** Items in rows from left to right, each row on one middle line; a second row begins where a sheet of paper would end. */
export function layOutPanel(items: readonly PanelItem[], options: PanelOptions = {}): Panel {
  const web = options.web_mm ?? 5;
  const problems: string[] = [];
  if (items.length === 0) problems.push("Nothing is to be fixed in the panel.");
  for (const item of items) {
    if (item.hole.kind === "unknown")
      problems.push(`The hole for ${item.name} (${item.id}) is not known. ${item.hole.find ?? "Measure the part."}`);
    if (item.hole.kind === "round" && item.hole.diameter <= 0) problems.push(`${item.name} (${item.id}) is not made for a panel.`);
  }
  if (problems.length > 0) return { kind: "refused", problems };
  const rows: { item: PanelItem; reach: ReturnType<typeof reachOf> }[][] = [[]];
  let used = web;
  for (const item of items) {
    const reach = reachOf(item, options);
    const needs = 2 * reach.x + web;
    if (used + needs > mostWide && lastOf(rows).length > 0) {
      rows.push([]);
      used = web;
    }
    lastOf(rows).push({ item, reach });
    used += needs;
  }
  const cuts: Cut[] = [];
  const labels: PanelLabel[] = [];
  let width = 0;
  let bottom = web;
  // The last row lies lowest: y grows upwards.
  for (const row of [...rows].reverse()) {
    const y = bottom + Math.max(...row.map(({ reach }) => reach.down));
    let x = web;
    for (const { item, reach } of row) {
      x += reach.x;
      cuts.push(...cutsOf(item, x, y));
      labels.push(...labelsOf(item, x, y, options));
      x += reach.x + web;
    }
    width = Math.max(width, Math.ceil(x));
    bottom = y + Math.max(...row.map(({ reach }) => reach.up)) + web;
  }
  const height = Math.ceil(bottom);
  const webs = cuts.flatMap((a, i) => [
    webToEdge(a, width, height),
    ...cuts
      .slice(i + 1)
      .filter((b) => b.item !== a.item)
      .map((b) => webBetween(a, b)),
  ]);
  return { kind: "panel", width, height, web, cuts, labels, leastWeb: Math.min(...webs) };
}
