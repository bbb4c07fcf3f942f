// One cell of the matrix: a single card on one board revision under one firmware version. The only place where
// the site asks for a verdict on a card, so that matrix, card page, search and exports never disagree.
import { type Catalogue, runsOn } from "../catalogue/index.js";
import { type Answer, type CellCase, cellCases, type Evidence, type Verdict } from "../planning/index.js";
import type { Build } from "../records/index.js";

export interface CellKey {
  readonly board: string;
  readonly revision: string;
  readonly family: string;
  readonly version: string;
  readonly card: string;
}

/** What planning says of a question, and how sure that is. */
export interface Judged {
  readonly verdict: Verdict;
  readonly evidence: Evidence;
  readonly answer: Answer;
}

export interface Cell extends CellKey, Judged {}

/** Answers a question; planning does. */
export interface Judge {
  readonly cell: (catalogue: Catalogue, key: CellKey) => Judged;
  readonly build: (catalogue: Catalogue, build: Build) => Judged;
}

export interface Cells {
  readonly at: (key: CellKey) => Cell;
  /** The same told apart by memory and the card's revision, which a cell leaves open. */
  readonly casesAt: (key: CellKey) => readonly CellCase[];
  /** Any other question a page states an answer to. */
  readonly of: (build: Build) => Judged;
  /** Firmware versions that run on a revision, in declared order, family after family. */
  readonly columns: (board: string, revision: string) => readonly { readonly family: string; readonly version: string }[];
}

export function cellsOf(catalogue: Catalogue, judge: Judge): Cells {
  const kept = new Map<string, Cell>();
  const at = (key: CellKey): Cell => {
    const name = [key.board, key.revision, key.family, key.version, key.card].join("|");
    const found = kept.get(name);
    if (found) return found;
    const made = { ...key, ...judge.cell(catalogue, key) };
    kept.set(name, made);
    return made;
  };
  return {
    at,
    casesAt: (key) => cellCases(catalogue, { ...key, firmware: key.version }, at(key).answer),
    of: (build) => judge.build(catalogue, build),
    columns(boardId, revision) {
      const board = catalogue.boards.get(boardId);
      if (!board) return [];
      return board.firmware.flatMap((id) => {
        const family = catalogue.firmware.get(id);
        if (!family) return [];
        return family.versions.filter((v) => runsOn(family, v, board, revision)).map((v) => ({ family: id, version: v.id }));
      });
    },
  };
}
