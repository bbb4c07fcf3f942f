// The pencil case: SVG as escaped strings, one set of line weights and text sizes for every drawing.
// It knows nothing of computers. Attributes carry the plain black-on-paper look; classes let a page add to it.
import { lastOf } from "../records/index.js";

/** A piece of finished SVG markup. Only the functions of this file make one, so text is always escaped. */
export type Svg = string & { readonly svg: unique symbol };

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Line weights, in drawing units. */
export const weight = { thin: 0.75, line: 1.25, heavy: 2.5 } as const;
/** Text sizes, in the same units. */
export const size = { text: 13, small: 11 } as const;
/**
 * Size of a unit on the page, in CSS pixels: text of 13 units is read at 15 pixels. Everything grows together,
 * so weights and sizes keep their proportions.
 */
const unit = 1.15;

/** How many units there are room for in a width given in CSS pixels. */
export function unitsFor(pixels: number): number {
  return pixels / unit;
}

/** Corner radius of everything that has corners to round. */
export const corner = 2;

const faces = {
  text: "system-ui, sans-serif",
  mono: "ui-monospace, 'DejaVu Sans Mono', monospace",
} as const;

export function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`);
}

/** Three decimals: a thousandth of a millimetre on the panel; more only makes the file longer. */
export function round(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

export function el(name: string, attributes: Attributes = {}, ...children: readonly Svg[]): Svg {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === "number" ? round(value) : escaped(value as string)}"`)
    .join("");
  const inside = children.join("");
  return (inside === "" ? `<${name}${written}/>` : `<${name}${written}>${inside}</${name}>`) as Svg;
}

export function group(attributes: Attributes, ...children: readonly Svg[]): Svg {
  return el("g", attributes, ...children);
}

export function join(parts: readonly Svg[]): Svg {
  return parts.join("") as Svg;
}

export const nothing = "" as Svg;

/** An element that holds plain text only: title, desc, tspan. */
export function words(name: string, text: string, attributes: Attributes = {}): Svg {
  return el(name, attributes, escaped(text) as Svg);
}

export interface TextStyle {
  readonly anchor?: "start" | "middle" | "end";
  readonly mono?: boolean;
  readonly small?: boolean;
  readonly bold?: boolean;
  readonly class?: string;
}

/** One line of text; `y` is the base line. Identifiers a person reads off a board are set in the monospace face. */
export function text(x: number, y: number, says: string, style: TextStyle = {}): Svg {
  const classes = ["dw-text", style.mono ? "dw-mono" : undefined, style.class].filter(Boolean).join(" ");
  return words("text", says, {
    x,
    y,
    class: classes,
    fill: "currentColor",
    stroke: "none",
    "font-family": style.mono ? faces.mono : faces.text,
    "font-size": style.small ? size.small : size.text,
    "font-weight": style.bold ? 600 : undefined,
    "text-anchor": style.anchor === undefined || style.anchor === "start" ? undefined : style.anchor,
  });
}

/** Width a line of text needs at most. Without a browser to measure, it errs to the wide side. */
export function widthOf(says: string, style: TextStyle = {}): number {
  const em = style.small ? size.small : size.text;
  if (style.mono) return [...says].length * em * 0.62;
  let units = 0;
  for (const c of says) units += /[iljtfr.,:;'|!()[\] -]/.test(c) ? 0.4 : /[mwMW@%]/.test(c) ? 1 : /[A-Z0-9]/.test(c) ? 0.7 : 0.62;
  return units * em * (style.bold ? 1.12 : 1);
}

/** The text, or as much of it as fits with an ellipsis. Callers keep the whole of it in a title or a legend. */
export function shorten(says: string, width: number, style: TextStyle = {}): string {
  if (widthOf(says, style) <= width) return says;
  let cut = [...says];
  while (cut.length > 1 && widthOf(`${cut.join("").trimEnd()}…`, style) > width) cut = cut.slice(0, -1);
  return `${cut.join("").trimEnd()}…`;
}

/** A word too long for a line, broken after its hyphens, and where that is not enough between any two letters. */
function pieces(word: string, width: number, style: TextStyle): string[] {
  if (widthOf(word, style) <= width) return [word];
  const parts: string[] = [];
  for (const part of word.split(/(?<=-)/)) {
    const last = parts.at(-1);
    if (last !== undefined && widthOf(last + part, style) <= width) parts[parts.length - 1] = last + part;
    else parts.push(part);
  }
  return parts.flatMap((part) => {
    const cut: string[] = [""];
    for (const c of part) {
      if (cut.at(-1) !== "" && widthOf(cut.at(-1) + c, style) > width) cut.push("");
      cut[cut.length - 1] += c;
    }
    return cut;
  });
}

/** The text broken at plain spaces into lines that fit; a thin space holds number and unit together. Nothing is lost. */
export function wrap(says: string, width: number, style: TextStyle = {}): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of says.split(/[ \n]+/)) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (widthOf(longer, style) <= width) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    const parts = pieces(word, width, style);
    lines.push(...parts.slice(0, -1));
    line = lastOf(parts);
  }
  if (line !== "") lines.push(line);
  return lines;
}

export function line(x1: number, y1: number, x2: number, y2: number, more: Attributes = {}): Svg {
  return el("line", { x1, y1, x2, y2, stroke: "currentColor", "stroke-width": weight.line, ...more });
}

export function rect(x: number, y: number, width: number, height: number, more: Attributes = {}): Svg {
  const attributes = { fill: "none", stroke: "currentColor", "stroke-width": weight.line, rx: corner, ...more };
  return el("rect", { x, y, width: Math.max(0, width), height: Math.max(0, height), ...attributes });
}

export function circle(cx: number, cy: number, r: number, more: Attributes = {}): Svg {
  return el("circle", { cx, cy, r, fill: "none", stroke: "currentColor", "stroke-width": weight.line, ...more });
}

export function path(d: string, more: Attributes = {}): Svg {
  return el("path", { d, fill: "none", stroke: "currentColor", "stroke-width": weight.line, ...more });
}

/** Light tone for a filled area; it prints as a light grey and never hides text. */
export const tone = { fill: "currentColor", "fill-opacity": 0.1 } as const;
export const dashes = "5 3";

export interface DrawingHead {
  /** Own prefix for ids: two drawings on one page must not share one. */
  readonly prefix: string;
  readonly title: string;
  /** What the drawing shows, in sentences, for somebody who cannot see it. */
  readonly says: string;
  readonly width: number;
  readonly height: number;
  readonly class?: string;
}

/** A whole drawing, ready to stand inline in a page. */
export function drawing(head: DrawingHead, ...children: readonly Svg[]): string {
  const { prefix, title, says, width, height } = head;
  return el(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      class: ["dw", head.class].filter(Boolean).join(" "),
      role: "img",
      "aria-labelledby": `${prefix}-title ${prefix}-desc`,
      viewBox: `0 0 ${round(width)} ${round(height)}`,
      width: width * unit,
      height: height * unit,
    },
    words("title", title, { id: `${prefix}-title` }),
    words("desc", says, { id: `${prefix}-desc` }),
    ...children,
  );
}
