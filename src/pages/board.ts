// A board's page: which cards it takes, how to tell its revisions apart, its slots, addresses, rails and firmware.

import { mainMemory, mainMemoryLiesAnywhere, runsOn } from "../catalogue/index.js";
import { laneText } from "../images/index.js";
import { type Board, type Bus, bytes, hex, known, must, sizeText } from "../records/index.js";
import { mainMemoryLies, type Verdict, verdictOrder } from "../words/index.js";
import { asksOf } from "./asks.js";
import { mapFigures, railFigure, slotFigure } from "./board-figures.js";
import type { Cells } from "./cells.js";
import { type ClaimLine, claimLines, openOfPart } from "./claims.js";
import {
  amps,
  type Context,
  capital,
  countText,
  type LinkView,
  listText,
  type PageHead,
  recordHead,
  recordLink,
  type SourceView,
  sourcesView,
  spanText,
  type ValueView,
  value,
} from "./common.js";
import { type ConflictLine, conflictsWhere } from "./conflict.js";
import { matrixOf, plannerWith } from "./links.js";
import type { Figure } from "./marks.js";
import { ownWords } from "./search/own-words.js";
import { type TestedView, testedWhere, timeFigure } from "./tested.js";

export interface BoardLine {
  readonly link: LinkView;
  readonly maker: string;
  readonly model: string;
  readonly years: string;
  readonly says: string;
  /** What it counts. */
  readonly counts?: Tally;
  readonly summary?: string | undefined;
  readonly revisions: readonly { readonly id: string; readonly tell: string; readonly matrix: string }[];
}

export interface BoardPage extends PageHead {
  readonly name: string;
  readonly answer: string;
  /** What the answer counts. */
  readonly counts?: Tally;
  readonly sure: string;
  readonly summary?: string | undefined;
  readonly facts: readonly { readonly name: string; readonly value: ValueView; readonly code?: boolean }[];
  readonly revisions: readonly {
    readonly id: string;
    readonly date: string;
    readonly tell: string;
    readonly changes: string;
    readonly matrix: LinkView;
    readonly works: string;
    readonly counts: Tally;
  }[];
  readonly slots: readonly {
    readonly id: string;
    readonly kind: string;
    readonly longest: ValueView;
    readonly highest: ValueView;
    readonly opening: string;
    readonly master: ValueView;
    readonly lines: string;
  }[];
  readonly slotDrawing: Figure;
  readonly chain?: string | undefined;
  readonly fixed: readonly {
    readonly name: string;
    readonly on: string;
    readonly lines: readonly ClaimLine[];
    readonly notWritten: string;
  }[];
  readonly maps: readonly { readonly title: string; readonly drawing: Figure }[];
  readonly rails: readonly {
    readonly rail: string;
    readonly on: string;
    readonly limit: ValueView;
    readonly board: ValueView;
    readonly slot: ValueView;
    readonly derate: string;
  }[];
  readonly railDrawing: Figure;
  readonly memory: string;
  readonly firmware: readonly {
    readonly link: LinkView;
    readonly lines: readonly { readonly revision: string; readonly versions: string }[];
  }[];
  readonly sockets: readonly {
    readonly id: string;
    readonly on: string;
    readonly says: string;
    readonly slowest: ValueView;
    readonly pins: readonly { readonly pin: number; readonly carries: string }[];
  }[];
  readonly conflicts: readonly ConflictLine[];
  readonly tested: readonly TestedView[];
  readonly timeDrawing?: Figure | undefined;
  readonly notes?: string | undefined;
  readonly sources: readonly SourceView[];
  readonly planner?: string;
}

/** How many cards do what on a revision, taking each card's best firmware. */
export interface Tally {
  readonly revision: string;
  /** The machine that is counted for, as `asks.ts` writes it. */
  readonly asks: string;
  readonly counts: Readonly<Partial<Record<Verdict, number>>>;
}

export function tally(ctx: Context, cells: Cells, board: Board, revision: string): Tally {
  const counts: Partial<Record<Verdict, number>> = {};
  for (const card of ctx.catalogue.cards.values()) {
    if (card.bus !== board.bus) continue;
    const verdicts = cells.columns(board.id, revision).map((c) => cells.at({ board: board.id, revision, ...c, card: card.id }).verdict);
    const best = verdictOrder.find((v) => verdicts.includes(v));
    if (best) counts[best] = (counts[best] ?? 0) + 1;
  }
  return { revision, asks: asksOf({ board: board.id, revision }), counts };
}

