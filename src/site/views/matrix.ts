// The matrix of one board revision: cards down, firmware versions across, a verdict with its evidence in each cell.
import type { Board } from "../../records/index.js";
import type { Cells } from "../cells.js";
import { cellAnchor, matrixOf, pageOf } from "../links.js";
import { verdictOrder } from "../words.js";
import { type Context, countText, head, type LinkView, listText, type MarkView, markOf, type PageHead, recordName } from "./common.js";

export interface MatrixCell {
  readonly mark: MarkView;
  readonly version: string;
  readonly href: string;
  /** For a screen reader and as a hint: "Gannet under R5: works, seen on a bench". */
  readonly label: string;
  /** The first version of its family: on a phone a new line begins. */
  readonly first: boolean;
}

export interface MatrixRow {
  readonly card: LinkView;
  readonly does: string;
  /** Words of all cells, for the filters. */
  readonly verdicts: string;
  readonly evidences: string;
  readonly cells: readonly MatrixCell[];
}

export interface MatrixPage extends PageHead {
  readonly board: LinkView;
  readonly revision: string;
  readonly tell: string;
  readonly answer: string;
  readonly families: readonly { readonly link: LinkView; readonly span: number }[];
  /** Most versions of one family: the cells of a line on a phone. */
  readonly across: number;
  readonly columns: readonly { readonly version: string; readonly href: string }[];
  readonly rows: readonly MatrixRow[];
  readonly others: readonly LinkView[];
  readonly kinds: readonly string[];
}

export function matrixPage(ctx: Context, cells: Cells, board: Board, revision: string): MatrixPage {
  const columns = cells.columns(board.id, revision);
  const rows: MatrixRow[] = [];
  const tally = new Map<string, number>();
  for (const card of ctx.catalogue.cards.values()) {
    if (card.bus !== board.bus) continue;
    const made = columns.map(({ family, version }, i) => {
      const cell = cells.at({ board: board.id, revision, family, version, card: card.id });
      const mark = markOf(cell.verdict, cell.evidence);
      return {
        mark,
        version,
        first: i > 0 && columns[i - 1]!.family !== family,
        href: `${pageOf("card", card.id)}#${cellAnchor(board.id, revision, version)}`,
        label: `${card.name} under ${version}: ${mark.label}`,
      };
    });
    const best = verdictOrder.find((v) => made.some((c) => c.mark.verdict === v));
    if (best) tally.set(best, (tally.get(best) ?? 0) + 1);
    rows.push({
      card: { text: card.name, href: pageOf("card", card.id) },
      does: card.does.join(" "),
      verdicts: [...new Set(made.map((c) => c.mark.css))].join(" "),
      evidences: [...new Set(made.filter((c) => c.mark.verdict !== "ruled-out").map((c) => c.mark.evidence))].join(" "),
      cells: made,
    });
  }
  const works = tally.get("workable") ?? 0;
  const withCare = tally.get("conditional") ?? 0;
  const open = tally.get("unknown") ?? 0;
  const none = tally.get("ruled-out") ?? 0;
  const parts = [
    `${works} work here under some firmware`,
    withCare > 0 ? `${withCare} on a condition` : "",
    open > 0 ? `${open} ${open === 1 ? "is" : "are"} not known` : "",
    none > 0 ? `${none} cannot work` : "",
  ];
  const answer = `Of ${countText(rows.length, "card")} for this bus ${listText(parts.filter(Boolean))}.`;
  const title = `${board.name}, revision ${revision}: which card under which firmware`;
  const families = board.firmware
    .map((id) => ({ id, span: columns.filter((c) => c.family === id).length }))
    .filter((f) => f.span > 0)
    .map((f) => ({ link: { text: recordName(ctx.catalogue, "firmware", f.id), href: pageOf("firmware", f.id) }, span: f.span }));
  return {
    ...head(matrixOf(board.id, revision), title, answer, "boards"),
    search: { kind: "matrix", answer, boards: [board.name], names: [`${board.model} ${revision}`], symptoms: [] },
    board: { text: board.name, href: pageOf("board", board.id) },
    revision,
    tell: board.revisions.find((r) => r.id === revision)?.tell ?? "",
    answer,
    families,
    across: Math.max(1, ...families.map((f) => f.span)),
    columns: columns.map((c) => ({ version: c.version, href: pageOf("firmware", c.family) })),
    rows: rows.sort((a, b) => a.card.text.localeCompare(b.card.text)),
    others: board.revisions.filter((r) => r.id !== revision).map((r) => ({ text: r.id, href: matrixOf(board.id, r.id) })),
    kinds: [...new Set([...ctx.catalogue.cards.values()].filter((c) => c.bus === board.bus).flatMap((c) => c.does))].sort(),
  };
}
