// The cases of a cell in words: what each is asked of, its verdict with its own evidence, and for which slots and settings it holds.
// Cases with one answer are said as one; those of several revisions and versions that say the same are set once.
import type { CellCase, Latitude } from "../planning/index.js";
import { sizeText } from "../records/index.js";
import { verdictOrder } from "../words/index.js";
import { asksFirmware, asksOf } from "./asks.js";
import { answerView, cellView, type ReasonsView } from "./cell.js";
import type { CellKey, Cells } from "./cells.js";
import { type Context, capital, listText, markOf } from "./common.js";
import { cellAnchor } from "./links.js";
import type { CaseOf } from "./picker.js";
import type { Run } from "./runs.js";

export interface CaseView extends ReasonsView {
  /** "with revision B of the card and 512K of memory"; empty where that decides nothing. */
  readonly having: string;
  readonly of: readonly CaseOf[];
  /** The slots and positions of settings for which it holds, and how the test had them. */
  readonly placing: readonly string[];
}

/** The answer asked of some board revisions under some versions, where it is one and the same. */
export interface AskedView {
  readonly anchors: readonly string[];
  /** "revision C and D1 with R5" */
  readonly of: string;
  /** Best first. */
  readonly cases: readonly CaseView[];
  readonly near: ReasonsView["near"];
}

type Told = Omit<CaseView, "having" | "of">;

/** What is asked of a run, revision by revision and version by version. */
export function askedViews(ctx: Context, cells: Cells, card: string, board: string, revisions: readonly string[], run: Run): AskedView[] {
  const asked = revisions.flatMap((revision) =>
    run.versions.map((version) => {
      const key = { board, revision, family: run.family, version, card };
      const cases = caseViews(ctx, cells.casesAt(key));
      return { revision, version, cases, near: cellView(ctx, cells.at(key)).near };
    }),
  );
  return [...groupBy(asked, ({ cases, near }) => JSON.stringify([cases, near])).values()].map((same) => ({
    anchors: same.map(({ revision, version }) => cellAnchor({ board, revision, family: run.family, version })),
    of: capital(askedText(same)),
    cases: same
      .slice(0, 1)
      .flatMap(({ revision, version, cases }) => cases.map((c) => askingOf({ board, revision, family: run.family, version, card }, c))),
    near: same[0]?.near ?? [],
  }));
}

/** The case with a question it is the answer to: its first machine. */
function askingOf({ board, revision, family, version, card }: CellKey, one: CaseView): CaseView {
  const [memory] = one.of[0]?.memories ?? [];
  const [cardRevision] = one.of[0]?.cardRevisions ?? [];
  const asks = [
    asksOf({ board, revision, ...(memory === undefined ? {} : { memory: Number(memory) }) }),
    asksFirmware(family, version),
    asksOf({ cards: [{ card, ...(cardRevision === undefined ? {} : { revision: cardRevision }) }] }),
  ].join("&");
  return { ...one, mark: { ...one.mark, of: { kind: "answer", asks } } };
}

/** "revision B and C with R5 and R6; revision D1 with R6" */
function askedText(at: readonly { readonly revision: string; readonly version: string }[]): string {
  const versionsOf = (revision: string) => at.filter((a) => a.revision === revision).map((a) => a.version);
  const byVersions = groupBy([...new Set(at.map((a) => a.revision))], (r) => listText(versionsOf(r)));
  return [...byVersions].map(([versions, of]) => `revision ${listText(of)} with ${versions}`).join("; ");
}

/** Cases that say the same become one. */
function caseViews(ctx: Context, cases: readonly CellCase[]): CaseView[] {
  const told = cases.map((one) => ({ one, told: toldView(ctx, one) }));
  return [...groupBy(told, (t) => JSON.stringify(t.told)).values()]
    .flatMap((same) => {
      const of = casesOf(
        cases,
        same.map((s) => s.one),
      );
      return same.slice(0, 1).map(({ told }): CaseView => ({ ...told, having: havingText(of), of }));
    })
    .sort((a, b) => verdictOrder.indexOf(a.mark.verdict) - verdictOrder.indexOf(b.mark.verdict));
}

/** What some of the cases have, said by as little as tells them from the others. */
function casesOf(all: readonly CellCase[], some: readonly CellCase[]): CaseOf[] {
  const memoriesOf = (of: readonly CellCase[]) => [...new Set(of.flatMap((c) => c.memory ?? []))].map(String);
  const revisionsOf = (of: readonly CellCase[]) => [...new Set(of.flatMap((c) => c.cardRevision ?? []))];
  const unlessAll = (named: readonly string[], of: readonly string[]) => (named.length === of.length ? [] : named);
  const byRevision = [...groupBy(some, (c) => c.cardRevision).values()];
  return [...groupBy(byRevision, (of) => memoriesOf(of).join()).values()].map((same) => ({
    memories: unlessAll(memoriesOf(same.flat()), memoriesOf(all)),
    cardRevisions: unlessAll(revisionsOf(same.flat()), revisionsOf(all)),
  }));
}

function havingText(of: readonly CaseOf[]): string {
  const texts = of.map(({ memories, cardRevisions }) =>
    listText([
      ...(cardRevisions.length > 0 ? [`revision ${listText(cardRevisions, "or")} of the card`] : []),
      ...(memories.length > 0 ? [`${listText(memories.map(Number).map(sizeText), "or")} of memory`] : []),
    ]),
  );
  const said = texts.filter(Boolean);
  return said.length > 0 ? `with ${said.join(", or with ")}` : "";
}

function toldView(ctx: Context, { answer, latitude }: CellCase): Told {
  const [best] = answer.combinations;
  const mark = markOf(answer.verdict, best?.evidence ?? "inferred");
  const view = answerView(ctx, answer, mark);
  const limited = latitude.some((l) => l.limited);
  return {
    ...view,
    near: [],
    says: answer.verdict === "workable" && limited ? "Placed and set so, nothing known stands against it." : view.says,
    // Which revision and version it is about stands above it.
    rests: view.rests.map((r, at) => ({ ...r, says: `${capital(best?.rests[at]?.basis ?? r.says.replace(/\.$/, ""))}.` })),
    placing: placingText(latitude, best?.evidence === "bench" ? best.cards[0] : undefined),
  };
}

/** Only what is limited is named: a slot or position that is not there would not do. */
function placingText(
  latitude: readonly Latitude[],
  tested: { slot: string; settings: Readonly<Record<string, string>> } | undefined,
): string[] {
  const free = latitude.filter((l) => !l.limited && l.values.length > 1);
  const held = latitude.filter((l) => l.limited).map((l) => positionText(l.setting, listText(l.values, "or")));
  if (held.length > 0 && free.some((l) => l.setting !== undefined)) held.push("other settings as you like");
  const lines = held.length > 0 ? [`${capital(held.join("; "))}.`] : latitude.length > 0 ? ["In any slot and with any settings."] : [];
  if (tested && latitude.some((l) => l.values.length > 1)) {
    const so = [positionText(undefined, tested.slot), ...Object.entries(tested.settings).map(([id, at]) => positionText(id, at))];
    lines.push(`Seen on the bench ${listText(so)}.`);
  }
  return lines;
}

function positionText(setting: string | undefined, values: string): string {
  return setting === undefined ? `in slot ${values}` : `${setting} at ${values}`;
}

function groupBy<T, K>(items: readonly T[], keyOf: (item: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return groups;
}
