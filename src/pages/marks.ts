// Our drawings as pages use them: the mark of a verdict, and a drawing in two widths, one for a phone and one for a desk.
import { verdictMark } from "../drawing/index.js";
import type { MarkView } from "./common.js";

/** A drawing in a width for a phone and in one for a wider page; the style sheet shows one of them. */
export interface Figure {
  readonly narrow: string;
  readonly wide: string;
}

export function figure(draw: (prefix: string, width: number) => string, prefix: string): Figure {
  return { narrow: draw(`${prefix}-n`, 330), wide: draw(`${prefix}-w`, 640) };
}

/** A drawing that is the same on a phone and on a desk: it is set once. */
export function oneFigure(draw: (prefix: string, width: number) => string, prefix: string): Figure {
  const drawn = draw(prefix, 330);
  return { narrow: drawn, wide: drawn };
}

/** A plain "no" rests on rules and records named beside it, so no strokes stand under it. */
export function markSvg(mark: MarkView, decorative: boolean): string {
  const evidence = mark.verdict === "ruled-out" ? undefined : mark.evidence;
  return verdictMark(mark.verdict, evidence, 20, { decorative });
}
