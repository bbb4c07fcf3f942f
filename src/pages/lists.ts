// Pages that are mostly a list: the start page, and the index of each kind of record.
import type { Card, Kind, Part } from "../records/index.js";
import { type BoardLine, boardLine, type Tally } from "./board.js";
import type { Cells } from "./cells.js";
import { type Context, countText, head, type LinkView, type MarkView, type PageHead, recordLink } from "./common.js";
import { type ConflictLine, conflictsWhere } from "./conflict.js";
import { folderOf, pageOf, plannerPage } from "./links.js";
import { partTypes } from "./part-types.js";
import { boardSummaries, cardAnswer, cardMark } from "./summary.js";
import { type TestedView, testedWhere } from "./tested.js";

export interface ListLine {
  readonly link: LinkView;
  readonly says: string;
  readonly mark?: MarkView;
  /** What `says` counts, where it counts answers. */
  readonly counts?: Tally;
}

export interface ListPage extends PageHead {
  readonly answer: string;
  readonly groups: readonly { readonly title: string; readonly lines: readonly ListLine[] }[];
}

export interface StartPage extends PageHead {
  readonly club: string;
  readonly about: string;
  readonly boards: readonly BoardLine[];
  readonly counts: readonly { readonly text: string; readonly href: string }[];
  readonly recent: readonly TestedView[];
  readonly trouble: readonly ConflictLine[];
  readonly planner?: string;
}

export function startPage(ctx: Context, cells: Cells): StartPage {
  const c = ctx.catalogue;
  const title = c.club?.name ?? "Records of old computers";
  const index = (kind: Kind) => `${folderOf(kind)}/index.html`;
  const tested = testedWhere(ctx, () => true);
  return {
    ...head("index.html", title, "Which card works in which machine, under which firmware, and how sure that is.", "start"),
    club: title,
    about: c.club?.about ?? "",
    boards: [...c.boards.values()].map((b) => boardLine(ctx, cells, b)),
    counts: [
      { text: countText(c.cards.size, "card"), href: index("card") },
      { text: countText(c.conflicts.size, "known problem"), href: index("conflict") },
      { text: countText(tested.length, "tested build"), href: index("build") },
      { text: countText(c.parts.size, "part"), href: index("part") },
      { text: countText(c.firmware.size, "firmware family", "firmware families"), href: index("firmware") },
    ],
    recent: tested.slice(0, 6),
    trouble: conflictsWhere(ctx, (x) => x.status === "confirmed" && x.effect === "blocks").slice(0, 5),
    planner: plannerPage,
  };
}

function byName(a: ListLine, b: ListLine): number {
  return a.link.text.localeCompare(b.link.text);
}

function grouped(of: ReadonlyMap<string, readonly ListLine[]>): ListPage["groups"] {
  return [...of].map(([title, lines]) => ({ title, lines: [...lines].sort(byName) }));
}

function gather<T>(items: Iterable<T>, titleOf: (item: T) => string, lineOf: (item: T) => ListLine): ListPage["groups"] {
  const groups = new Map<string, ListLine[]>();
  for (const item of items) {
    const title = titleOf(item);
    groups.set(title, [...(groups.get(title) ?? []), lineOf(item)]);
  }
  return grouped(new Map([...groups].sort(([a], [b]) => a.localeCompare(b))));
}

export function cardList(ctx: Context, cells: Cells): ListPage {
  const cards = [...ctx.catalogue.cards.values()];
  const line = (card: Card): ListLine => {
    const summaries = boardSummaries(ctx, cells, card.id);
    const mark = cardMark(summaries);
    return {
      link: { text: card.name, href: pageOf("card", card.id) },
      says: cardAnswer(summaries),
      ...(mark ? { mark } : {}),
    };
  };
  return {
    ...head("cards/index.html", "Cards", `${cards.length} cards, by what they are for.`, "cards"),
    answer: `${cards.length} cards, by what they are for. The mark is the best that any board here can do with it.`,
    groups: gather(cards, (c) => c.does[0] ?? "other", line),
  };
}

