// All pages of the site as view models, from one linked catalogue. Pure: what is written where is decided here, how it looks is not.
import type { Catalogue } from "../catalogue/index.js";
import type { Kind } from "../records/index.js";
import { noticeText } from "../words/index.js";
import { type BoardPage, boardPage } from "./board.js";
import { type BuildPage, buildPage } from "./build.js";
import { type BusPage, busPage } from "./bus.js";
import { type CardPage, cardPage } from "./card.js";
import { cardBars } from "./card-bars.js";
import { cellsOf, type Judge } from "./cells.js";
import { type Context, type LineOf, type PageHead, recordLink } from "./common.js";
import { type ConflictPage, conflictPage } from "./conflict.js";
import { type FindingsPage, findingsPage } from "./findings.js";
import { type FirmwarePage, firmwarePage } from "./firmware.js";
import { type GlossaryPage, glossaryPage } from "./glossary.js";
import { judge as askPlanning } from "./judge.js";
import { boardList, buildList, cardList, conflictList, firmwareList, type ListPage, partList, type StartPage, startPage } from "./lists.js";
import { type MatrixPage, matrixPage } from "./matrix.js";
import { type PartPage, partPage } from "./part.js";
import {
  type CautionsPage,
  cautionsPage,
  type DataPage,
  dataPage,
  type GuideKindView,
  type GuidePage,
  guidePage,
  missingPage,
  plannerHead,
  type SearchPage,
  type SourcePage,
  type SurePage,
  searchPage,
  sourceView,
  surePage,
} from "./plain.js";

import { type SheetPage, sheetPages } from "./sheet.js";
import { type WorthPage, worthPage } from "./worth.js";

export interface Pages {
  readonly start: readonly StartPage[];
  readonly lists: readonly ListPage[];
  readonly boards: readonly BoardPage[];
  readonly buses: readonly BusPage[];
  readonly matrices: readonly MatrixPage[];
  readonly firmware: readonly FirmwarePage[];
  readonly cards: readonly CardPage[];
  readonly conflicts: readonly ConflictPage[];
  readonly builds: readonly BuildPage[];
  readonly sheets: readonly SheetPage[];
  readonly parts: readonly PartPage[];
  readonly cautions: readonly CautionsPage[];
  readonly sure: readonly SurePage[];
  readonly words: readonly GlossaryPage[];
  readonly worth: readonly WorthPage[];
  readonly data: readonly DataPage[];
  readonly guides: readonly GuidePage[];
  readonly findings: readonly FindingsPage[];
  readonly sources: readonly SourcePage[];
  readonly search: readonly SearchPage[];
  readonly planner: readonly PageHead[];
  readonly missing: readonly PageHead[];
}

export interface Given {
  readonly catalogue: Catalogue;
  /** Text of each record file, for the pages that show a record as it is written. */
  readonly texts: ReadonlyMap<string, string>;
  readonly lineOf: LineOf;
  /** Names of the picture files that go with the pages. */
  readonly pictures?: ReadonlySet<string>;
  readonly guide: readonly GuideKindView[];
  readonly downloads: DataPage["downloads"];
  readonly judge?: Judge;
}

export function pagesOf(given: Given): Pages {
  const { catalogue } = given;
  const ctx: Context = { catalogue, lineOf: given.lineOf, pictures: given.pictures };
  const cells = cellsOf(catalogue, given.judge ?? askPlanning);
  const sheets = sheetPages(ctx);
  const made = {
    start: [startPage(ctx, cells)],
    lists: [boardList(ctx, cells), cardList(ctx, cells), conflictList(ctx), buildList(ctx), partList(ctx), firmwareList(ctx)],
    boards: [...catalogue.boards.values()].map((b) => boardPage(ctx, cells, b)),
    buses: [...catalogue.buses.values()].map((b) => busPage(ctx, b)),
    matrices: [...catalogue.boards.values()].flatMap((b) => b.revisions.map((r) => matrixPage(ctx, cells, b, r.id))),
    firmware: [...catalogue.firmware.values()].map((f) => firmwarePage(ctx, cells, f)),
    cards: [...catalogue.cards.values()].map((c) => cardPage(ctx, cells, c)),
    conflicts: [...catalogue.conflicts.values()].map((c) => conflictPage(ctx, c)),
    builds: [...catalogue.builds.values()].map((b) => ({
      ...buildPage(ctx, cells, b),
      bars: (b.modes ?? []).length > 1 ? cardBars(ctx, cells, b) : [],
      sheet: sheets.find((s) => s.of === b.id)?.href,
    })),
    sheets,
    parts: [...catalogue.parts.values()].map((p) => partPage(ctx, p)),
    cautions: [cautionsPage()],
    sure: [surePage()],
    words: [glossaryPage()],
    worth: [worthPage(ctx, cells)],
    data: [dataPage(ctx, given.guide, given.downloads)],
    guides: given.guide.map(guidePage),
    findings: [findingsPage()],
    sources: [...catalogue.files].flatMap(([key, file]) => {
      const [kind, id] = key.split("/") as [Kind, string];
      const text = given.texts.get(file);
      return text === undefined ? [] : [sourceView(file, text, recordLink(catalogue, kind, id))];
    }),
    planner: [plannerHead()],
    missing: [missingPage()],
  };
  const searched = (Object.values(made).flat() as readonly PageHead[]).flatMap((p) => p.search ?? []);
  const pages: Pages = { ...made, search: [searchPage(searched)] };
  const notice = noticeText(catalogue);
  const every = { edition: editionText(catalogue), ...(notice === undefined ? {} : { notice }) };
  const whole = Object.entries(pages).map(([kind, list]) => [kind, (list as readonly PageHead[]).map((page) => ({ ...page, ...every }))]);
  return Object.fromEntries(whole) as unknown as Pages;
}

/** What tells one printed page from a later one: whose records, and the day of the newest result among them. */
function editionText({ club, builds }: Catalogue): string {
  const newest = [...builds.values()]
    .flatMap((b) => b.result?.date ?? [])
    .sort()
    .at(-1);
  return [club?.name, newest ? `results up to ${newest}` : "no results yet"].filter(Boolean).join(", ");
}
