// "Does it work in mine?": for each board the groups of revisions, for each group the runs of firmware with their reasons.

import type { Verdict } from "../planning/index.js";
import { cellAsks } from "./asks.js";
import { type BarView, barOf } from "./bar.js";
import { type AskedView, askedViews, type CaseView } from "./cases.js";
import { cellView } from "./cell.js";
import type { Cells } from "./cells.js";
import { type Context, capital, type LinkView, listText, type MarkView } from "./common.js";
import { cellAnchor, formerAnchor, matrixOf, pageOf } from "./links.js";
import type { Run } from "./runs.js";
import type { BoardSummary } from "./summary.js";

export interface RunView {
  /** Anchors of every board revision and version that share this answer, each with the question it is an answer to. */
  readonly anchors: readonly RunAnchor[];
  readonly text: string;
  readonly versions: readonly string[];
  /** Of the best case. */
  readonly mark: MarkView;
  /** Machines it is not the answer for: "not with 128K of memory"; empty when it is for all. */
  readonly decides: string;
  readonly asked: readonly AskedView[];
}

export interface RunAnchor {
  readonly id: string;
  /** Its former id, where that named one version only. */
  readonly former?: string;
  readonly asks: string;
}

export interface GroupView {
  readonly revisions: readonly string[];
  readonly says: string;
  readonly matrix: readonly LinkView[];
  readonly bar: BarView;
  readonly runs: readonly RunView[];
}

export interface CellView {
  readonly id: string;
  readonly board: LinkView;
  readonly mark: MarkView;
  readonly says: string;
  readonly groups: readonly GroupView[];
}

function runView(ctx: Context, cells: Cells, card: string, board: string, revisions: readonly string[], run: Run): RunView {
  const anchors = revisions.flatMap((revision) => {
    const columns = cells.columns(board, revision);
    return run.versions.map((version): RunAnchor => {
      const at = { board, revision, family: run.family, version };
      const alone = columns.filter((c) => c.version === version).length === 1;
      return { id: cellAnchor(at), ...(alone ? { former: formerAnchor(at) } : {}), asks: cellAsks({ ...run.cell, revision, version }) };
    });
  });
  const asked = askedViews(ctx, cells, card, board, revisions, run);
  const { mark } = cellView(ctx, run.cell);
  return { anchors, text: capital(run.text), versions: run.versions, mark, decides: decidesText(asked), asked };
}

/** The cases of an answer that do not go as its best one. */
export function exceptionsOf({ cases }: AskedView): readonly CaseView[] {
  return cases.filter((c) => c.mark.verdict !== cases[0]?.mark.verdict);
}

/** What tells these cases from the others. */
export function decidersOf(cases: readonly CaseView[]): readonly string[] {
  const of = cases.flatMap((c) => c.of);
  return [
    ...(of.some((o) => o.memories.length > 0) ? ["the memory fitted"] : []),
    ...(of.some((o) => o.cardRevisions.length > 0) ? ["the revision of the card"] : []),
  ];
}

/** Where the answer is not that of the best case: "not with 128K of memory". */
function decidesText(asked: readonly AskedView[]): string {
  const exceptions = asked.map(exceptionsOf);
  const told = new Set(exceptions.map((cases) => listText(cases.map((c) => `${exceptWords[c.mark.verdict]} ${c.having}`))));
  return told.size === 1 ? [...told].join() : `depending on ${listText(decidersOf(exceptions.flat()))}`;
}

const exceptWords: Readonly<Record<Verdict, string>> = {
  workable: "works",
  conditional: "only on a condition",
  unknown: "not known",
  "ruled-out": "not",
};

export function whereView(ctx: Context, cells: Cells, card: string, summaries: readonly BoardSummary[]): readonly CellView[] {
  return summaries.map((summary) => {
    const all = ctx.catalogue.boards.get(summary.board)?.revisions.map((r) => r.id) ?? [];
    const groups = groupViews(ctx, cells, card, summary, all);
    return {
      id: summary.board,
      board: { text: summary.name, href: pageOf("board", summary.board) },
      mark: summary.mark,
      says: `${capital([summary.says, ...exceptionsText(summary.best, groups)].join("; "))}.`,
      groups,
    };
  });
}

function groupViews(ctx: Context, cells: Cells, card: string, summary: BoardSummary, all: readonly string[]): readonly GroupView[] {
  return summary.groups.map((g) => {
    const runs = g.runs.map((run) => runView(ctx, cells, card, summary.board, g.revisions, run));
    return {
      revisions: g.revisions,
      says: g.revisions.length === all.length && all.length > 1 ? "Every revision" : g.revisions.length > 1 ? "Revisions" : "Revision",
      matrix: g.revisions.map((r) => ({ text: r, href: matrixOf(summary.board, r) })),
      bar: barOf(g.runs.flatMap((r) => r.versions.map((version) => ({ ...r.cell, version })))),
      runs,
    };
  });
}

/** What the best answer of a board is not the answer for. */
function exceptionsText(best: Verdict, groups: readonly GroupView[]): readonly string[] {
  const told = [...new Set(groups.flatMap((g) => g.runs.flatMap((r) => (r.mark.verdict === best ? [r.decides] : []))))];
  if (told.length < 2) return told.filter(Boolean);
  return ["what else decides is told with each firmware"];
}
