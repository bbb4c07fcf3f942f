// The mark of a verdict: a plug and a socket; under it, strokes for the evidence it rests on.
// It draws; which verdict something has is planning's business.
import { type Evidence, evidenceWords, type Verdict, verdictWords } from "../words/index.js";
import { el, line, path, rect, type Svg, words } from "./svg.js";

/** "works, seen on a bench": what the mark says, for a screen reader or a legend. A plain no rests on rules: no evidence is named. */
export function markWords(verdict: Verdict, evidence?: Evidence): string {
  const { word } = verdictWords[verdict];
  return evidence === undefined ? word : `${word}, ${evidenceWords[evidence].word}`;
}

// The mark is drawn on a field of 42 x 28 units. At a height of 14 px two units are one pixel, so all edges of
// the plug and the socket lie on even numbers and stay sharp.
const solid = { fill: "currentColor", stroke: "none", rx: 0 } as const;

/** Plug in socket: one bar with a seam, leads at both ends. */
function mated(): Svg {
  return el("g", {}, lead(0, 8), rect(8, 8, 12, 12, solid), rect(20, 10, 2, 8, solid), rect(22, 8, 12, 12, solid), lead(34, 42));
}

const flag = path("M20 8V0L31 3.2L22 6.4V8Z", { fill: "currentColor", stroke: "none", class: "vm-flag" });

/** Pulled: the prongs are bare and point at nothing. */
function apart(): Svg {
  const prongs = [rect(10, 10, 6, 2, solid), rect(10, 16, 6, 2, solid)];
  return el("g", {}, lead(0, 2), rect(2, 8, 8, 12, solid), ...prongs, rect(30, 8, 10, 12, solid), lead(40, 42));
}

/** Half out, and only an outline: nobody has seen it go in. */
function halfApart(): Svg {
  const dashed = { "stroke-width": 2, "stroke-dasharray": "3 2", rx: 0 };
  return el("g", {}, rect(5, 7, 12, 12, dashed), rect(25, 7, 12, 12, dashed));
}

function lead(from: number, to: number): Svg {
  return rect(from, 12, to - from, 4, solid);
}

const drawings: Readonly<Record<Verdict, () => Svg>> = {
  workable: mated,
  conditional: () => el("g", {}, mated(), flag),
  "ruled-out": apart,
  unknown: halfApart,
};

function strokes(evidence: Evidence): readonly Svg[] {
  const stroke = (y: number, dash?: string) => line(8, y, 34, y, { "stroke-width": 2, "stroke-dasharray": dash });
  switch (evidence) {
    case "bench":
      return [stroke(23), stroke(27)];
    case "documented":
      return [stroke(23)];
    case "reported":
      return [stroke(23, "6 4")];
    case "inferred":
      return [];
    default:
      return evidence satisfies never;
  }
}

export interface MarkOptions {
  /** The word stands right beside the mark: the drawing is hidden from screen readers. */
  readonly decorative?: boolean;
}

/** The mark as inline SVG, `height` pixels high and half as much again wide. */
export function verdictMark(verdict: Verdict, evidence?: Evidence, height = 21, options: MarkOptions = {}): string {
  const says = markWords(verdict, evidence);
  return el(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      class: `vm vm-${verdict}${evidence === undefined ? "" : ` vm-${evidence}`}`,
      viewBox: "0 0 42 28",
      width: height * 1.5,
      height,
      role: options.decorative ? undefined : "img",
      "aria-label": options.decorative ? undefined : says,
      "aria-hidden": options.decorative ? "true" : undefined,
      focusable: "false",
    },
    options.decorative ? ("" as Svg) : words("title", says),
    drawings[verdict](),
    ...(evidence === undefined ? [] : strokes(evidence)),
  );
}
