// The picker of a card's page: what a person can say of their machine, and which of the cases on the page answer it.
import { mainMemory } from "../catalogue/index.js";
import { bytes, type Card, sizeText } from "../records/index.js";
import type { Cells } from "./cells.js";
import { type Context, recordName } from "./common.js";
import { type CellPlace, cellAnchor } from "./links.js";
import type { BoardSummary } from "./summary.js";

export interface PickerOption {
  readonly value: string;
  readonly text: string;
}

export interface Picker {
  readonly boards: readonly { readonly board: string; readonly name: string; readonly revisions: readonly PickerBoard[] }[];
  /** Revisions of the card; empty when its record knows one kind. */
  readonly cardRevisions: readonly PickerOption[];
}

/** One board revision; the value is its id. */
export interface PickerBoard extends PickerOption {
  /** The value is the anchor of the answers for that version. */
  readonly versions: readonly PickerOption[];
  /** Empty when the board's record names no choice of memory. */
  readonly memories: readonly PickerOption[];
}

/** What was picked; what is empty was left open. */
export interface Picked {
  /** Anchors of the version, or of every version of the board revision. */
  readonly anchors: readonly string[];
  readonly memory: string;
  readonly cardRevision: string;
}

export function pickerOf(ctx: Context, cells: Cells, summaries: readonly BoardSummary[], card: Card): Picker {
  const places = summaries.flatMap((s) =>
    (ctx.catalogue.boards.get(s.board)?.revisions ?? []).flatMap((r) => cells.columns(s.board, r.id)),
  );
  const texts = versionTexts(places, (family) => recordName(ctx.catalogue, "firmware", family));
  const cardRevisions = (card.revisions ?? []).map((r) => ({ value: r.id, text: r.id }));
  return {
    boards: summaries.map((s) => {
      const board = ctx.catalogue.boards.get(s.board);
      const options = ((board && mainMemory(board)?.options) ?? []).map((option) => bytes(option));
      const memories = options.length > 1 ? options.map((size) => ({ value: String(size), text: sizeText(size) })) : [];
      const revisions = (board?.revisions ?? []).map((r) => ({
        value: r.id,
        text: `${s.name} ${r.id}`,
        versions: cells.columns(s.board, r.id).map((column) => ({
          value: cellAnchor({ board: s.board, revision: r.id, ...column }),
          text: texts(column),
        })),
        memories,
      }));
      return { board: s.board, name: s.name, revisions };
    }),
    cardRevisions: cardRevisions.length > 1 ? cardRevisions : [],
  };
}

type Release = Pick<CellPlace, "family" | "version">;

/**
 * What a release is called in the lists: by its version, with the name of its family where another family has a version called the same.
 * No two are called the same, whatever board they are on: what was picked on one board is found again on the next by its text.
 */
function versionTexts(releases: readonly Release[], nameOf: (family: string) => string): (release: Release) => string {
  const keyOf = ({ family, version }: Release) => `${family}|${version}`;
  const forms = new Map(
    releases.map((r) => [keyOf(r), [r.version, `${nameOf(r.family)} ${r.version}`, `${nameOf(r.family)} (${r.family}): ${r.version}`]]),
  );
  const uses = new Map<string, number>();
  for (const form of [...forms.values()].flatMap((own) => [...new Set(own)])) uses.set(form, (uses.get(form) ?? 0) + 1);
  return (release) => {
    const own = forms.get(keyOf(release)) ?? [];
    return own.find((form) => uses.get(form) === 1) ?? keyOf(release);
  };
}

/** True when answers under these anchors speak of the machine that was picked. */
export function speaksOfMachine(anchors: readonly string[], picked: Picked): boolean {
  return anchors.some((anchor) => picked.anchors.includes(anchor));
}

/** Machines a case is the answer for: each of these amounts of memory with each of these revisions of the card; none named: whatever it is. */
export interface CaseOf {
  /** Bytes. */
  readonly memories: readonly string[];
  readonly cardRevisions: readonly string[];
}

/** True when a case can be the machine that was picked. */
export function mayBe(of: readonly CaseOf[], picked: Picked): boolean {
  const open = (chosen: string, named: readonly string[]) => chosen === "" || named.length === 0 || named.includes(chosen);
  return of.some((one) => open(picked.memory, one.memories) && open(picked.cardRevision, one.cardRevisions));
}
