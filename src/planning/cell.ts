// One cell of the matrix: one card on one board revision with one firmware version, all else open. The same planner answers it.
import type { Catalogue } from "../catalogue/index.js";
import type { Build } from "../records/index.js";
import type { Evidence, Verdict } from "./answer.js";
import { plan } from "./plan.js";

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
    modes: [{ id: "always", firmware: q.firmware }],
  };
}

export function cell(catalogue: Catalogue, q: CellQuestion): Cell {
  const answer = plan(catalogue, cellBuild(q), { brief: true, most: 1, narrow: true });
  if (answer.kind === "misasked") return { ...q, verdict: "unknown", evidence: "inferred", says: answer.faults[0]!.says };
  return { ...q, verdict: answer.verdict, evidence: answer.combinations[0]?.evidence ?? "inferred", says: answer.says };
}
