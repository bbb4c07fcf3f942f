// The site: view models, exports, and the build that turns a club's records into a folder of pages.

export type { Caution } from "../wiring/index.js";
export { type BuildSiteOptions, type BuiltSite, buildSite } from "./build.js";
export { type Cell, type CellKey, type Cells, cellsOf, type Judge } from "./cells.js";
export { menu, policy } from "./frame.js";
export { type Figure, figure, markSvg } from "./marks.js";
export { type Given, type Pages, pagesOf } from "./pages.js";
export { makePocket, type Pocket, type PocketOptions } from "./pocket/make.js";
export { sheetFile } from "./sheet-file.js";
export type { BoardLine, BoardPage } from "./views/board.js";
export type { BuildPage } from "./views/build.js";
export type { BusPage } from "./views/bus.js";
export type { CardPage, NeedView, SettingView } from "./views/card.js";
export type { ConditionView, ReasonsView, UnknownView } from "./views/cell.js";
export type { ClaimLine } from "./views/claims.js";
export type { FactView, LinkView, MarkView, PageHead, RefView, SourceView, ValueView } from "./views/common.js";
export type { ConflictLine, ConflictPage } from "./views/conflict.js";
export type { FirmwarePage, ReleaseView } from "./views/firmware.js";
export type { ListLine, ListPage, StartPage } from "./views/lists.js";
export type { MatrixCell, MatrixPage, MatrixRow } from "./views/matrix.js";
export type { PartPage, PinView } from "./views/part.js";
export type { CautionsPage, DataPage, GuideKindView, GuidePage, SearchPage, SourcePage, SurePage } from "./views/plain.js";
export { type FaceView, type NoSheet, type PanelView, type SheetPage, type SheetResult, sheetOf } from "./views/sheet.js";
export { listed, type TestedView } from "./views/tested.js";
export type { CellView as WhereView, GroupView, RunView } from "./views/where.js";
export type { WorthPage } from "./views/worth.js";
export { wire } from "./wire.js";
export { effectWords, evidenceWords, outcomeWords, statusWords, verdictWords, type Word } from "./words.js";
