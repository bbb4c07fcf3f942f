// Runs: neighbouring firmware versions with the same answer, and revisions with the same runs, said as people say them.

import type { Catalogue } from "../catalogue/index.js";
import { itemAt, lastOf } from "../records/index.js";
import type { Cell, Cells } from "./cells.js";
import { listText } from "./common.js";

/** Versions of one family, next to each other in the declared order, with one and the same answer. */
export interface Run {
  readonly family: string;
  readonly versions: readonly string[];
  /** "from R5 on", "up to R4A", "R5.1 alone", "any version" */
  readonly text: string;
  /** The cell of the first version; the others say the same. */
  readonly cell: Cell;
}

/** Revisions of a board on which a card does the same under every version. */
export interface RevisionGroup {
  readonly board: string;
  readonly revisions: readonly string[];
  readonly runs: readonly Run[];
}

/** Versions in words; `bare` when these cannot follow "under": "from R5 on", "up to R4". */
interface Span {
  readonly text: string;
  readonly bare: boolean;
}

export function spanOf(all: readonly string[], versions: readonly string[]): Span {
  const under = (text: string): Span => ({ text, bare: false });
  const first = itemAt(versions, 0);
  const last = lastOf(versions);
  const starts = first === all[0];
  const ends = last === all.at(-1);
  if (starts && ends) return under(all.length === 1 ? first : "any version");
  if (versions.length === 1) return under(`${first} alone`);
  if (ends) return { text: `from ${first} on`, bare: true };
  if (starts) return { text: `up to ${last}`, bare: true };
  return under(versions.length === 2 ? `${first} and ${last}` : `${first} to ${last}`);
}

function sameAnswer(a: Cell, b: Cell): boolean {
  return a.verdict === b.verdict && a.evidence === b.evidence && facts(a) === facts(b);
}

/** What the answer rests on, without its wording: the words may name the version, the facts are the same. */
function facts(cell: Cell): string {
  const of = cell.answer;
  return JSON.stringify([
    of.reasons.map((r) => r.facts.map((f) => [f.rule, f.refs])),
    of.unknowns.map((u) => u.refs),
    of.combinations[0]?.conditions.map((c) => [c.kind, c.refs]),
  ]);
}

export function runsOf(catalogue: Catalogue, cells: Cells, board: string, revision: string, card: string): readonly Run[] {
  const columns = cells.columns(board, revision);
  const runs: { family: string; versions: string[]; cell: Cell }[] = [];
  for (const { family, version } of columns) {
    const cell = cells.at({ board, revision, family, version, card });
    const last = runs.at(-1);
    if (last && last.family === family && sameAnswer(last.cell, cell)) last.versions.push(version);
    else runs.push({ family, versions: [version], cell });
  }
  return runs.map((r) => ({ ...r, text: inFamily(catalogue, columns, r.family, r.versions).text }));
}

type Column = { readonly family: string; readonly version: string };

/** The span of some versions of a family. The family is named where its versions alone would not tell it. */
function inFamily(catalogue: Catalogue, columns: readonly Column[], family: string, versions: readonly string[]): Span {
  const all = columns.filter((c) => c.family === family).map((c) => c.version);
  const span = spanOf(all, versions);
  const others = columns.filter((c) => c.family !== family).map((c) => c.version);
  if (others.length === 0) return span;
  const name = catalogue.firmware.get(family)?.name ?? family;
  if (versions.length === all.length) return { text: `any ${name}`, bare: false };
  return versions.some((v) => others.includes(v)) ? { text: `${name} ${span.text}`, bare: false } : span;
}

/** Spans of versions with one verdict, whatever the evidence: "from R5 on", "under R5 alone". */
export function spansWith(catalogue: Catalogue, cells: Cells, group: RevisionGroup, verdict: Cell["verdict"]): readonly string[] {
  const columns = cells.columns(group.board, itemAt(group.revisions, 0));
  const verdictOf = new Map(group.runs.flatMap((r) => r.versions.map((v) => [`${r.family}|${v}`, r.cell.verdict] as const)));
  const stretches: { family: string; versions: string[] }[] = [];
  let open = false;
  for (const { family, version } of columns) {
    const fits = verdictOf.get(`${family}|${version}`) === verdict;
    const last = stretches.at(-1);
    if (fits && open && last?.family === family) last.versions.push(version);
    else if (fits) stretches.push({ family, versions: [version] });
    open = fits;
  }
  return stretches.map((s) => {
    const { text, bare } = inFamily(catalogue, columns, s.family, s.versions);
    return bare ? text : `under ${text}`;
  });
}

/** The revisions of a board, gathered where the card does the same. */
export function groupsOf(catalogue: Catalogue, cells: Cells, boardId: string, card: string): readonly RevisionGroup[] {
  const board = catalogue.boards.get(boardId);
  if (!board) return [];
  const groups: { key: string; group: { board: string; revisions: string[]; runs: readonly Run[] } }[] = [];
  for (const { id } of board.revisions) {
    const runs = runsOf(catalogue, cells, boardId, id, card);
    const key = JSON.stringify(runs.map((r) => [r.family, r.versions, r.cell.verdict, r.cell.evidence, facts(r.cell)]));
    const same = groups.find((g) => g.key === key);
    if (same) same.group.revisions.push(id);
    else groups.push({ key, group: { board: boardId, revisions: [id], runs } });
  }
  return groups.map((g) => g.group);
}

export function revisionsText(all: readonly string[], some: readonly string[]): string {
  if (some.length === all.length) return all.length === 1 ? `revision ${all[0]}` : "every revision";
  return `revision ${listText(some)}`;
}
