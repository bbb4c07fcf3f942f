// The matrix of one board revision: cards down, gathered by what they are for, firmware versions across, a bar over these for each card.
import type { Board } from "../records/index.js";
import { asksCard, asksFirmware } from "./asks.js";
import { type BarRelease, type BarView, barOf } from "./bar.js";
import { type Tally, tally } from "./board.js";
import type { Cells } from "./cells.js";
import { type Context, capital, countText, head, type LinkView, listText, type PageHead, recordName } from "./common.js";
import { cellAnchor, matrixOf, pageOf } from "./links.js";

export interface MatrixCell extends BarRelease {
  readonly href: string;
  /** Inside a run of cells with the same answer: its link is left out of the way by keyboard. */
  readonly again: boolean;
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
  readonly bar: BarView;
  readonly cells: readonly MatrixCell[];
}

/** Cards for one purpose. */
export interface MatrixGroup {
  readonly name: string;
  readonly rows: readonly MatrixRow[];
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
  /** `asks`: what a cell's question has from its column. */
  readonly columns: readonly { readonly version: string; readonly href: string; readonly asks: string }[];
  /** How many cards there are in all. */
  readonly size: number;
  /** The groups as they stand side by side on a wide page: one list where there are many versions, two of the same height otherwise. */
  readonly sides: readonly (readonly MatrixGroup[])[];
  readonly others: readonly LinkView[];
}

/** Columns up to which two lists have room beside each other. */
const twoSides = 12;

export function matrixPage(ctx: Context, cells: Cells, board: Board, revision: string): MatrixPage {
  const columns = cells.columns(board.id, revision);
  const families = board.firmware.map((id) => ({ id, span: columns.filter((c) => c.family === id).length })).filter((f) => f.span > 0);
  const rows: MatrixRow[] = [];
  const counts = tally(ctx, cells, board, revision);
  for (const card of ctx.catalogue.cards.values()) {
    if (card.bus !== board.bus) continue;
    const key = { board: board.id, revision, card: card.id };
    const bar = barOf(columns.map((column) => cells.at({ ...key, ...column })));
    const made: MatrixCell[] = bar.releases.map((release, i) => ({
      ...release,
      again: sameAs(bar.releases[i - 1], release),
      href: `${pageOf("card", card.id)}#${cellAnchor({ ...key, ...release })}`,
    }));
    rows.push({
      id: card.id,
      card: { text: card.name, href: pageOf("card", card.id) },
      asks: asksCard(card.id),
      does: card.does.join(" "),
      says: [...new Set(made.map(({ mark }) => `${mark.css}:${mark.verdict === "ruled-out" ? "" : mark.evidence}`))].join(" "),
      bar,
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
    columns: columns.map((c) => ({
      version: c.version,
      href: pageOf("firmware", c.family),
      asks: asksFirmware(c.family, c.version),
    })),
    size: rows.length,
    sides: sidesOf(groupsOf(rows), columns.length),
    others: board.revisions.filter((r) => r.id !== revision).map((r) => ({ text: r.id, href: matrixOf(board.id, r.id) })),
  };
}

function sameAs(before: BarRelease | undefined, release: BarRelease): boolean {
  return before?.family === release.family && before.mark.label === release.mark.label;
}

/** By the first thing a card is for; both by the alphabet. */
function groupsOf(rows: readonly MatrixRow[]): MatrixGroup[] {
  const purposes = [...new Set(rows.map(purposeOf))].sort();
  return purposes.map((purpose) => ({
    name: capital(purpose),
    rows: rows.filter((r) => purposeOf(r) === purpose).sort((a, b) => a.card.text.localeCompare(b.card.text)),
  }));
}

function purposeOf({ does }: MatrixRow): string {
  return does.split(" ")[0] || "other";
}

/** Lines of a group: its name, its cards, and the notes under their bars. */
function linesOf({ rows }: MatrixGroup): number {
  return 1 + rows.length + 2 * rows.filter((r) => r.bar.notes.length > 0).length;
}

function sidesOf(groups: readonly MatrixGroup[], columns: number): readonly (readonly MatrixGroup[])[] {
  if (columns > twoSides || groups.length < 2) return [groups];
  const tall = (side: readonly MatrixGroup[]) => side.reduce((sum, g) => sum + linesOf(g), 0);
  const cuts = groups.slice(1).map((_, at) => [groups.slice(0, at + 1), groups.slice(at + 1)] as const);
  const higher = ([left, right]: (typeof cuts)[number]) => Math.max(tall(left), tall(right));
  return cuts.reduce((best, cut) => (higher(cut) < higher(best) ? cut : best));
}
