// One cell of the matrix: one card on one board revision with one firmware version, all else open. The same planner answers it.
import { type Catalogue, defaultMode } from "../../catalogue/index.js";
import type { InvalidBuild } from "../../machine/index.js";
import { type Build, itemAt } from "../../records/index.js";
import type { Answer, Evidence, Verdict } from "../answer/answer.js";
import { type PlanOptions, plan } from "../answer/plan.js";

export interface CellQuestion {
  readonly board: string;
  readonly revision: string;
  readonly family: string;
  readonly firmware: string;
  readonly card: string;
}

export interface Cell extends CellQuestion {
  readonly verdict: Verdict;
  readonly evidence: Evidence;
  readonly says: string;
}

export function cellBuild(q: CellQuestion): Build {
  return {
    id: "cell",
    name: "cell",
    board: q.board,
    revision: q.revision,
    firmware: q.family,
    cards: [{ card: q.card }],
    modes: [{ ...defaultMode, firmware: q.firmware }],
  };
}

/** How a cell is asked, wherever it is: only the revision and the version it names are looked at. */
export const cellOptions: PlanOptions = { brief: true, most: 6, narrow: true };

/** Everything there is to say about a cell. Matrix, card page and exports all ask here, so that they never disagree. */
export function cellAnswer(catalogue: Catalogue, q: CellQuestion): Answer | InvalidBuild {
  return plan(catalogue, cellBuild(q), cellOptions);
}

export function cell(catalogue: Catalogue, q: CellQuestion): Cell {
  const answer = cellAnswer(catalogue, q);
  if (answer.kind === "misasked") return { ...q, verdict: "unknown", evidence: "inferred", says: itemAt(answer.faults, 0).says };
  return { ...q, verdict: answer.verdict, evidence: answer.combinations[0]?.evidence ?? "inferred", says: answer.says };
}
