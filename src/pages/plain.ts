// Pages that explain: cautions, how sure this is, about the data with the field guide, the source of a record, search, not found.
import type { Evidence, Verdict } from "../planning/index.js";
import { type Caution, cautions } from "../wiring/index.js";
import { evidenceOrder, evidenceWords, statusWords, verdictOrder, verdictWords } from "../words/index.js";
import {
  type Context,
  capital,
  countText,
  head,
  type LinkView,
  type MarkView,
  markOf,
  type PageHead,
  recordHead,
  type SearchHead,
} from "./common.js";
import { findingsAddress } from "./findings.js";
import { sourcePage } from "./links.js";

export interface CautionsPage extends PageHead {
  readonly answer: string;
  readonly stop: readonly Caution[];
  readonly care: readonly Caution[];
}

export function cautionsPage(): CautionsPage {
  const stop = cautions.filter((c) => c.severity === "stop");
  const answer = `Most of this work is safe at the bench with the power off. ${capital(countText(stop.length, "thing"))} can injure you; read ${stop.length === 1 ? "it" : "those"} before you open anything.`;
  return {
    ...head("cautions.html", "Cautions", answer, "cautions"),
    answer,
    stop,
    care: cautions.filter((c) => c.severity !== "stop"),
    search: { kind: "caution", answer, boards: [], names: cautions.map((c) => c.title), symptoms: [] },
  };
}

export interface SurePage extends PageHead {
  readonly answer: string;
  readonly verdicts: readonly { readonly mark: MarkView; readonly means: string }[];
  readonly evidences: readonly { readonly mark: MarkView; readonly word: string; readonly means: string }[];
  readonly statuses: readonly { readonly word: string; readonly means: string }[];
  readonly all: readonly (readonly MarkView[])[];
}

export function surePage(): SurePage {
  const answer = "Every answer has two parts: what it says, drawn as a plug and a socket, and what it rests on, drawn as strokes below.";
  const shown = (v: Verdict, e?: Evidence) => markOf(v, e);
  return {
    ...head("sure.html", "How sure is this?", answer, "sure"),
    answer,
    verdicts: verdictOrder.map((v) => ({ mark: shown(v), means: verdictWords[v].means })),
    evidences: evidenceOrder.map((e) => ({ mark: shown("workable", e), word: evidenceWords[e].word, means: evidenceWords[e].means })),
    statuses: Object.values(statusWords).map((s) => ({ word: s.word, means: s.means })),
    all: verdictOrder.filter((v) => v !== "ruled-out").map((v) => evidenceOrder.map((e) => shown(v, e))),
    search: { kind: "help", answer, boards: [], names: ["how sure", "evidence", "verdict"], symptoms: [] },
  };
}

export interface GuideKindView {
  readonly kind: string;
  readonly folder: string;
  readonly description: string;
  readonly fields: readonly { readonly path: string; readonly words: string; readonly needed: string; readonly description: string }[];
}

export interface DataPage extends PageHead {
  readonly answer: string;
  readonly club: string;
  readonly licence: string;
  readonly contact: string;
  readonly keepers: string;
  readonly downloads: readonly { readonly link: LinkView; readonly says: string }[];
  readonly guides: readonly { readonly link: LinkView; readonly says: string }[];
  /** The page that explains what the check finds. */
  readonly findings: LinkView;
}

export interface GuidePage extends PageHead {
  readonly answer: string;
  readonly guide: GuideKindView;
  readonly schema: string;
}

export interface SourcePage extends PageHead {
  readonly file: string;
  readonly record: LinkView;
  readonly lines: readonly string[];
}

export function sourceView(file: string, text: string, record: LinkView): SourcePage {
  const lines = text.replace(/\r\n?/g, "\n").replace(/\n$/, "").split("\n");
  return { ...head(sourcePage(file), `${record.text} as written`, `The record ${file}, line by line.`, "data"), file, record, lines };
}

export function guidePage(guide: GuideKindView): GuidePage {
  const answer = guide.description;
  return {
    ...head(`data/guide/${guide.kind}.html`, `Field guide: ${guide.kind}`, answer, "data"),
    answer,
    guide,
    schema: `data/schema/${guide.kind}.json`,
    search: {
      kind: "help",
      answer: `Fields of a ${guide.kind} record: ${guide.description}`,
      boards: [],
      names: [guide.kind],
      symptoms: [],
    },
  };
}

export function dataPage(ctx: Context, guides: readonly GuideKindView[], downloads: DataPage["downloads"]): DataPage {
  const club = ctx.catalogue.club;
  const answer =
    "All pages are made from plain text records, one thing to a file. You may take them, correct them and add what you have tested.";
  return {
    ...(club
      ? recordHead(ctx, "club", club.id, "About the data", answer, "data")
      : head("data/index.html", "About the data", answer, "data")),
    answer,
    club: club?.about ?? "",
    licence: club?.licence ?? "",
    contact: club?.contact ?? "",
    keepers: (club?.keepers ?? []).join(", "),
    downloads,
    guides: guides.map((g) => ({ link: { text: g.kind, href: `data/guide/${g.kind}.html` }, says: g.description })),
    findings: { text: "what each finding means and how it is mended", href: findingsAddress },
    search: { kind: "help", answer, boards: [], names: ["download", "field guide", "JSON", "CSV", "Atom"], symptoms: [] },
  };
}

export interface SearchPage extends PageHead {
  readonly filters: readonly { readonly name: string; readonly label: string; readonly values: readonly string[] }[];
}

/** The filters offer what the searched pages hold. */
export function searchPage(searched: readonly SearchHead[]): SearchPage {
  const values = (of: (s: SearchHead) => readonly string[]) => [...new Set(searched.flatMap(of))].sort();
  return {
    ...head("search.html", "Search", "Search every record by model number, name or symptom.", "search"),
    filters: [
      { name: "kind", label: "Only", values: values((s) => [s.kind]) },
      { name: "board", label: "For the board", values: values((s) => s.boards) },
      { name: "verdict", label: "That says", values: values((s) => (s.verdict ? [s.verdict] : [])) },
    ],
  };
}

export function plannerHead(): PageHead {
  const answer = "Say which machine and which cards; see every way it can work, why not, and what would help.";
  return {
    ...head("planner.html", "Planner", answer, "planner"),
    search: { kind: "help", answer, boards: [], names: ["planner", "plan a machine", "switch between firmware"], symptoms: [] },
  };
}

export function missingPage(): PageHead {
  return head("404.html", "Not here", "There is no page at this address.", "missing");
}
