// The matrix of one board revision: cards down, firmware versions across, a verdict with its evidence in each cell.
import { releaseBar } from "../drawing/index.js";
import { type Board, itemAt } from "../records/index.js";
import { asksCard, asksFirmware } from "./asks.js";
import { type Tally, tally } from "./board.js";
import type { Cells } from "./cells.js";
import { type Context, countText, head, type LinkView, listText, type MarkView, markOf, type PageHead, recordName } from "./common.js";
import { cellAnchor, matrixOf, pageOf } from "./links.js";

export interface MatrixCell {
  readonly mark: MarkView;
  readonly family: string;
  readonly version: string;
  readonly href: string;
  /** The first of a run of cells with the same answer: "R4 to R5.1". On a phone the run is one line, the others are not set. */
  readonly run?: string | undefined;
}

export interface MatrixRow {
  /** Of the card. */
  readonly id: string;
  readonly card: LinkView;
  /** What a cell's question has from its row. */
  readonly asks: string;
  readonly does: string;
  /** What its cells say, each as "works:bench" and once, for the filters. */
  readonly says: string;
  /** On a phone: the line of releases of each family. */
  readonly bars: readonly { readonly family: string; readonly svg: string }[];
  readonly cells: readonly MatrixCell[];
}

export interface MatrixPage extends PageHead {
  /** Of the board. */
  readonly id: string;
  readonly board: LinkView;
  readonly revision: string;
  readonly tell: string;
  readonly answer: string;
  /** What the answer counts, and the machine the whole table speaks of. */
  readonly counts: Tally;
  readonly families: readonly { readonly link: LinkView; readonly span: number }[];
  /** How it is set on paper: upright while the columns fit, then turned, then as the list a phone has. */
  readonly paper: "upright" | "turned" | "listed";
  /** `asks`: what a cell's question has from its column. */
  readonly columns: readonly { readonly version: string; readonly href: string; readonly asks: string }[];
  readonly rows: readonly MatrixRow[];
  readonly others: readonly LinkView[];
  readonly kinds: readonly string[];
}

/** Columns that a sheet of A4 or Letter holds beside the names of the cards. */
const upright = 9;
const turned = 30;

interface Asked {
  readonly family: string;
  readonly version: string;
  readonly mark: MarkView;
}

/** Undefined inside a run. */
function runAt(cells: readonly Asked[], at: number): string | undefined {
  const same = (i: number) => cells[i]?.family === itemAt(cells, at).family && cells[i]?.mark.label === itemAt(cells, at).mark.label;
  if (same(at - 1)) return undefined;
  let last = at;
  while (same(last + 1)) last += 1;
  return last === at ? itemAt(cells, at).version : `${itemAt(cells, at).version} to ${itemAt(cells, last).version}`;
}

export function matrixPage(ctx: Context, cells: Cells, board: Board, revision: string): MatrixPage {
  const columns = cells.columns(board.id, revision);
  const families = board.firmware.map((id) => ({ id, span: columns.filter((c) => c.family === id).length })).filter((f) => f.span > 0);
  const rows: MatrixRow[] = [];
  const counts = tally(ctx, cells, board, revision);
  for (const card of ctx.catalogue.cards.values()) {
    if (card.bus !== board.bus) continue;
    const asked = columns.map(({ family, version }) => {
      const cell = cells.at({ board: board.id, revision, family, version, card: card.id });
      return { family, version, mark: markOf(cell.verdict, cell.evidence) };
    });
    const made: MatrixCell[] = asked.map(({ family, version, mark }, i) => ({
      mark,
      family,
      version,
      run: runAt(asked, i),
      href: `${pageOf("card", card.id)}#${cellAnchor({ board: board.id, revision, family, version })}`,
    }));
    rows.push({
      id: card.id,
      card: { text: card.name, href: pageOf("card", card.id) },
      asks: asksCard(card.id),
      does: card.does.join(" "),
      says: [...new Set(made.map(({ mark }) => `${mark.css}:${mark.verdict === "ruled-out" ? "" : mark.evidence}`))].join(" "),
      bars: families.map(({ id }) => ({
        family: recordName(ctx.catalogue, "firmware", id),
        svg: releaseBar(asked.filter((c) => c.family === id).map((c) => c.mark.verdict)),
      })),
      cells: made,
    });
  }
  const { workable: works = 0, conditional: withCare = 0, unknown: open = 0, "ruled-out": none = 0 } = counts.counts;
  const parts = [
    `${works} work here under some firmware`,
    withCare > 0 ? `${withCare} on a condition` : "",
    open > 0 ? `${open} ${open === 1 ? "is" : "are"} not known` : "",
    none > 0 ? `${none} cannot work` : "",
  ];
  const answer = `Of ${countText(rows.length, "card")} for this bus ${listText(parts.filter(Boolean))}.`;
  const title = `${board.name}, revision ${revision}: which card under which firmware`;
  const heads = families.map((f) => ({
    link: { text: recordName(ctx.catalogue, "firmware", f.id), href: pageOf("firmware", f.id) },
    span: f.span,
  }));
  return {
    ...head(matrixOf(board.id, revision), title, answer, "boards"),
    search: { kind: "matrix", answer, boards: [board.name], names: [`${board.model} ${revision}`], symptoms: [] },
    id: board.id,
    board: { text: board.name, href: pageOf("board", board.id) },
    revision,
    tell: board.revisions.find((r) => r.id === revision)?.tell ?? "",
    answer,
    counts,
    families: heads,
    paper: columns.length <= upright ? "upright" : columns.length <= turned ? "turned" : "listed",
    columns: columns.map((c) => ({
      version: c.version,
      href: pageOf("firmware", c.family),
      asks: asksFirmware(c.family, c.version),
    })),
    rows: rows.sort((a, b) => a.card.text.localeCompare(b.card.text)),
    others: board.revisions.filter((r) => r.id !== revision).map((r) => ({ text: r.id, href: matrixOf(board.id, r.id) })),
    kinds: [...new Set([...ctx.catalogue.cards.values()].filter((c) => c.bus === board.bus).flatMap((c) => c.does))].sort(),
  };
}
