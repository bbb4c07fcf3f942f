// Place: where a value stands in its file. The only code that turns an offset into line and column.
// The parser's own line counter does the counting; the file is parsed again only when a place is asked for.
import { type Document, isMap, isPair, isScalar, isSeq, LineCounter, type Node, type Pair, parseDocument } from "yaml";
import type { Place } from "./finding.js";
import { steps } from "./pointer.js";

export interface Spot {
  /** Point at the key instead of its value. */
  readonly on?: "key" | "value" | undefined;
  /** The key itself, when the parser refused the file before a pointer could reach it. */
  readonly offset?: readonly [number, number];
}

export type Locator = (pointer: string, spot?: Spot) => Place;

/** Finds places in one file; parses it at the first question. */
export function locator(file: string, text: string): Locator {
  let parsed: { doc: Document.Parsed; lines: LineCounter } | undefined;
  return (pointer, spot = {}) => {
    if (!parsed) {
      const lines = new LineCounter();
      parsed = { doc: parseDocument(text, { lineCounter: lines, logLevel: "silent", prettyErrors: false }), lines };
    }
    const [start, end] = spot.offset ?? rangeOf(parsed.doc, steps(pointer), spot.on ?? "value");
    const { line, col } = parsed.lines.linePos(start);
    const shown = lineAt(text, parsed.lines.lineStarts[line - 1] ?? 0);
    const room = Math.max(1, shown.length - (col - 1));
    return {
      file,
      pointer,
      line: Math.max(line, 1),
      column: Math.max(col, 1),
      text: shown,
      span: Math.max(1, Math.min(end - start, room)),
    };
  };
}

/** The place of one value. Ask `locator` instead when a file has several. */
export function place(file: string, text: string, pointer: string, spot?: Spot): Place {
  return locator(file, text)(pointer, spot);
}

function lineAt(text: string, start: number): string {
  const end = text.indexOf("\n", start);
  return text.slice(start, end < 0 ? undefined : end).replace(/\r$/, "");
}

/** Offsets of what a pointer names; of the nearest thing around it when that does not exist. */
function rangeOf(doc: Document.Parsed, path: readonly string[], on: "key" | "value"): readonly [number, number] {
  let node: unknown = doc.contents;
  let pair: Pair | undefined;
  for (const s of path) {
    if (isMap(node)) {
      const next = node.items.find((p) => isPair(p) && String(isScalar(p.key) ? p.key.value : p.key) === s);
      if (!next) break;
      pair = next as Pair;
      node = next.value;
    } else if (isSeq(node)) {
      const next = node.items[Number(s)];
      if (next === undefined) break;
      pair = undefined;
      node = next;
    } else break;
  }
  const key = (pair?.key as Node | null | undefined)?.range;
  const value = (node as Node | null | undefined)?.range;
  const plain = isScalar(node) && value && value[1] > value[0];
  // A whole block is better shown by its key than by its first line.
  if (key && (on === "key" || !plain)) return [key[0], key[1]];
  if (!value) return key ? [key[0], key[1]] : [0, 1];
  if (plain) return [value[0], value[1]];
  const first = firstScalar(node);
  return first ?? [value[0], value[0] + 1];
}

function firstScalar(node: unknown): readonly [number, number] | undefined {
  if (isMap(node)) return firstScalar(node.items[0]?.key);
  if (isSeq(node)) return firstScalar(node.items[0]);
  const range = (node as Node | null | undefined)?.range;
  return range ? [range[0], range[1]] : undefined;
}
