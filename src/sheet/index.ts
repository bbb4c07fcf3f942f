// The build sheet in words: rows of text from a wiring plan, for page, file and printer.
export type { SheetFinding, SheetFindingRow } from "./finding-words.js";
export { hazardRows } from "./hazards.js";
export { buildSheet } from "./sheet.js";
export type * from "./types.js";
