// A build's page. With a result: what came of it, on exactly which machine, and so what it proves. Without: the question it asks.
import { cardsOn, cardsOnOrOff, copyName, labelCopies } from "../catalogue/index.js";
import { slotPlan } from "../drawing/index.js";
import { plan, reasonsSentence, repairsSentence } from "../planning/index.js";
import { type Build, type BuildCard, bytes, known, type Mode, pictureOf, sizeText } from "../records/index.js";
import { costCells, costHeads, exactTestText, outcomeWords, thenText, verdictWords } from "../words/index.js";
import { asksOf } from "./asks.js";
import type { CardBar } from "./bar.js";
import { planSlots } from "./board-figures.js";
import type { Cells, Judged } from "./cells.js";
import {
  type Context,
  capital,
  countText,
  type LinkView,
  listText,
  type MarkView,
  markOf,
  type PageHead,
  recordHead,
  recordLink,
  recordName,
  type SourceView,
  sourcesView,
} from "./common.js";
import { plannerWith } from "./links.js";
import { type Figure, figure } from "./marks.js";
import { ownWords } from "./search/own-words.js";
import { outcomeMark, revisionOf, versionsOf } from "./tested.js";
import { waysOutCosts } from "./ways-out-costs.js";

export interface PhotoView {
  /** A file that goes with the pages. */
  readonly src?: string;
  readonly href?: string | undefined;
  readonly alt: string;
  readonly says: string;
}

/** A file that is not there is named and not led to; the data check tells of it. */
function photoView(ctx: Context, photo: string, build: string): PhotoView {
  const { file, address, says } = pictureOf(photo);
  const alt = `Picture of ${build}`;
  if (file !== undefined && ctx.pictures?.has(file)) return { src: file, alt, says };
  return { href: address, alt, says: [file === undefined ? "" : `${file}, kept by the club`, says].filter(Boolean).join(", ") };
}

export interface BuildPage extends PageHead {
  readonly name: string;
  /** What the bench saw; of a question, what the records say. */
  readonly mark: MarkView;
  /** Of a tested build: what the records, this test among them, say of the same machine. */
  readonly now?: MarkView;
  readonly tested: boolean;
  readonly answer: string;
  readonly sure: string;
  readonly summary?: string | undefined;
  readonly board: LinkView;
  readonly revision: string;
  readonly memory: string;
  readonly firmware: LinkView;
  readonly cards: readonly { readonly link: LinkView; readonly revision: string; readonly slot: string; readonly settings: string }[];
  readonly slotDrawing?: Figure | undefined;
  readonly modes: readonly {
    readonly id: string;
    readonly name: string;
    readonly firmware: string;
    readonly cards: string;
    readonly mark?: MarkView | undefined;
    readonly symptoms: readonly string[];
    readonly notes: string;
  }[];
  readonly symptoms: readonly string[];
  readonly faults: readonly string[];
  readonly conflicts: readonly LinkView[];
  readonly remedies: readonly string[];
  readonly question?: string | undefined;
  readonly proves: readonly string[];
  /** Of a question that nothing answers: why not, what would help, and what each way out costs (no rows where there is one or none). */
  readonly refused?:
    | {
        readonly why: readonly string[];
        readonly whyComplete: string;
        readonly helps: readonly string[];
        readonly helpsComplete: string;
        readonly costs: { readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] };
      }
    | undefined;
  readonly photo?: PhotoView | undefined;
  readonly by: string;
  readonly date: string;
  readonly notes?: string | undefined;
  readonly sources: readonly SourceView[];
  readonly planner?: string;
  /** Each card over the releases, for a machine of several modes: why it has them. */
  readonly bars?: readonly CardBar[];
  /** Address of its build sheet, when it is a switched machine that can be wired. */
  readonly sheet?: string | undefined;
}

/** The cards that are on in a mode by what each copy is called; all cards of the build when no mode is given. */
function namesOn(ctx: Context, build: Build, mode: Pick<Mode, "cards" | "on_or_off"> = {}): readonly string[] {
  return namesOf(ctx, build, cardsOn(build.cards, mode));
}

function namesOf(ctx: Context, build: Build, cards: readonly BuildCard[]): readonly string[] {
  const labels = labelCopies(build.cards, (card) => recordName(ctx.catalogue, "card", card));
  return cards.map((c) => labels.get(copyName(c)) ?? c.card);
}

function onText(ctx: Context, build: Build, mode: Mode): string {
  const on = mode.cards || mode.on_or_off ? listText(namesOn(ctx, build, mode)) || "no card" : "all cards";
  const open = listText(namesOf(ctx, build, cardsOnOrOff(build.cards, mode)));
  return open === "" ? on : `${on}; on or off, as comes easiest: ${open}`;
}

function modesOf(ctx: Context, build: Build): BuildPage["modes"] {
  return (build.modes ?? []).map((m) => {
    const seen = build.result?.modes?.find((r) => r.mode === m.id);
    return {
      id: m.id,
      name: m.name ?? m.id,
      firmware: m.firmware ?? "left open",
      cards: onText(ctx, build, m),
      mark: seen ? outcomeMark(seen.outcome, build.id, m.id) : undefined,
      symptoms: seen?.symptoms ?? [],
      notes: seen?.notes ?? "",
    };
  });
}

/** A tested build covers exactly what it had. */
function provesOf(ctx: Context, build: Build): readonly string[] {
  const { result } = build;
  if (!result) return [];
  const board = recordName(ctx.catalogue, "board", build.board);
  const machine = `${board}, revision ${revisionOf(build)}`;
  const exact = (build.modes ?? []).filter((m) => !m.on_or_off);
  const worked = exact.filter((m) => (result.modes?.find((r) => r.mode === m.id)?.outcome ?? result.outcome) === "worked");
  if (worked.length === 0) return [`It proves nothing to work. It shows what happens on the ${machine}, when set up exactly like this.`];
  return worked.map((m) => {
    const on = namesOn(ctx, build, m);
    const what = listText(on) || (build.cards.length > 0 ? "The board with every card off" : "The bare board");
    return `${what} ${on.length < 2 ? "runs" : "run together"} under ${m.firmware ?? "the firmware it had"} on the ${machine}, in these slots and with these settings.`;
  });
}

