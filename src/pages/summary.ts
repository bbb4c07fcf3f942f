// The one-sentence answer about a card: on which boards, from which firmware on, how well proven.

import type { Evidence, Verdict } from "../planning/index.js";
import type { Board } from "../records/index.js";
import { evidenceOrder, verdictOrder } from "../words/index.js";
import { cellAsks, openAsks } from "./asks.js";
import type { Cell, Cells } from "./cells.js";
import { type Context, capital, listText, type MarkView, markOf, recordName } from "./common.js";
import { groupsOf, type RevisionGroup, type Run, revisionsText, spansWith } from "./runs.js";

export interface BoardSummary {
  readonly board: string;
  readonly name: string;
  readonly groups: readonly RevisionGroup[];
  readonly best: Verdict;
  readonly evidence: Evidence;
  /** The mark of the best case, with the question it speaks of. */
  readonly mark: MarkView;
  readonly findings: readonly Finding[];
  /** "works from R5 on in revision C and D1" */
  readonly says: string;
}

const verbs: Readonly<Record<Verdict, string>> = {
  workable: "works",
  conditional: "works on a condition",
  unknown: "is not known to work",
  "ruled-out": "does not work",
};

function bestOf(runs: readonly Run[]): Verdict | undefined {
  return verdictOrder.find((v) => runs.some((r) => r.cell.verdict === v));
}

/** The surest of the best cells; undefined on a board that no firmware of it runs on. */
function bestCell(runs: readonly Run[]): Cell | undefined {
  const rank = ({ verdict, evidence }: Cell) => verdictOrder.indexOf(verdict) * evidenceOrder.length + evidenceOrder.indexOf(evidence);
  return runs.map((r) => r.cell).reduce<Cell | undefined>((best, cell) => (best && rank(best) <= rank(cell) ? best : cell), undefined);
}

/** "revision D1 with R5.1": the machine the best case is of. A no is of all of them. */
function bestMark(ctx: Context, cells: Cells, board: Board, card: string, best: Cell | undefined): MarkView {
  if (!best || best.verdict === "ruled-out") {
    const { verdict, evidence } = best ?? cells.of({ id: "card", name: "Card", board: board.id, cards: [{ card }] });
    return markOf(verdict, evidence, { kind: "answer", asks: openAsks(ctx.catalogue, board.id, card) });
  }
  const version = board.firmware.length > 1 ? `${recordName(ctx.catalogue, "firmware", best.family)} ${best.version}` : best.version;
  const says = `at best, revision ${best.revision} with ${version}`;
  return markOf(best.verdict, best.evidence, { kind: "answer", asks: cellAsks(best), says });
}

/** A card does the same on some revisions of a board: its best verdict there, and under which firmware. */
interface Finding {
  readonly name: string;
  readonly all: readonly string[];
  readonly revisions: string[];
  readonly verdict: Verdict;
  /** "from R5 on", "under any firmware"; empty for a no. */
  readonly span: string;
}

function spanText(ctx: Context, cells: Cells, group: RevisionGroup, verdict: Verdict): string {
  if (verdict === "ruled-out") return "";
  if (group.runs.every((r) => r.cell.verdict === verdict)) return "under any firmware";
  return listText(spansWith(ctx.catalogue, cells, group, verdict));
}

function findingsOf(
  ctx: Context,
  cells: Cells,
  name: string,
  all: readonly string[],
  groups: readonly RevisionGroup[],
): readonly Finding[] {
  const found: Finding[] = [];
  for (const group of groups) {
    const verdict = bestOf(group.runs) ?? "ruled-out";
    const span = spanText(ctx, cells, group, verdict);
    const same = found.find((f) => f.verdict === verdict && f.span === span);
    if (same) same.revisions.push(...group.revisions);
    else found.push({ name, all, revisions: [...group.revisions], verdict, span });
  }
  return found;
}

