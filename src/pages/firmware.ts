// A firmware family's page: its releases in order, what each brings, and what changed for cards from one to the next.
import { inRange, memoryNeeded } from "../catalogue/index.js";
import { bytes, type Card, type Firmware, itemAt, lastOf, sizeText } from "../records/index.js";
import { evidenceOrder, verdictOrder } from "../words/index.js";
import { cellAsks } from "./asks.js";
import { type BarView, barOf, type OnRelease } from "./bar.js";
import type { Cell, Cells } from "./cells.js";
import {
  type Context,
  countText,
  type LinkView,
  listText,
  type PageHead,
  recordHead,
  recordLink,
  recordName,
  type SourceView,
  sourcesView,
  type ValueView,
  value,
} from "./common.js";
import { type ConflictLine, conflictsWhere } from "./conflict.js";
import { slug } from "./links.js";
import { ownWords } from "./search/own-words.js";
import { type TestedView, testedWhere, versionsOf } from "./tested.js";

/** A card that works with a release and not with the one before, or the other way round. */
export interface ChangeView {
  readonly card: LinkView;
  /** Names of the boards where it changes. */
  readonly on: readonly string[];
  /** One machine on which it does: the question with this release, and the same with the one before. */
  readonly asks: string;
  readonly before: string;
}

export interface ReleaseView {
  readonly id: string;
  readonly anchor: string;
  readonly date: string;
  readonly changes: string;
  readonly adds: readonly string[];
  readonly removes: readonly string[];
  readonly boards: string;
  readonly memory: string;
  readonly image: readonly { readonly name: string; readonly value: ValueView }[];
  readonly circulating: readonly { readonly as: string; readonly size: string; readonly crc32: string; readonly note: string }[];
  /** Cards that work from here on, and cards that no longer do, each on the boards where that is so. */
  readonly begins: readonly ChangeView[];
  readonly ends: readonly ChangeView[];
}

export interface FirmwarePage extends PageHead {
  readonly name: string;
  readonly maker: string;
  readonly answer: string;
  readonly summary?: string | undefined;
  readonly boards: readonly { readonly link: LinkView; readonly says: string }[];
  readonly order: readonly LinkView[];
  readonly releases: readonly ReleaseView[];
  /** Cards that ask for some of the releases; `takes` says which, as their own records put it. */
  readonly bound: readonly {
    readonly card: LinkView;
    readonly takes: string;
    /** The best answer for it with each release, on any board that runs the release. */
    readonly best: readonly BestOn[];
    readonly bar: BarView;
  }[];
  readonly conflicts: readonly ConflictLine[];
  readonly tested: readonly TestedView[];
  readonly notes?: string | undefined;
  readonly sources: readonly SourceView[];
}

/** Cards whose needs name this family. */
function boundCards(ctx: Context, family: Firmware): readonly Card[] {
  return [...ctx.catalogue.cards.values()].filter((c) => c.needs?.firmware?.some((r) => r.family === family.id));
}

/** "R5 to R6", by the card's own record. */
function takes(family: Firmware, card: Card): string {
  const fits = family.versions.map((v) => (card.needs?.firmware ?? []).some((r) => inRange(family, v.id, r)));
  const runs: string[] = [];
  for (let i = 0; i < fits.length; i += 1) {
    const from = i;
    while (fits[i] && fits[i + 1]) i += 1;
    if (fits[i])
      runs.push(from === i ? itemAt(family.versions, i).id : `${itemAt(family.versions, from).id} to ${itemAt(family.versions, i).id}`);
  }
  return runs.length === 0 ? "none of them" : listText(runs);
}

/** The best answer for a card with a release, on any board that runs it: the question that gave it, or all when all say no. */
interface BestOn extends OnRelease {
  readonly asks: string;
}

function bestOn(ctx: Context, cells: Cells, family: Firmware, card: Card): BestOn[] {
  const homes = [...ctx.catalogue.boards.values()]
    .filter((b) => b.bus === card.bus)
    .flatMap((b) => b.revisions.map((r) => ({ board: b.id, revision: r.id })));
  return family.versions.map(({ id: version }) => {
    const found = homes
      .filter((h) => cells.columns(h.board, h.revision).some((c) => c.family === family.id && c.version === version))
      .map((h) => cells.at({ ...h, family: family.id, version, card: card.id }));
    const verdict = verdictOrder.find((v) => found.some((c) => c.verdict === v)) ?? "ruled-out";
    const of = found
      .filter((c) => c.verdict === verdict)
      .sort((a, b) => evidenceOrder.indexOf(a.evidence) - evidenceOrder.indexOf(b.evidence));
    const [surest] = of;
    return {
      family: family.id,
      version,
      verdict,
      evidence: surest?.evidence ?? "inferred",
      ...(surest ? { answer: surest.answer } : {}),
      asks: (verdict === "ruled-out" ? of : of.slice(0, 1)).map(cellAsks).join(" "),
    };
  });
}

