// "Does it work in mine?": for each board the groups of revisions, for each group the runs of firmware with their reasons.

import type { Cells } from "../cells.js";
import { cellAnchor, matrixOf, pageOf } from "../links.js";
import { type Run, revisionsText } from "../runs.js";
import { cellView, type ReasonsView } from "./cell.js";
import { type Context, capital, type LinkView, type MarkView, markOf } from "./common.js";
import type { BoardSummary } from "./summary.js";

export interface RunView extends ReasonsView {
  /** Anchors of every board revision and version that share this answer. */
  readonly anchors: readonly string[];
  readonly text: string;
  readonly versions: readonly string[];
  /** How many of the line's versions it covers, and where it starts, for the bar. */
  readonly start: number;
  readonly length: number;
}

export interface GroupView {
  readonly revisions: readonly string[];
  readonly says: string;
  readonly matrix: readonly LinkView[];
  readonly columns: readonly string[];
  readonly runs: readonly RunView[];
}

export interface CellView {
  readonly id: string;
  readonly board: LinkView;
  readonly mark: MarkView;
  readonly says: string;
  readonly groups: readonly GroupView[];
}

function runView(ctx: Context, summary: BoardSummary, revisions: readonly string[], run: Run, start: number): RunView {
  const anchors = revisions.flatMap((r) => run.versions.map((v) => cellAnchor(summary.board, r, v)));
  return { ...cellView(ctx, run.cell), anchors, text: capital(run.text), versions: run.versions, start, length: run.versions.length };
}

export function whereView(ctx: Context, cells: Cells, summaries: readonly BoardSummary[]): readonly CellView[] {
  return summaries.map((summary) => {
    const all = ctx.catalogue.boards.get(summary.board)?.revisions.map((r) => r.id) ?? [];
    return {
      id: summary.board,
      board: { text: summary.name, href: pageOf("board", summary.board) },
      mark: markOf(summary.best, summary.evidence),
      says: `${capital(summary.says)}.`,
      groups: summary.groups.map((g) => {
        let at = 0;
        const runs = g.runs.map((run) => {
          const view = runView(ctx, summary, g.revisions, run, at);
          at += run.versions.length;
          return view;
        });
        return {
          revisions: g.revisions,
          says: capital(revisionsText(all, g.revisions)),
          matrix: g.revisions.map((r) => ({ text: r, href: matrixOf(summary.board, r) })),
          columns: cells.columns(summary.board, g.revisions[0]!).map((c) => c.version),
          runs,
        };
      }),
    };
  });
}