/** On one board: "works from R5 on in revision C and D1; does not work in revision D2" */
function boardSays(findings: readonly Finding[]): string {
  const where = (f: Finding) => (f.revisions.length === f.all.length ? "" : ` in ${revisionsText(f.all, f.revisions)}`);
  return findings.map((f) => [verbs[f.verdict], f.span].filter(Boolean).join(" ") + where(f)).join("; ");
}

export function boardSummaries(ctx: Context, cells: Cells, card: string): readonly BoardSummary[] {
  const bus = ctx.catalogue.cards.get(card)?.bus;
  return [...ctx.catalogue.boards.values()]
    .filter((b) => b.bus === bus)
    .map((board) => {
      const groups = groupsOf(ctx.catalogue, cells, board.id, card);
      const runs = groups.flatMap((g) => g.runs);
      const mark = bestMark(ctx, cells, board, card, bestCell(runs));
      const all = board.revisions.map((r) => r.id);
      const findings = findingsOf(ctx, cells, board.name, all, groups);
      const { verdict: best, evidence = "inferred" } = mark;
      return { board: board.id, name: board.name, groups, best, evidence, mark, findings, says: boardSays(findings) };
    });
}

/** "Works from R5 on in the Skerry 16 and Skerry 16T, under any firmware in the Skerry 24. Not in the Skerry 24 D2." */
export function cardAnswer(summaries: readonly BoardSummary[]): string {
  if (summaries.length === 0) return "No board recorded here has its bus.";
  const findings = summaries.flatMap((s) => s.findings);
  const place = (f: Finding) => (f.revisions.length === f.all.length ? f.name : `${f.name} ${listText(f.revisions)}`);
  const sentences = verdictOrder.flatMap((verdict) => {
    const of = findings.filter((f) => f.verdict === verdict);
    if (of.length === 0) return [];
    if (verdict === "ruled-out") {
      if (of.length === findings.length) return ["As far as is known it works in none of the boards here."];
      return [`Not in the ${listText(of.map(place), "or")}.`];
    }
    const spans = [...new Set(of.map((f) => f.span))];
    const clauses = spans.map((span) => `${span} in the ${listText(of.filter((f) => f.span === span).map(place))}`);
    return [`${capital(verbs[verdict])} ${clauses.join("; ")}.`];
  });
  return sentences.join(" ");
}

/** The mark of a card: its best case on any board, and on which; none when no board has its bus. */
export function cardMark(summaries: readonly BoardSummary[]): MarkView | undefined {
  const rank = (s: BoardSummary) => verdictOrder.indexOf(s.best) * evidenceOrder.length + evidenceOrder.indexOf(s.evidence);
  const [best] = [...summaries].sort((a, b) => rank(a) - rank(b));
  if (best?.mark.of?.kind !== "answer") return undefined;
  if (best.best === "ruled-out") {
    const asks = summaries.flatMap(({ mark }) => (mark.of?.kind === "answer" ? [mark.of.asks] : []));
    return { ...best.mark, of: { kind: "answer", asks: asks.join(" ") } };
  }
  const says = [best.mark.of.says, `in the ${best.name}`].filter(Boolean).join(" ");
  return { ...best.mark, of: { ...best.mark.of, says } };
}

/** How sure that is, in a sentence. */
export function sureOf(summaries: readonly BoardSummary[], worked: number, failed: number): string {
  const tests = [
    worked > 0 ? `${worked} tested ${worked === 1 ? "build has" : "builds have"} it running` : "",
    failed > 0 ? `${failed} ${failed === 1 ? "has" : "have"} trouble with it` : "",
  ];
  const said = listText(tests.filter(Boolean));
  if (said) return `${capital(said)}.`;
  const evidence = evidenceOrder.find((e) => summaries.some((s) => s.best !== "ruled-out" && s.evidence === e));
  if (evidence === "documented") return "Nobody here has tested it; a maker's or club's paper says so.";
  if (evidence === "reported") return "Nobody here has tested it; it rests on what someone said.";
  return "Nobody here has tested it; the rules alone say so.";
}
