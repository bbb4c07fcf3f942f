// A card's page: does it work in mine, with which firmware, what else would I have to get; then its settings and claims.
import { onChain, rangeText } from "../catalogue/index.js";
import { cardFace } from "../drawing/index.js";
import { bytes, type Card, known, listed, sizeText } from "../records/index.js";
import type { Cells } from "./cells.js";
import { type ClaimLine, claimLines, claimText, openOfCard } from "./claims.js";
import {
  amps,
  type Context,
  countText,
  type LinkView,
  listText,
  type MarkView,
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
import { plannerWith } from "./links.js";
import { type Figure, figure } from "./marks.js";
import { type Picker, pickerOf } from "./picker.js";
import { ownWords } from "./search/own-words.js";
import { boardSummaries, cardAnswer, cardMark, sureOf } from "./summary.js";
import { type TestedView, testedWhere, timeFigure } from "./tested.js";
import { type CellView, decidersOf, exceptionsOf, whereView } from "./where.js";

export interface NeedView {
  readonly what: string;
  readonly says: string;
  readonly links: readonly LinkView[];
}

export interface SettingView {
  readonly id: string;
  readonly name: string;
  readonly by: string;
  readonly on?: string | undefined;
  readonly positions: readonly { readonly id: string; readonly how: string; readonly takes: string; readonly factory: boolean }[];
}

export interface CardPage extends PageHead {
  readonly name: string;
  readonly mark?: MarkView | undefined;
  readonly answer: string;
  readonly sure: string;
  readonly summary?: string | undefined;
  readonly facts: readonly { readonly name: string; readonly value: ValueView; readonly code?: boolean }[];
  readonly where: readonly CellView[];
  readonly picker: Picker;
  readonly needs: readonly NeedView[];
  readonly get: readonly NeedView[];
  /** Said near the top, leading to the list; empty when nothing else is needed. */
  readonly besides: string;
  readonly settings: readonly SettingView[];
  readonly impossible: readonly { readonly says: string; readonly why: string }[];
  readonly claims: readonly { readonly when: string; readonly lines: readonly ClaimLine[] }[];
  /** What its record leaves open of what it takes, a sentence each. */
  readonly notWritten: readonly string[];
  readonly power: readonly {
    readonly rail: string;
    readonly on: string;
    readonly idle: ValueView;
    readonly worst: ValueView;
    readonly start: ValueView;
    readonly basis: string;
  }[];
  readonly revisions: readonly { readonly id: string; readonly date: string; readonly tell: string; readonly changes: string }[];
  readonly enable?:
    | {
        readonly how: string;
        readonly points: readonly { readonly id: string; readonly role: string; readonly current: string }[];
        readonly releases: string;
      }
    | undefined;
  readonly panel: readonly { readonly name: string; readonly says: string; readonly signals: readonly string[] }[];
  readonly termination?: string | undefined;
  readonly cooling?: string | undefined;
  readonly conflicts: readonly ConflictLine[];
  readonly tested: readonly TestedView[];
  readonly timeDrawing?: Figure | undefined;
  /** Outline, edge, back plate and its jumper and lever blocks. */
  readonly faceDrawing: Figure;
  readonly notes?: string | undefined;
  readonly sources: readonly SourceView[];
  readonly planner?: string;
}

function needsOf(ctx: Context, card: Card): NeedView[] {
  const n = card.needs;
  const out: NeedView[] = [];
  const c = ctx.catalogue;
  const bus = recordLink(c, "bus", card.bus);
  const edge = c.buses.get(card.bus)?.edges.find((e) => e.id === card.edge);
  const fits = c.buses.get(card.bus)?.edges.filter((e) => e.fits.includes(card.edge) || e.id === card.edge) ?? [];
  out.push({
    what: "slot",
    says: `A free slot of the ${edge?.name ?? card.edge} kind${
      fits.length > 1
        ? ` (fits ${listText(
            fits.map((f) => f.name),
            "or",
          )})`
        : ""
    } on the`,
    links: [bus],
  });
  if (!n) return out;
  if (n.firmware)
    out.push({
      what: "firmware",
      says: listText(n.firmware.map(rangeText), "or"),
      links: [...new Set(n.firmware.map((f) => f.family))].map((f) => recordLink(c, "firmware", f)),
    });
  if (n.features) {
    const says = n.features.map((f) => [...c.firmware.values()].flatMap((w) => w.features ?? []).find((x) => x.id === f)?.says ?? f);
    out.push({ what: "of the firmware", says: listText(says), links: [] });
  }
  if (n.boards) {
    const says = n.boards.map((b) => `${recordName(c, "board", b.board)}${b.revisions ? ` revision ${listText(b.revisions, "or")}` : ""}`);
    out.push({ what: "board", says: listText(says, "or"), links: n.boards.map((b) => recordLink(c, "board", b.board)) });
  }
  if (n.memory_at_least) out.push({ what: "memory", says: `at least ${sizeText(bytes(n.memory_at_least))}`, links: [] });
  if (n.memory_at_most) out.push({ what: "memory", says: `at most ${sizeText(bytes(n.memory_at_most))}`, links: [] });
  if (n.clock_at_most_MHz !== undefined) {
    const clock = value(n.clock_at_most_MHz, "MHz");
    out.push({
      what: "clock",
      says: clock.known
        ? `a bus clock of at most ${clock.text}`
        : `fastest bus clock not known${clock.find ? `; to find out: ${clock.find}` : ""}`,
      links: [],
    });
  }
  if (n.bus_master) out.push({ what: "slot", says: "a slot where a bus master works", links: [] });
  if (n.rails) out.push({ what: "supply", says: `the ${listText(n.rails)} V ${n.rails.length === 1 ? "rail" : "rails"}`, links: [] });
  for (const { id, name } of c.buses.get(card.bus)?.chains ?? [])
    if (onChain(card, id) === "uses") out.push({ what: "chain", says: `a place on the ${name} that no empty slot cuts off`, links: [] });
  return out;
}

function toGet(ctx: Context, card: Card): NeedView[] {
  const n = card.needs;
  const out: NeedView[] = [];
  for (const need of n?.cards ?? []) {
    out.push({ what: "card", says: `${need.why}: one of`, links: need.any_of.map((id) => recordLink(ctx.catalogue, "card", id)) });
  }
  for (const other of n?.other ?? []) out.push({ what: "and", says: other, links: [] });
  for (const p of card.panel ?? [])
    out.push({ what: "lead", says: `${p.name}: ${p.conductors} conductors to the back of the case`, links: [] });
  return out;
}

const setBy = { jumper: "jumper", dip: "DIP switch", software: "software", solder: "solder bridge" } as const;
const senses = {
  "closed-enables": "closing the contact switches it on",
  "open-enables": "opening the contact switches it on",
  "change-over": "a change-over contact: common to on, or common to off",
} as const;

function enableOf(card: Card): CardPage["enable"] {
  const e = card.enable;
  if (!e) return undefined;
  const how =
    e.by === "setting"
      ? `By its setting ${e.setting}, position ${e.off}.`
      : `By contacts on the card${e.sense ? `; ${senses[e.sense]}` : ""}.`;
  const releases = `Off, it lets go of ${listText(e.releases.map((r) => r.replaceAll("-", " ")))}. It keeps its slot and its current.`;
  return {
    how,
    points: (e.points ?? []).map((p) => ({ id: p.id, role: p.role, current: p.current_mA === undefined ? "" : `${p.current_mA}\u202fmA` })),
    releases,
  };
}

function settingsOf(card: Card): SettingView[] {
  return (card.settings ?? []).map((s) => ({
    id: s.id,
    name: s.name,
    by: setBy[s.by],
    on: s.revisions ? `revision ${listText(s.revisions)}` : undefined,
    positions: s.positions.map((p) => ({ id: p.id, how: p.how ?? "", takes: claimText(p), factory: p.id === s.default })),
  }));
}

function numberOf(amount: number | "unknown"): number | undefined {
  return amount === "unknown" ? undefined : amount;
}

/** What a hand can move; what software sets has no place on the card. */
function faceFigure(ctx: Context, card: Card): Figure {
  const blocks = (card.settings ?? []).flatMap(({ id, by, positions, default: factory }) =>
    by === "software" ? [] : [{ id, positions: positions.map((p) => ({ id: p.id, factory: p.id === factory })) }],
  );
  const edge = ctx.catalogue.buses.get(card.bus)?.edges.find((e) => e.id === card.edge)?.name ?? card.edge;
  const face = {
    name: card.name,
    length: numberOf(known(card.room.length_mm)),
    height: numberOf(known(card.room.height_mm)),
    edge,
    plate: card.room.opening === true,
    blocks,
  };
  return figure((prefix, width) => cardFace(face, prefix, width), `face-${card.id}`);
}

function whenText(
  when: Readonly<Record<string, string | readonly string[]>> | undefined,
  revisions: readonly string[] | undefined,
): string {
  const parts = Object.entries(when ?? {}).map(([s, p]) => `${s} at ${typeof p === "string" ? p : listText(p, "or")}`);
  if (revisions) parts.unshift(`revision ${listText(revisions)}`);
  return parts.length > 0 ? `With ${listText(parts)}` : "Always";
}

export function cardPage(ctx: Context, cells: Cells, card: Card): CardPage {
  const summaries = boardSummaries(ctx, cells, card.id);
  const where = whereView(ctx, cells, card.id, summaries);
  const answer = [cardAnswer(summaries), ...decidingText(where)].join(" ");
  const mark = cardMark(summaries);
  const tested = testedWhere(ctx, (b) => b.cards.some((c) => c.card === card.id));
  const worked = tested.filter((t) => t.mark.verdict === "workable").length;
  const r = card.room;
  const get = toGet(ctx, card);
  return {
    ...recordHead(ctx, "card", card.id, card.name, answer, "cards"),
    name: card.name,
    mark,
    answer,
    sure: sureOf(summaries, worked, tested.length - worked),
    summary: card.summary,
    facts: [
      { name: "Maker", value: value(card.maker) },
      { name: "Marked", value: value(card.model), code: true },
      ...(card.years ? [{ name: "Made", value: value(card.years) }] : []),
      { name: "For", value: value(card.does.join(", ")) },
      { name: "Length", value: value(r.length_mm, "mm") },
      { name: "Height", value: value(r.height_mm, "mm") },
      { name: "Slots taken", value: value(`${r.slots ?? 1}${r.opening ? ", and the rear opening" : ""}`) },
    ],
    where,
    picker: pickerOf(ctx, cells, summaries, card),
    needs: needsOf(ctx, card),
    get,
    besides: get.length === 0 ? "" : `you would have to get ${countText(get.length, "other thing")}`,
    settings: settingsOf(card),
    impossible: (card.impossible ?? []).map((i) => ({ says: whenText(i.when, undefined), why: i.why })),
    claims: listed(card.claims)
      .map((c) => ({ when: whenText(c.when, c.revisions), lines: claimLines(c) }))
      .filter((c) => c.lines.length > 0),
    notWritten: openOfCard(card, ctx.catalogue.buses.get(card.bus)),
    power: card.power.map((p) => ({
      rail: p.rail,
      on: p.revisions ? `revision ${listText(p.revisions)}` : "",
      idle: current(p.idle_A),
      worst: current(p.worst_A),
      start: current(p.start_A),
      basis: p.basis ?? "",
    })),
    revisions: (card.revisions ?? []).map((v) => ({ id: v.id, date: v.date ?? "", tell: v.tell, changes: v.changes ?? "" })),
    enable: enableOf(card),
    panel: (card.panel ?? []).map((p) => ({
      name: p.name,
      says: `${p.conductors} conductors${p.connector ? `, ${p.connector} on the card` : ""}, most current in one: ${current(p.current_A).text}`,
      signals: p.signals ?? [],
    })),
    termination: card.termination,
    cooling: card.cooling,
    conflicts: conflictsWhere(ctx, (c) => c.when.cards?.some((x) => x.card === card.id) ?? false),
    tested,
    timeDrawing: timeFigure(tested, card.id),
    faceDrawing: faceFigure(ctx, card),
    notes: card.notes,
    sources: sourcesView(card.sources),
    planner: plannerWith(`?card=${card.id}`),
    search: {
      ...ownWords.card(card),
      answer,
      boards: summaries.filter((s) => s.best !== "ruled-out").map((s) => s.name),
      verdict: mark?.word,
      verdictOn: Object.fromEntries(summaries.map((s) => [s.name, s.mark.word])),
    },
  };
}

/** What decides beside board and firmware, on any board. */
function decidingText(where: readonly CellView[]): readonly string[] {
  const asked = where.flatMap((w) => w.groups.flatMap((g) => g.runs.flatMap((r) => r.asked)));
  const what = decidersOf(asked.flatMap(exceptionsOf));
  return what.length > 0 ? [`In places ${listText(what)} ${what.length > 1 ? "decide" : "decides"} too.`] : [];
}

function current(fact: Parameters<typeof value>[0]): ValueView {
  return value(fact, "", (v) => amps(v as number));
}
