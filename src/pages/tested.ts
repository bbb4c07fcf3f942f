// Which tested builds speak of a thing, with their outcome: used on boards, cards, firmware, conflicts and parts.

import { evidenceTime } from "../drawing/index.js";
import type { Build } from "../records/index.js";
import { outcomeWords } from "../words/index.js";
import { byDateDown, type Context, type LinkView, type MarkView, markOf, recordLink } from "./common.js";
import { type Figure, figure } from "./marks.js";

export interface TestedView {
  /** Its id, and that of its board. */
  readonly build: string;
  readonly board: string;
  readonly link: LinkView;
  readonly mark: MarkView;
  readonly outcome: string;
  readonly by: string;
  readonly date: string;
  readonly on: string;
  readonly says?: string | undefined;
}

export function outcomeMark(outcome: "worked" | "partly" | "failed", build: string, mode?: string): MarkView {
  const word = outcomeWords[outcome];
  const of = { kind: "result", build, outcome, ...(mode === undefined ? {} : { mode }) } as const;
  return { ...markOf(word.verdict, "bench", of), word: word.word, label: word.word };
}

export function revisionOf(build: Build): string {
  if (build.revision === undefined) return "";
  return typeof build.revision === "string" ? build.revision : build.revision.join(" or ");
}

export function versionsOf(build: Build): readonly string[] {
  return [...new Set((build.modes ?? []).flatMap((m) => (m.firmware ? [m.firmware] : [])))];
}

export function testedView(ctx: Context, build: Build): TestedView | undefined {
  if (!build.result) return undefined;
  const board = ctx.catalogue.boards.get(build.board)?.name ?? build.board;
  const versions = versionsOf(build);
  return {
    build: build.id,
    board: build.board,
    link: recordLink(ctx.catalogue, "build", build.id),
    mark: outcomeMark(build.result.outcome, build.id),
    outcome: outcomeWords[build.result.outcome].word,
    by: build.result.by,
    date: build.result.date,
    on: [`${board} ${revisionOf(build)}`.trim(), versions.join(", ")].filter(Boolean).join(", "),
    says: build.summary,
  };
}

/** Tested builds for which `speaks` holds, newest first. */
export function testedWhere(ctx: Context, speaks: (build: Build) => boolean): readonly TestedView[] {
  return [...ctx.catalogue.builds.values()]
    .filter(speaks)
    .flatMap((b) => testedView(ctx, b) ?? [])
    .sort((a, b) => byDateDown(a.date, b.date));
}

/** How many tests are listed before the rest is folded away. */
export const listed = 8;

/** The tests as marks on a line of time; with fewer than four a list says as much. */
export function timeFigure(tested: readonly TestedView[], id: string): Figure | undefined {
  if (tested.length < 4) return undefined;
  const outcomes = { workable: "worked", conditional: "partly", unknown: "partly", "ruled-out": "failed" } as const;
  const events = tested.map((t) => ({ date: t.date, outcome: outcomes[t.mark.verdict], label: `${t.link.text}, ${t.date}` }));
  return figure((prefix, width) => evidenceTime(events, prefix, width), `time-${id}`);
}
