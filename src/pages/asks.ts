// The question that a stated answer speaks of, written as the address the planner opens: "b=skerry-16t&r=D1&f=skerry-monitor&c=...". A
// mark on a page carries it, so that whatever a page states can be read back and asked again. What many marks share stands once, on what
// holds them: a cell of the matrix speaks of the board its table names, the card its row names, the firmware its column names.
import { type Catalogue, defaultMode } from "../catalogue/index.js";
import { addressOf } from "../machine/index.js";
import type { Build } from "../records/index.js";
import type { CellKey } from "./cells.js";

/** A part of a question; parts are joined by "&". */
export function asksOf(part: Partial<Build>): string {
  return addressOf({ id: "my-build", name: "My build", board: "", cards: [], ...part });
}

/** Firmware of a machine that runs one way. */
export function asksFirmware(family: string, version: string): string {
  return asksOf({ firmware: family, modes: [{ ...defaultMode, firmware: version }] });
}

export function asksCard(card: string): string {
  return asksOf({ cards: [{ card }] });
}

export function cellAsks({ board, revision, family, version, card }: CellKey): string {
  return [asksOf({ board, revision }), asksFirmware(family, version), asksCard(card)].join("&");
}

/** A card on a board, all else left open: one question for each firmware family that runs there, the best of whose answers counts. */
export function openAsks(catalogue: Catalogue, board: string, card: string): string {
  const families = catalogue.boards.get(board)?.firmware ?? [];
  return families.map((firmware) => [asksOf({ board, firmware }), asksCard(card)].join("&")).join(" ");
}
