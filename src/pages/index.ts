// Pages: the view models, one a template; what is written where is decided here. Strings, numbers and lists for the templates to set.

export type { Caution } from "../wiring/index.js";
export type { BoardLine, BoardPage } from "./board.js";
export type { BuildPage } from "./build.js";
export type { BusPage } from "./bus.js";
export type { CardPage, NeedView, SettingView } from "./card.js";
export type { ConditionView, ReasonsView, UnknownView } from "./cell.js";
export { type Cell, type CellKey, type Cells, cellsOf, type Judge } from "./cells.js";
export type { ClaimLine } from "./claims.js";
export type { FactView, LinkView, MarkSubject, MarkView, PageHead, RefView, SourceView, ValueView } from "./common.js";
export { listText } from "./common.js";
export type { ConflictLine, ConflictPage } from "./conflict.js";
export type { ChangeView, FirmwarePage, ReleaseView } from "./firmware.js";
export { menu, policy } from "./frame.js";
export { pageOf, sectionOf } from "./links.js";
export type { ListLine, ListPage, StartPage } from "./lists.js";
export { machineDrawings } from "./machine-drawings.js";
export { type Figure, figure, markSvg, markUse } from "./marks.js";
export type { MatrixCell, MatrixPage, MatrixRow } from "./matrix.js";
export { type Given, type Pages, pagesOf } from "./pages.js";
export type { PartPage, PinView } from "./part.js";
export type { CautionsPage, DataPage, GuideKindView, GuidePage, SearchPage, SourcePage, SurePage } from "./plain.js";
export { entriesOf, type SearchEntry } from "./search/entries.js";
export { type Filters, type Finder, finder, fits, type Hit } from "./search/find.js";
export { type FaceView, type NoSheet, type PanelView, type SheetPage, type SheetResult, sheetOf } from "./sheet.js";
export { listed, type TestedView } from "./tested.js";
export type { CellView as WhereView, GroupView, RunView } from "./where.js";
export type { WorthPage } from "./worth.js";