function worksText({ counts }: Tally): string {
  const parts = [
    `${countText(counts.workable ?? 0, "card works", "cards work")}`,
    counts.conditional ? `${counts.conditional} on a condition` : "",
    counts.unknown ? `${counts.unknown} not known` : "",
    counts["ruled-out"] ? `${counts["ruled-out"]} cannot` : "",
  ];
  return listText(parts.filter(Boolean));
}

export function boardLine(ctx: Context, cells: Cells, board: Board): BoardLine {
  const counts = best(ctx, cells, board);
  const says = `${countText(board.slots.length, "slot")}, ${countText(board.revisions.length, "revision")} known`;
  return {
    link: recordLink(ctx.catalogue, "board", board.id),
    maker: board.maker,
    model: board.model,
    years: board.years ?? "",
    says: `${capital(says)}; ${bestText(board, counts)}.`,
    ...(counts ? { counts } : {}),
    summary: board.summary,
    revisions: board.revisions.map((r) => ({ id: r.id, tell: r.tell, matrix: matrixOf(board.id, r.id) })),
  };
}

/** The revision on which most cards work. */
function best(ctx: Context, cells: Cells, board: Board): Tally | undefined {
  const all = board.revisions.map((r) => tally(ctx, cells, board, r.id));
  return [...all].sort((a, b) => (b.counts.workable ?? 0) - (a.counts.workable ?? 0))[0];
}

/** "in revision D1 17 cards work and 2 cannot": revisions differ, so the one that is counted for is named. */
function bestText(board: Board, counts: Tally | undefined): string {
  if (!counts) return "no revision is known";
  return board.revisions.length > 1 ? `in revision ${counts.revision} ${worksText(counts)}` : worksText(counts);
}

const worksOn = (counts: Tally) => ({ works: worksText(counts), counts });

const onText = (revisions: readonly string[] | undefined) => (revisions ? `revision ${listText(revisions)}` : "");

function socketsOf(board: Board): BoardPage["sockets"] {
  const carries = {
    driven: "address line",
    high: "tied high",
    low: "tied low",
    open: "not connected",
    supply: "+5\u202fV",
    rail: "the supply",
  } as const;
  return board.firmware_sockets.map((s) => ({
    id: s.id,
    on: onText(s.revisions),
    says: `${s.pins} pins, ${s.data_width} data bits${s.lane && s.lane !== "whole" ? ` (the ${laneText({ lane: s.lane, width: s.data_width })})` : ""}, wired for a ${s.wired_for}, seen at ${spanText(s.window.base, bytes(s.window.size))} (${sizeText(bytes(s.window.size))})`,
    slowest: value(s.slowest_ns, "ns"),
    pins: (s.upper_pins ?? []).map((p) => ({
      pin: p.pin,
      carries: p.carries === "driven" || p.carries === "rail" ? `${carries[p.carries]} ${p.line ?? ""}` : carries[p.carries],
    })),
  }));
}

function railsOf(board: Board): BoardPage["rails"] {
  const amp = (f: Parameters<typeof value>[0]) => value(f, "", (v) => amps(v as number));
  return board.rails.map((r) => ({
    rail: r.rail,
    on: onText(r.revisions),
    limit: amp(r.limit_A),
    board: amp(r.board_A),
    slot: known(r.per_slot_A) === "any" ? { text: "any", known: true } : amp(r.per_slot_A),
    derate: r.derate === undefined ? "" : `plan with ${Math.round(r.derate * 100)}\u202f%`,
  }));
}

function firmwareOf(ctx: Context, board: Board): BoardPage["firmware"] {
  return board.firmware.flatMap((id) => {
    const family = ctx.catalogue.firmware.get(id);
    if (!family) return [];
    const lines = board.revisions.map((r) => ({
      revision: r.id,
      versions: listText(family.versions.filter((v) => runsOn(family, v, board, r.id)).map((v) => v.id)) || "none",
    }));
    return [{ link: recordLink(ctx.catalogue, "firmware", id), lines }];
  });
}

/** "Memory that can be fitted: 256 KB or 640 KB, from 0x000." */
function memoryText(board: Board): string {
  if (board.memory === "none") return "Main memory: none on the board that takes addresses.";
  const { options, base } = mainMemory(board) ?? {};
  const fitted = options
    ? listText(
        options.map((o) => sizeText(bytes(o))),
        "or",
      )
    : "not written down";
  const lies = mainMemoryLiesAnywhere(board)
    ? mainMemoryLies(board)
    : base === 0
      ? ""
      : ` It begins at ${hex(must(base, "where main memory begins"), 5)}.`;
  return `Memory that can be fitted: ${fitted}.${lies && ` ${lies.trim()}`}`;
}