function drawingOf(ctx: Context, build: Build): Figure | undefined {
  const board = ctx.catalogue.boards.get(build.board);
  if (!board || !build.cards.some((c) => c.slot)) return undefined;
  const names = namesOn(ctx, build);
  const cards = build.cards.flatMap((c, i) => {
    const card = ctx.catalogue.cards.get(c.card);
    if (!c.slot || !card) return [];
    const name = names[i] ?? card.name;
    return [
      { name, slot: c.slot, takes: card.room.slots ?? 1, length_mm: known(card.room.length_mm), usesOpening: card.room.opening ?? false },
    ];
  });
  return figure((prefix, width) => slotPlan({ board: board.name, slots: planSlots(board), cards }, prefix, width), `slots-${build.id}`);
}

function answerOf(ctx: Context, build: Build): string {
  const names = listText(namesOn(ctx, build));
  const board = `${recordName(ctx.catalogue, "board", build.board)}${revisionOf(build) ? ` ${revisionOf(build)}` : ""}`;
  const under = versionsOf(build).length > 0 ? ` under ${listText(versionsOf(build))}` : "";
  const { result } = build;
  if (!result) return `A question, not a test: can ${names} work on the ${board}${under}?`;
  const faults = result.faults_open?.length ? ` ${capital(countText(result.faults_open.length, "fault"))} left open.` : "";
  const what = { worked: "It works", partly: "It works in part", failed: "It did not work" }[result.outcome];
  return `${what}: ${names || "the bare board"} on the ${board}${under}.${faults}`;
}

/** The build as a question. */
function questionOf({ result: _result, notes: _notes, id: _id, name: _name, ...question }: Build): Partial<Build> {
  return question;
}

/** What benches say of a build that asks: tested exactly so by somebody, in all its parts, or not. */
function untestedText({ answer }: Judged): string {
  const best = answer.combinations[0];
  if (best?.exactTest) return exactTestText(best.exactTest);
  if (best?.evidence === "bench") return "Everything it asks for has been seen running on a bench; the planner names the tests.";
  return "No tested build had exactly this.";
}

function refusedOf({ catalogue }: Context, build: Build, { verdict }: Judged): BuildPage["refused"] {
  if (build.result || verdict !== "ruled-out") return undefined;
  const answer = plan(catalogue, build);
  if (answer.kind !== "answer") return undefined;
  const costs = waysOutCosts(catalogue, answer);
  return {
    why: answer.reasons.map((r) => r.says),
    whyComplete: reasonsSentence(answer),
    helps: answer.repairs.map((r) => `${r.says} ${thenText(r)}`),
    helpsComplete: repairsSentence(answer),
    costs: { heads: costHeads, rows: costs.length > 1 ? costs.map(costCells) : [] },
  };
}

export function buildPage(ctx: Context, cells: Cells, build: Build): BuildPage {
  const { result } = build;
  const now = cells.of(build);
  const nowMark = markOf(now.verdict, now.evidence, { kind: "answer", asks: asksOf(questionOf(build)) });
  const answer = answerOf(ctx, build);
  const names = namesOn(ctx, build);
  const family = build.firmware ?? ctx.catalogue.boards.get(build.board)?.firmware[0] ?? "";
  const hours = result?.hours ? `, ${result.hours} hours of running` : "";
  return {
    ...recordHead(ctx, "build", build.id, build.name, answer, "builds"),
    name: build.name,
    mark: result ? outcomeMark(result.outcome, build.id) : nowMark,
    ...(result ? { now: nowMark } : {}),
    tested: result !== undefined,
    answer,
    sure: result ? `Tested by ${result.by}, ${result.date}${hours}.` : untestedText(now),
    summary: build.summary,
    board: recordLink(ctx.catalogue, "board", build.board),
    revision: revisionOf(build) || "left open",
    memory: build.memory === undefined ? "not written down" : sizeText(bytes(build.memory)),
    firmware: recordLink(ctx.catalogue, "firmware", family),
    cards: build.cards.map((c, i) => ({
      link: { ...recordLink(ctx.catalogue, "card", c.card), text: names[i] ?? c.card },
      revision: c.revision ?? "",
      slot: c.slot ?? "left open",
      settings: Object.entries(c.settings ?? {})
        .map(([s, p]) => `${s}: ${p}`)
        .join(", "),
    })),
    slotDrawing: drawingOf(ctx, build),
    modes: modesOf(ctx, build),
    symptoms: result?.symptoms ?? [],
    faults: result?.faults_open ?? [],
    conflicts: (result?.conflicts ?? []).map((c) => recordLink(ctx.catalogue, "conflict", c)),
    remedies: result?.remedies ?? [],
    question: result?.open_question,
    proves: provesOf(ctx, build),
    refused: refusedOf(ctx, build, now),
    photo: result?.photo === undefined ? undefined : photoView(ctx, result.photo, build.name),
    by: result?.by ?? "",
    date: result?.date ?? "",
    notes: build.notes,
    sources: sourcesView(build.sources),
    planner: plannerWith(`?build=${build.id}`),
    search: {
      ...ownWords.build(build),
      answer,
      boards: [recordName(ctx.catalogue, "board", build.board)],
      verdict: result ? verdictWords[outcomeWords[result.outcome].verdict].word : nowMark.word,
    },
  };
}