/** "No longer works" is said of what worked, "from here on works" of what now does: what is not known is neither. */
const works = ({ verdict }: Cell) => verdict === "workable" || verdict === "conditional";
const fails = ({ verdict }: Cell) => verdict === "ruled-out";

/** On which boards, that both versions run on, does a card begin or cease to work? */
function changesAt(ctx: Context, cells: Cells, family: Firmware, index: number): Pick<ReleaseView, "begins" | "ends"> {
  const [before, here] = [family.versions[index - 1]?.id, family.versions[index]?.id];
  if (before === undefined || here === undefined) return { begins: [], ends: [] };
  const homes = [...ctx.catalogue.boards.values()].flatMap((board) =>
    board.revisions
      .map((r) => ({ board, revision: r.id, columns: cells.columns(board.id, r.id).filter((c) => c.family === family.id) }))
      .filter(({ columns }) => [before, here].every((version) => columns.some((c) => c.version === version))),
  );
  const pairs = (card: Card) =>
    homes
      .filter(({ board }) => board.bus === card.bus)
      .map(({ board, revision }) => {
        const at = (version: string) => cells.at({ board: board.id, revision, family: family.id, version, card: card.id });
        return { name: board.name, was: at(before), is: at(here) };
      });
  const changed = (from: (c: Cell) => boolean, to: (c: Cell) => boolean) =>
    [...ctx.catalogue.cards.values()].flatMap((card): ChangeView[] => {
      const found = pairs(card).filter(({ was, is }) => from(was) && to(is));
      const [first] = found;
      if (!first) return [];
      const on = [...new Set(found.map((f) => f.name))];
      return [{ card: recordLink(ctx.catalogue, "card", card.id), on, asks: cellAsks(first.is), before: cellAsks(first.was) }];
    });
  return { begins: changed(fails, works), ends: changed(works, fails) };
}

export function firmwarePage(ctx: Context, cells: Cells, family: Firmware): FirmwarePage {
  const feature = (id: string) => family.features?.find((f) => f.id === id)?.says ?? id;
  const first = itemAt(family.versions, 0).id;
  const last = lastOf(family.versions).id;
  const bound = boundCards(ctx, family).map((card) => {
    const best = bestOn(ctx, cells, family, card);
    return { card: recordLink(ctx.catalogue, "card", card.id), takes: takes(family, card), best, bar: barOf(best) };
  });
  const answer = `${family.versions.length} releases, ${first} to ${last}, in this order: ${listText(family.versions.map((v) => v.id))}. ${bound.length === 0 ? "No card is tied to any of them." : `${countText(bound.length, "card is", "cards are").replace(/^./, (c) => c.toUpperCase())} tied to some of them.`}`;
  return {
    ...recordHead(ctx, "firmware", family.id, family.name, answer, "firmware"),
    name: family.name,
    maker: family.maker,
    answer,
    summary: family.summary,
    boards: family.boards.map((b) => ({
      link: recordLink(ctx.catalogue, "board", b.board),
      says: b.revisions ? `revision ${listText(b.revisions)}` : "every revision",
    })),
    order: family.versions.map((v) => ({ text: v.id, href: `#${slug(v.id)}` })),
    releases: family.versions.map((v, i) => ({
      id: v.id,
      anchor: slug(v.id),
      date: v.date ?? "",
      changes: v.changes ?? "",
      adds: (v.adds ?? []).map(feature),
      removes: (v.removes ?? []).map(feature),
      boards: v.boards
        ? listText(v.boards.map((b) => `${recordName(ctx.catalogue, "board", b.board)}${b.revisions ? ` ${listText(b.revisions)}` : ""}`))
        : "all boards of the family",
      memory: memoryNeeded(v) > 0 ? `needs ${sizeText(memoryNeeded(v))} of memory` : "",
      image: [
        { name: "Size", value: value(v.image.size, "", (s) => sizeText(bytes(s as number | string))) },
        { name: "CRC-32", value: value(v.image.crc32) },
        ...(v.image.sha1 === undefined ? [] : [{ name: "SHA-1", value: value(v.image.sha1) }]),
        ...(v.image.sha256 === undefined ? [] : [{ name: "SHA-256", value: value(v.image.sha256) }]),
      ],
      circulating: (v.circulating ?? []).map((c) => ({
        as: c.as.replaceAll("-", " "),
        size: sizeText(bytes(c.size)),
        crc32: c.crc32,
        note: c.note ?? "",
      })),
      ...changesAt(ctx, cells, family, i),
    })),
    bound,
    conflicts: conflictsWhere(ctx, (c) => c.when.firmware?.some((r) => r.family === family.id) ?? false),
    tested: testedWhere(
      ctx,
      (b) => (b.firmware ?? ctx.catalogue.boards.get(b.board)?.firmware[0]) === family.id && versionsOf(b).length > 0,
    ),
    notes: family.notes,
    sources: sourcesView(family.sources),
    search: {
      ...ownWords.firmware(family),
      answer,
      boards: family.boards.map((b) => recordName(ctx.catalogue, "board", b.board)),
    },
  };
}