const emptySlots: Readonly<Record<string, string>> = {
  breaks: "an empty slot breaks it",
  passes: "an empty slot passes it on",
  jumper: "a jumper bridges an empty slot",
  plug: "a plug bridges an empty slot",
  unknown: "what an empty slot does to it is not known",
};

function chainText(bus: Bus | undefined, { chain, slots, empty }: NonNullable<Board["chains"]>[number]): string {
  const name = bus?.chains?.find((c) => c.id === chain)?.name ?? chain;
  return `The ${name} goes ${slots.join(" \u2192 ")}, served first to last; ${emptySlots[String(known(empty))] ?? emptySlots.unknown}.`;
}

export function boardPage(ctx: Context, cells: Cells, board: Board): BoardPage {
  const edges = ctx.catalogue.buses.get(board.bus)?.edges ?? [];
  const edgeCount = [...new Set(board.slots.map((s) => s.edge))].map((e) => `${board.slots.filter((s) => s.edge === e).length} ${e}`);
  const tested = testedWhere(ctx, (b) => b.board === board.id);
  const counts = best(ctx, cells, board);
  const answer = `It has ${countText(board.slots.length, "slot")} (${listText(edgeCount)}) and comes in ${countText(board.revisions.length, "revision")}. With its best firmware ${bestText(board, counts)}.`;
  return {
    ...recordHead(ctx, "board", board.id, board.name, answer, "boards"),
    name: board.name,
    answer,
    ...(counts ? { counts } : {}),
    sure:
      tested.length === 0
        ? "Nobody here has tested a machine with this board yet."
        : `${capital(countText(tested.length, "tested build"))} on this board.`,
    summary: board.summary,
    facts: [
      { name: "Maker", value: value(board.maker) },
      { name: "Marked", value: value(board.model), code: true },
      ...(board.years ? [{ name: "Made", value: value(board.years) }] : []),
      { name: "Bus clock", value: value(board.clock_MHz, "MHz") },
      { name: "Supply in all", value: value(board.total_W, "W") },
      ...(board.total_derate === undefined
        ? []
        : [{ name: "Of it to plan with", value: value(`${Math.round(board.total_derate * 100)}\u202f%`) }]),
    ],
    revisions: board.revisions.map((r) => ({
      id: r.id,
      date: r.date ?? "",
      tell: r.tell,
      changes: r.changes ?? "",
      matrix: { text: `Which card under which firmware in ${r.id}`, href: matrixOf(board.id, r.id) },
      ...worksOn(tally(ctx, cells, board, r.id)),
    })),
    slots: board.slots.map((s) => ({
      id: s.id,
      kind: `${edges.find((e) => e.id === s.edge)?.name ?? s.edge}${s.revisions ? ` (${onText(s.revisions)})` : ""}`,
      longest: value(s.longest_mm, "mm"),
      highest: value(s.highest_mm, "mm"),
      opening: s.opening ?? "its own",
      master: value(s.bus_master, "", (v) => (v ? "yes" : "no")),
      lines:
        [s.interrupts ? `interrupts ${listText(s.interrupts) || "none"} only` : "", s.dma ? `DMA ${listText(s.dma) || "none"} only` : ""]
          .filter(Boolean)
          .join("; ") || "all of its kind",
    })),
    slotDrawing: slotFigure(board),
    chain: board.chains?.map((c) => chainText(ctx.catalogue.buses.get(board.bus), c)).join(" "),
    fixed: board.fixed.map((f) => ({
      name: f.name,
      on: [
        onText(f.revisions),
        f.when_memory
          ? `with ${listText(
              f.when_memory.map((m) => sizeText(bytes(m))),
              "or",
            )} fitted`
          : "",
      ]
        .filter(Boolean)
        .join(", "),
      lines: claimLines(f),
      notWritten: openOfPart(f, board, ctx.catalogue.buses.get(board.bus)),
    })),
    maps: mapFigures(ctx.catalogue, board),
    rails: railsOf(board),
    railDrawing: railFigure(board),
    memory: memoryText(board),
    firmware: firmwareOf(ctx, board),
    sockets: socketsOf(board),
    conflicts: conflictsWhere(ctx, (c) => c.when.boards?.some((b) => b.board === board.id) ?? false),
    tested,
    timeDrawing: timeFigure(tested, board.id),
    notes: board.notes,
    sources: sourcesView(board.sources),
    planner: plannerWith(`?board=${board.id}`),
    search: {
      ...ownWords.board(board),
      answer,
      boards: [board.name],
    },
  };
}
