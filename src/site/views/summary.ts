// The one-sentence answer about a card: on which boards, from which firmware on, how well proven.

import type { Evidence, Verdict } from "../../planning/index.js";
import type { Cells } from "../cells.js";
import { groupsOf, type RevisionGroup, type Run, revisionsText, spansWith } from "../runs.js";
import { evidenceOrder, verdictOrder } from "../words.js";
import { type Context, capital, listText } from "./common.js";

export interface BoardSummary {
  readonly board: string;
  readonly name: string;
  readonly groups: readonly RevisionGroup[];
  readonly best: Verdict;
  readonly evidence: Evidence;
  /** "works from R5 on in revision C and D1" */
  readonly says: string;
}

const verbs: Readonly<Record<Verdict, string>> = {
  workable: "works",
  conditional: "works on a condition",
  unknown: "may work: a fact is missing",
  "ruled-out": "does not work",
};

function bestOf(runs: readonly Run[]): Verdict {
  return verdictOrder.find((v) => runs.some((r) => r.cell.verdict === v)) ?? "unknown";
}

function bestEvidence(runs: readonly Run[], verdict: Verdict): Evidence {
  return evidenceOrder.find((e) => runs.some((r) => r.cell.verdict === verdict && r.cell.evidence === e)) ?? "inferred";
}

function groupSays(ctx: Context, cells: Cells, all: readonly string[], group: RevisionGroup): string {
  const best = bestOf(group.runs);
  const where = group.revisions.length === all.length ? "" : ` in ${revisionsText(all, group.revisions)}`;
  if (best === "ruled-out") return `does not work${where}`;
  const every = group.runs.every((r) => r.cell.verdict === best);
  const under = every ? "under any firmware" : `under ${listText(spansWith(ctx.catalogue, cells, group, best))}`;
  return `${verbs[best]} ${under.replace(/^under (from|up to) /, "$1 ")}${where}`;
}

/** Groups that say the same are said once, for all their revisions. */
function saysOf(ctx: Context, cells: Cells, all: readonly string[], groups: readonly RevisionGroup[]): string {
  const bySaying = new Map<string, string[]>();
  for (const g of groups) {
    if (bestOf(g.runs) === "ruled-out") continue;
    const bare = groupSays(ctx, cells, g.revisions, g);
    bySaying.set(bare, [...(bySaying.get(bare) ?? []), ...g.revisions]);
  }
  if (bySaying.size === 0) return "does not work";
  return [...bySaying].map(([says, on]) => (on.length === all.length ? says : `${says} in ${revisionsText(all, on)}`)).join("; ");
}

export function boardSummaries(ctx: Context, cells: Cells, card: string): readonly BoardSummary[] {
  const bus = ctx.catalogue.cards.get(card)?.bus;
  return [...ctx.catalogue.boards.values()]
    .filter((b) => b.bus === bus)
    .map((board) => {
      const groups = groupsOf(ctx.catalogue, cells, board.id, card);
      const runs = groups.flatMap((g) => g.runs);
      const best = bestOf(runs);
      const all = board.revisions.map((r) => r.id);
      const says = saysOf(ctx, cells, all, groups);
      return { board: board.id, name: board.name, groups, best, evidence: bestEvidence(runs, best), says };
    });
}

/** "Works in the Skerry 16 from R5 on and in the Skerry 24 under any firmware. Not in the Skerry 16T." */
export function cardAnswer(summaries: readonly BoardSummary[]): string {
  const some = summaries.filter((s) => s.best !== "ruled-out");
  const none = summaries.filter((s) => s.best === "ruled-out");
  if (summaries.length === 0) return "No board recorded here has its bus.";
  if (some.length === 0) return `No: as far as is known it works in none of the boards here (${listText(none.map((s) => s.name))}).`;
  const sentences = some.map((s) => `${s.name}: ${s.says}`);
  const not =
    none.length > 0
      ? ` Not in the ${listText(
          none.map((s) => s.name),
          "or",
        )}.`
      : "";
  return `${sentences.map(capital).join(". ")}.${not}`;
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
