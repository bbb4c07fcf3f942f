// Pieces every view model is made of: plain strings, numbers and lists, ready to be set. Nothing here is decided again in a template.
import type { Catalogue } from "../catalogue/index.js";
import type { Evidence, Ref, Verdict } from "../planning/index.js";
import { hex, howToFind, type Kind, known, type Source, sourceOf, unknown } from "../records/index.js";
import { capital, countText, evidenceWords, listText, verdictWords } from "../words/index.js";
import { pageOf, rootOf, sectionOf, sourcePage } from "./links.js";

/** What every page has. */
export interface PageHead {
  /** Address from the top of the site. */
  readonly href: string;
  readonly root: string;
  readonly title: string;
  /** One sentence for search engines and link previews: the answer. */
  readonly description: string;
  /** Which entry of the menu it belongs to. */
  readonly part: string;
  /** What the reader of any page must know first: records that could not be read. */
  readonly notice?: string | undefined;
  /** On paper: whose records these are, and how new. */
  readonly edition?: string;
  /** File of the record, and the page that shows it line by line. */
  readonly written?: { readonly file: string; readonly href: string };
  /** What the search index says of the page; left out, the page is not searched. */
  readonly search?: SearchHead;
}

export interface SearchHead {
  readonly kind: string;
  readonly answer: string;
  readonly boards: readonly string[];
  readonly verdict?: string | undefined;
  /** The verdict's word on each board, where that differs: `verdict` is then the best of them. */
  readonly verdictOn?: Readonly<Record<string, string>>;
  /** Exact names: model numbers, ids, markings. */
  readonly names: readonly string[];
  readonly symptoms: readonly string[];
}

/** A verdict with its evidence, as the mark shows it. */
export interface MarkView {
  readonly verdict: Verdict;
  readonly evidence?: Evidence | undefined;
  readonly css: string;
  readonly word: string;
  readonly evidenceWord: string;
  /** Both, for a screen reader. */
  readonly label: string;
  readonly of?: MarkSubject;
}

/** What a mark states something of: the answer to a question (`asks.ts`), what a bench saw, or what a known problem does. */
export type MarkSubject =
  | {
      readonly kind: "answer";
      readonly asks: string;
      /** Said beside the mark where the page itself asks for less: "at best, revision D1 with R5.1". */
      readonly says?: string;
    }
  | { readonly kind: "result"; readonly build: string; readonly mode?: string; readonly outcome: string }
  | { readonly kind: "problem"; readonly conflict: string; readonly effect: string; readonly status: string };

export interface LinkView {
  readonly text: string;
  readonly href: string;
}

/** A fact a verdict rests on: the record's page, and the line it is written in. */
export interface RefView extends LinkView {
  readonly line?: { readonly text: string; readonly href: string };
}

export interface FactView {
  readonly says: string;
  readonly refs: readonly RefView[];
}

/** A value from a record; when it is not known, how to find it out. */
export interface ValueView {
  readonly text: string;
  readonly known: boolean;
  readonly find?: string | undefined;
  readonly source?: string | undefined;
}

export interface SourceView {
  readonly kind: string;
  readonly says: string;
  readonly by?: string | undefined;
  readonly date?: string | undefined;
  readonly url?: string | undefined;
  readonly id: string;
}

/** Where in a file a pointer stands; given by the reader of the files, who knows positions. */
export type LineOf = (file: string, pointer: string) => number | undefined;

export interface Context {
  readonly catalogue: Catalogue;
  readonly lineOf: LineOf;
  /** Names of the picture files that go with the pages. */
  readonly pictures?: ReadonlySet<string> | undefined;
}

export function head(href: string, title: string, description: string, part: string): PageHead {
  return { href, root: rootOf(href), title, description, part };
}

/** Head of a record's own page. */
export function recordHead(ctx: Context, kind: Kind, id: string, title: string, description: string, part: string): PageHead {
  const file = ctx.catalogue.files.get(`${kind}/${id}`);
  return { ...head(pageOf(kind, id), title, description, part), ...(file ? { written: { file, href: sourcePage(file) } } : {}) };
}

export function markOf(verdict: Verdict, evidence?: Evidence, of?: MarkSubject): MarkView {
  const v = verdictWords[verdict];
  // A plain no rests on the facts named beside it; its evidence is theirs.
  const evidenceWord = evidence && verdict !== "ruled-out" ? evidenceWords[evidence].word : "";
  const label = evidenceWord ? `${v.word}, ${evidenceWord}` : v.word;
  return { verdict, evidence, css: v.css, word: v.word, evidenceWord, label, ...(of ? { of } : {}) };
}

export function recordName(catalogue: Catalogue, kind: Kind, id: string): string {
  const maps = {
    bus: catalogue.buses,
    board: catalogue.boards,
    firmware: catalogue.firmware,
    card: catalogue.cards,
    conflict: catalogue.conflicts,
    build: catalogue.builds,
    part: catalogue.parts,
  } as const;
  if (kind === "club") return catalogue.club?.name ?? id;
  return (maps[kind] as ReadonlyMap<string, { readonly name: string }>).get(id)?.name ?? id;
}

export function recordLink(catalogue: Catalogue, kind: Kind, id: string): LinkView {
  return { text: recordName(catalogue, kind, id), href: pageOf(kind, id) };
}

export function refView(ctx: Context, ref: Ref): RefView {
  const file = ctx.catalogue.files.get(`${ref.kind}/${ref.id}`);
  const line = file ? ctx.lineOf(file, ref.pointer) : undefined;
  const base = { text: recordName(ctx.catalogue, ref.kind, ref.id), href: pageOf(ref.kind, ref.id) + sectionOf(ref) };
  if (!file || line === undefined) return base;
  return { ...base, line: { text: `${file}:${line}`, href: `${sourcePage(file)}#L${line}` } };
}

type FactForm = Parameters<typeof sourceOf>[0];

/** A fact as text with its unit; the unit stands after a thin space. */
export function value(fact: FactForm, unit = "", write: (v: unknown) => string = String): ValueView {
  const v = known(fact as never) as unknown;
  if (v === unknown) return { text: "not known", known: false, find: howToFind(fact), source: sourceOf(fact) };
  if (v === "any") return { text: "any", known: true, source: sourceOf(fact) };
  return { text: unit ? withUnit(write(v), unit) : write(v), known: true, source: sourceOf(fact) };
}

/** A number and its unit with a thin, unbreakable space between them. */
export function withUnit(amount: number | string, unit: string): string {
  return `${amount}\u202f${unit}`;
}

export function amps(amount: number): string {
  return amount < 1 ? withUnit(Math.round(amount * 1000), "mA") : withUnit(Number(amount.toFixed(2)), "A");
}

/** "0xD0000 to 0xD7FFF" */
export function spanText(base: number, size: number): string {
  if (size <= 1) return hex(base);
  return `${hex(base)}\u2013${hex(base + size - 1)}`;
}

export { capital, countText, listText };

export function sourcesView(sources: readonly Source[] | undefined): readonly SourceView[] {
  return (sources ?? []).map((s) => ({ id: s.id, kind: s.kind.replaceAll("-", " "), says: s.says, by: s.by, date: s.date, url: s.url }));
}

/** The newest first; dates of different exactness compare by their text. */
export function byDateDown(a: string | undefined, b: string | undefined): number {
  return (b ?? "").localeCompare(a ?? "");
}
