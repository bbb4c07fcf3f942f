// A pointer to a fact in a record, and its place in the file it was read from.
import { type Kind, type Locator, locator, type Place, type Spot } from "../records/index.js";
import type { Catalogue } from "./catalogue.js";

export interface Ref {
  readonly kind: Kind;
  readonly id: string;
  /** JSON pointer into the record; "" is the record itself. */
  readonly pointer: string;
}

export function ref(kind: Kind, id: string, ...path: readonly (string | number)[]): Ref {
  return { kind, id, pointer: path.map((p) => `/${String(p).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("") };
}

const locators = new WeakMap<Catalogue, Map<string, Locator>>();

/** Where a fact stands. Files are parsed again only when something in them is asked for. */
export function placeOf(catalogue: Catalogue, at: Ref, spot?: Spot): Place {
  const file = catalogue.files.get(`${at.kind}/${at.id}`) ?? `${at.kind}/${at.id}`;
  return placeIn(catalogue, file, at.pointer, spot);
}

export function placeIn(catalogue: Catalogue, file: string, pointer: string, spot?: Spot): Place {
  const text = catalogue.texts.get(file);
  if (text === undefined) return { file, pointer, line: 1, column: 1 };
  const known = locators.get(catalogue) ?? new Map<string, Locator>();
  locators.set(catalogue, known);
  const of = known.get(file) ?? locator(file, text);
  // A few files at a time: parsed documents are large.
  if (known.size > 50) known.clear();
  known.set(file, of);
  return of(pointer, spot);
}

/** A single value as the file writes it, 0x300 or 768; undefined where there is no file, or more than one value there. */
export function writtenAt(catalogue: Catalogue, at: Ref): string | undefined {
  const { pointer, text, column, span } = placeOf(catalogue, at);
  if (text === undefined || span === undefined || pointer !== at.pointer) return undefined;
  return text.slice(column - 1, column - 1 + span);
}