export function conflictList(ctx: Context): ListPage {
  const lines = conflictsWhere(ctx, () => true);
  const titles = { confirmed: "Confirmed", suspected: "Suspected: tests wanted", disproved: "Disproved" } as Readonly<
    Record<string, string>
  >;
  const groups = new Map<string, ListLine[]>();
  for (const l of lines) {
    const title = titles[l.statusCss] ?? l.status;
    groups.set(title, [...(groups.get(title) ?? []), { link: l.link, says: l.symptom, mark: l.mark }]);
  }
  const suspected = lines.filter((l) => l.statusCss === "suspected").length;
  const answer = `${lines.length} known problems, each by what you would see. ${suspected} of them ${suspected === 1 ? "is" : "are"} only suspected and would be settled by a test.`;
  return { ...head("conflicts/index.html", "Known problems", answer, "conflicts"), answer, groups: grouped(groups) };
}

export function buildList(ctx: Context): ListPage {
  const lines = testedWhere(ctx, () => true);
  const titles = new Map<string, ListLine[]>();
  for (const t of lines) {
    const title = ctx.catalogue.boards.get(t.board)?.name ?? "Other";
    titles.set(title, [...(titles.get(title) ?? []), { link: t.link, says: `${t.date}, ${t.by}: ${t.on}`, mark: t.mark }]);
  }
  const questions = [...ctx.catalogue.builds.values()].filter((b) => !b.result);
  const groups = [...titles].map(([title, of]) => ({ title, lines: of }));
  if (questions.length > 0) {
    groups.push({
      title: "Questions, not tests",
      lines: questions.map((b) => ({ link: recordLink(ctx.catalogue, "build", b.id), says: b.summary ?? "" })),
    });
  }
  const worked = lines.filter((l) => l.mark.verdict === "workable").length;
  const answer = `${lines.length} machines were tested and written down, newest first: ${worked} worked, ${lines.length - worked} failed or worked in part.`;
  return { ...head("builds/index.html", "Tested builds", answer, "builds"), answer, groups };
}

export function partList(ctx: Context): ListPage {
  const line = (part: Part): ListLine => ({ link: recordLink(ctx.catalogue, "part", part.id), says: part.summary ?? "" });
  const answer = `${ctx.catalogue.parts.size} generic parts that a switched machine is built from, with the source of each figure.`;
  return {
    ...head("parts/index.html", "Parts", answer, "parts"),
    answer,
    groups: gather(ctx.catalogue.parts.values(), (p) => plural(partTypes[p.type]), line),
  };
}

function plural(word: string): string {
  if (word === "switch") return "Switches";
  if (word === "sundry") return "Sundries";
  return `${word.charAt(0).toUpperCase()}${word.slice(1)}s`;
}

export function firmwareList(ctx: Context): ListPage {
  const families = [...ctx.catalogue.firmware.values()];
  const answer = `${countText(families.length, "family", "families").replace(/^./, (c) => c.toUpperCase())} of firmware, each with its releases in their true order.`;
  const lines = families.map((f) => ({
    link: recordLink(ctx.catalogue, "firmware", f.id),
    says: f.versions.map((v) => v.id).join(" \u2192 "),
  }));
  return { ...head("firmware/index.html", "Firmware", answer, "firmware"), answer, groups: [{ title: "Families", lines }] };
}

const countedLine = ({ says, counts }: BoardLine) => ({ says, ...(counts ? { counts } : {}) });

export function boardList(ctx: Context, cells: Cells): ListPage {
  const lines = [...ctx.catalogue.boards.values()].map((b) => ({
    link: recordLink(ctx.catalogue, "board", b.id),
    ...countedLine(boardLine(ctx, cells, b)),
  }));
  const buses = [...ctx.catalogue.buses.values()].map((b) => ({ link: recordLink(ctx.catalogue, "bus", b.id), says: b.summary ?? "" }));
  const answer = `${countText(lines.length, "board").replace(/^./, (c) => c.toUpperCase())}. Choose yours to see which cards it takes.`;
  return {
    ...head("boards/index.html", "Boards", answer, "boards"),
    answer,
    groups: [
      { title: "Boards", lines },
      { title: "Buses", lines: buses },
    ],
  };
}
