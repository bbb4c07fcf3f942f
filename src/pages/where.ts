// "Does it work in mine?": for each board the groups of revisions, for each group the runs of firmware with their reasons.

import { releaseBar } from "../drawing/index.js";
import { cellAsks } from "./asks.js";
import { cellView, type ReasonsView } from "./cell.js";
import { type Context, capital, type LinkView, type MarkView, markOf } from "./common.js";
import { cellAnchor, matrixOf, pageOf } from "./links.js";
import type { Run } from "./runs.js";
import type { BoardSummary } from "./summary.js";

export interface RunView extends ReasonsView {
  /** Anchors of every board revision and version that share this answer, each with the question it is an answer to. */
  readonly anchors: readonly { readonly id: string; readonly asks: string }[];
  readonly text: string;
  readonly versions: readonly string[];
}

export interface GroupView {
  readonly revisions: readonly string[];
  readonly says: string;
  readonly matrix: readonly LinkView[];
  /** The firmware line as a bar, one stretch a version; a long line is drawn without names, which a phone has no room for. */
  readonly segments: readonly { readonly version: string; readonly css: string }[];
  readonly line?: string;
  readonly runs: readonly RunView[];
}

export interface CellView {
  readonly id: string;
  readonly board: LinkView;
  readonly mark: MarkView;
  readonly says: string;
  readonly groups: readonly GroupView[];
}

function runView(ctx: Context, summary: BoardSummary, revisions: readonly string[], run: Run): RunView {
  const anchors = revisions.flatMap((revision) =>
    run.versions.map((version) => ({
      id: cellAnchor(summary.board, revision, version),
      asks: cellAsks({ ...run.cell, revision, version }),
    })),
  );
  return { ...cellView(ctx, run.cell), anchors, text: capital(run.text), versions: run.versions };
}

/** Versions whose names fit under a bar on a phone. */
const named = 8;

const verdicts = (group: BoardSummary["groups"][number]) => group.runs.flatMap((r) => r.versions.map(() => r.cell.verdict));

export function whereView(ctx: Context, summaries: readonly BoardSummary[]): readonly CellView[] {
  return summaries.map((summary) => {
    const all = ctx.catalogue.boards.get(summary.board)?.revisions.map((r) => r.id) ?? [];
    return {
      id: summary.board,
      board: { text: summary.name, href: pageOf("board", summary.board) },
      mark: summary.mark,
      says: `${capital(summary.says)}.`,
      groups: summary.groups.map((g) => {
        const runs = g.runs.map((run) => runView(ctx, summary, g.revisions, run));
        return {
          revisions: g.revisions,
          says: g.revisions.length === all.length && all.length > 1 ? "Every revision" : g.revisions.length > 1 ? "Revisions" : "Revision",
          matrix: g.revisions.map((r) => ({ text: r, href: matrixOf(summary.board, r) })),
          line: verdicts(g).length > named ? releaseBar(verdicts(g)) : undefined,
          segments: g.runs.flatMap((r) => r.versions.map((version) => ({ version, css: markOf(r.cell.verdict).css }))),
          runs,
        };
      }),
    };
  });
}
