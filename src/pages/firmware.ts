// A firmware family's page: its releases in order, what each brings, and what changed for cards from one to the next.
import { inRange, memoryNeeded } from "../catalogue/index.js";
import { firmwareBars } from "../drawing/index.js";
import type { Verdict } from "../planning/index.js";
import { bytes, type Card, type Firmware, sizeText } from "../records/index.js";
import { verdictOrder } from "../words/index.js";
import type { Cells } from "./cells.js";
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
import { type Figure, figure } from "./marks.js";
import { type TestedView, testedWhere, versionsOf } from "./tested.js";

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
  /** Cards that work from here on, and cards that no longer do. */
  readonly begins: readonly LinkView[];
  readonly ends: readonly LinkView[];
}

export interface FirmwarePage extends PageHead {
  readonly name: string;
  readonly maker: string;
  readonly answer: string;
  readonly summary?: string;
  readonly boards: readonly { readonly link: LinkView; readonly says: string }[];
  readonly order: readonly LinkView[];
  readonly releases: readonly ReleaseView[];
  /** Cards that ask for some of the releases; `takes` says which, as their own records put it. */
  readonly bound: readonly { readonly card: LinkView; readonly takes: string }[];
  /** The best answer for each of those cards on any board that runs a release. */
  readonly boundDrawing?: Figure;
  readonly conflicts: readonly ConflictLine[];
  readonly tested: readonly TestedView[];
  readonly notes?: string;
  readonly sources: readonly SourceView[];
}

/** Cards whose needs name this family. */
function boundCards(ctx: Context, family: Firmware): readonly Card[] {
  return [...ctx.catalogue.cards.values()].filter((c) => c.needs?.firmware?.some((r) => r.family === family.id));
}

/** "R5 to R6", by the card's own record. */
function takes(family: Firmware, card: Card): string {
  const fits = family.versions.map((v) => card.needs!.firmware!.some((r) => inRange(family, v.id, r)));
  const runs: string[] = [];
  for (let i = 0; i < fits.length; i += 1) {
    const from = i;
    while (fits[i] && fits[i + 1]) i += 1;
    if (fits[i]) runs.push(from === i ? family.versions[i]!.id : `${family.versions[from]!.id} to ${family.versions[i]!.id}`);
  }
  return runs.length === 0 ? "none of them" : listText(runs);
}

/** A firmware that is nowhere at home, or that no card is tied to, has nothing to draw. */
function boundFigure(ctx: Context, cells: Cells, family: Firmware, cards: readonly Card[]): Figure | undefined {
  if (cards.length === 0) return undefined;
  const homes = [...ctx.catalogue.boards.values()].flatMap((board) =>
    board.revisions.flatMap(({ id: revision }) =>
      cells
        .columns(board.id, revision)
        .filter((c) => c.family === family.id)
        .map(({ version }) => ({ board, revision, version })),
    ),
  );
  const best = (card: Card, version: string): Verdict => {
    const found = homes
      .filter((h) => h.version === version && h.board.bus === card.bus)
      .map((h) => cells.at({ board: h.board.id, revision: h.revision, family: family.id, version, card: card.id }).verdict);
    return verdictOrder.find((v) => found.includes(v)) ?? "ruled-out";
  };
  const bars = {
    family: family.name,
    releases: family.versions.map(({ id, date }) => ({ id, date })),
    rows: cards.map((card) => ({ name: card.name, verdicts: family.versions.map((v) => best(card, v.id)) })),
  };
  return figure((prefix, width) => firmwareBars(bars, prefix, width), `line-${family.id}`);
}

/** On some board revision both versions run on: did the card's verdict cross from no to anything else, or back? */
function changesAt(ctx: Context, cells: Cells, family: Firmware, index: number): { begins: LinkView[]; ends: LinkView[] } {
  const here = family.versions[index]!.id;
  const before = family.versions[index - 1]?.id;
  const begins: LinkView[] = [];
  const ends: LinkView[] = [];
  if (before === undefined) return { begins, ends };
  for (const card of ctx.catalogue.cards.values()) {
    let gained = false;
    let lost = false;
    for (const board of ctx.catalogue.boards.values()) {
      if (board.bus !== card.bus) continue;
      for (const { id: revision } of board.revisions) {
        const columns = cells.columns(board.id, revision).filter((c) => c.family === family.id);
        if (!columns.some((c) => c.version === here) || !columns.some((c) => c.version === before)) continue;
        const at = (version: string) => cells.at({ board: board.id, revision, family: family.id, version, card: card.id }).verdict;
        const was = at(before);
        const is = at(here);
        if (was === "ruled-out" && is !== "ruled-out") gained = true;
        if (was !== "ruled-out" && is === "ruled-out") lost = true;
      }
    }
    if (gained) begins.push(recordLink(ctx.catalogue, "card", card.id));
    if (lost) ends.push(recordLink(ctx.catalogue, "card", card.id));
  }
  return { begins, ends };
}

export function firmwarePage(ctx: Context, cells: Cells, family: Firmware): FirmwarePage {
  const feature = (id: string) => family.features?.find((f) => f.id === id)?.says ?? id;
  const first = family.versions[0]!.id;
  const last = family.versions.at(-1)!.id;
  const bound = boundCards(ctx, family);
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
    bound: bound.map((card) => ({ card: recordLink(ctx.catalogue, "card", card.id), takes: takes(family, card) })),
    boundDrawing: boundFigure(ctx, cells, family, bound),
    conflicts: conflictsWhere(ctx, (c) => c.when.firmware?.some((r) => r.family === family.id) ?? false),
    tested: testedWhere(
      ctx,
      (b) => (b.firmware ?? ctx.catalogue.boards.get(b.board)?.firmware[0]) === family.id && versionsOf(b).length > 0,
    ),
    notes: family.notes,
    sources: sourcesView(family.sources),
    search: {
      kind: "firmware",
      answer,
      boards: family.boards.map((b) => recordName(ctx.catalogue, "board", b.board)),
      names: [
        family.id,
        ...family.versions.map((v) => v.id),
        ...family.versions.map((v) => (typeof v.image.crc32 === "string" ? v.image.crc32 : "")),
      ].filter(Boolean),
      symptoms: [],
    },
  };
}
