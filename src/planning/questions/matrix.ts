// The matrix, cell by cell as it is asked for: nothing is worked out ahead and nothing is kept, so a region costs what its cells cost.

import { type Catalogue, unreadIds } from "../../catalogue/index.js";
import { type Cell, cell } from "./cell.js";

/** A part of the matrix; what is left out means all there is. */
export interface Region {
  readonly boards?: readonly string[];
  readonly revisions?: readonly string[];
  readonly versions?: readonly string[];
  readonly cards?: readonly string[];
}

/** Cells of the region in the order board, revision, firmware, card. */
export function* matrix(catalogue: Catalogue, region: Region = {}): Generator<Cell> {
  const wanted = (list: readonly string[] | undefined, id: string) => !list || list.includes(id);
  for (const id of region.boards ?? catalogue.boards.keys()) {
    const board = catalogue.boards.get(id);
    if (!board) continue;
    for (const revision of board.revisions) {
      if (!wanted(region.revisions, revision.id)) continue;
      for (const family of board.firmware)
        for (const version of catalogue.firmware.get(family)?.versions ?? []) {
          if (!wanted(region.versions, version.id)) continue;
          for (const card of region.cards ?? [...catalogue.cards.keys(), ...unreadIds(catalogue, "card")])
            yield cell(catalogue, { board: id, revision: revision.id, family, firmware: version.id, card });
        }
    }
  }
}
