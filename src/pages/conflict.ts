// A conflict's page: what is seen first, then whom it meets, the way out, the cause, and what it rests on.
import { rangeText } from "../catalogue/index.js";
import { bytes, type Conflict, sizeText } from "../records/index.js";
import { classWords, costWords, effectWords, statusWords } from "../words/index.js";
import {
  type Context,
  capital,
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
import { ownWords } from "./search/own-words.js";
import { type TestedView, testedWhere } from "./tested.js";

export interface ConflictLine {
  readonly link: LinkView;
  readonly symptom: string;
  readonly effect: string;
  readonly status: string;
  readonly statusCss: string;
  readonly mark: MarkView;
}

export interface ConflictPage extends PageHead {
  readonly name: string;
  readonly mark: MarkView;
  readonly answer: string;
  readonly symptoms: readonly string[];
  readonly effect: string;
  readonly loss?: string | undefined;
  readonly status: { readonly word: string; readonly means: string; readonly css: string };
  readonly settle?: string | undefined;
  readonly conditions: readonly { readonly says: string; readonly link?: LinkView }[];
  readonly remedies: readonly { readonly says: string; readonly leaves: string; readonly costs: string; readonly part?: LinkView }[];
  readonly cause: string;
  readonly kind: string;
  readonly evidence: readonly { readonly grade: string; readonly says: string; readonly by: string; readonly build?: LinkView }[];
  readonly tested: readonly TestedView[];
  readonly notes?: string | undefined;
  readonly sources: readonly SourceView[];
}

/** The mark of a conflict says what becomes of the machine as long as nothing is done about it; not known when only suspected. */
export function conflictMark(conflict: Conflict): MarkView {
  const grade = conflict.evidence[0]?.grade;
  const of = { kind: "problem", conflict: conflict.id, effect: conflict.effect, status: conflict.status } as const;
  if (conflict.status === "disproved") return { ...markOf("workable", grade, of), word: "disproved", label: "disproved" };
  if (conflict.status === "suspected") return { ...markOf("unknown", grade, of), word: "suspected", label: "suspected" };
  const verdict = { blocks: "ruled-out", degrades: "conditional", cosmetic: "workable" } as const;
  const { word } = effectWords[conflict.effect];
  return { ...markOf(verdict[conflict.effect], grade, of), word, label: word };
}

export function conflictLine(ctx: Context, conflict: Conflict): ConflictLine {
  return {
    link: recordLink(ctx.catalogue, "conflict", conflict.id),
    symptom: conflict.symptoms[0] ?? "",
    effect: effectWords[conflict.effect].word,
    status: statusWords[conflict.status].word,
    statusCss: statusWords[conflict.status].css,
    mark: conflictMark(conflict),
  };
}

export function conflictsWhere(ctx: Context, speaks: (conflict: Conflict) => boolean): readonly ConflictLine[] {
  const order = { confirmed: 0, suspected: 1, disproved: 2 };
  return [...ctx.catalogue.conflicts.values()]
    .filter(speaks)
    .sort((a, b) => order[a.status] - order[b.status])
    .map((c) => conflictLine(ctx, c));
}

function settingsText(settings: Readonly<Record<string, string | readonly string[]>> | undefined): string {
  return listText(Object.entries(settings ?? {}).map(([s, p]) => `${s} at ${typeof p === "string" ? p : listText(p, "or")}`));
}

function conditionsOf(ctx: Context, conflict: Conflict): ConflictPage["conditions"] {
  const { when } = conflict;
  const out: { says: string; link?: LinkView }[] = [];
  if (when.boards) {
    for (const b of when.boards) {
      out.push({
        says: b.revisions ? `revision ${listText(b.revisions, "or")}` : "any revision",
        link: recordLink(ctx.catalogue, "board", b.board),
      });
    }
  }
  for (const r of when.firmware ?? []) out.push({ says: rangeText(r), link: recordLink(ctx.catalogue, "firmware", r.family) });
  for (const c of when.cards ?? []) {
    const says = [
      c.revisions ? `revision ${listText(c.revisions, "or")}` : "",
      settingsText(c.settings),
      c.slots ? `in slot ${listText(c.slots, "or")}` : "",
      c.edge ? `in a ${c.edge} slot` : "",
      c.even_disabled ? "even when switched off" : "",
    ].filter(Boolean);
    out.push({ says: says.join(", ") || "in any slot, whatever its settings", link: recordLink(ctx.catalogue, "card", c.card) });
  }
  if (when.adjacent) out.push({ says: "The first two cards stand in neighbouring slots." });
  if (when.memory_at_least) out.push({ says: `${sizeText(bytes(when.memory_at_least))} of memory or more is fitted.` });
  if (when.memory_at_most) out.push({ says: `${sizeText(bytes(when.memory_at_most))} of memory or less is fitted.` });
  if (when.modes_at_least) out.push({ says: `The machine is switched between ${when.modes_at_least} modes or more.` });
  return out;
}

export function boardsOf(conflict: Conflict): readonly string[] {
  return [...new Set((conflict.when.boards ?? []).map((b) => b.board))];
}

function answerOf(conflict: Conflict): string {
  if (conflict.status === "disproved") return "This was suspected once and is not so. Nothing needs doing.";
  const remedy = conflict.remedies?.[0];
  const way = remedy ? ` ${sentence(remedy.says)}` : " No way out is known.";
  if (conflict.status === "suspected")
    return `Nobody knows yet whether this is so. ${conflict.settle ? `To settle it: ${conflict.settle}` : ""}`.trim();
  if (conflict.effect === "blocks") return `They do not work together like this.${way}`;
  if (conflict.effect === "degrades")
    return `It works, with a loss: ${conflict.loss ?? "see below"}.${remedy ? way : ""}`.replace("..", ".");
  return `It only looks odd; nothing is lost.${remedy ? way : ""}`;
}

function sentence(text: string): string {
  const s = capital(text.trim());
  return /[.?]$/.test(s) ? s : `${s}.`;
}

export function conflictPage(ctx: Context, conflict: Conflict): ConflictPage {
  const answer = answerOf(conflict);
  const status = statusWords[conflict.status];
  const leaves = { nothing: "Nothing remains of it.", cosmetic: "It only looks odd afterwards.", degrades: "A loss remains" } as const;
  const mark = conflictMark(conflict);
  return {
    ...recordHead(ctx, "conflict", conflict.id, conflict.name, `${conflict.symptoms[0]} ${answer}`, "conflicts"),
    name: conflict.name,
    mark,
    answer,
    symptoms: conflict.symptoms,
    effect: effectWords[conflict.effect].word,
    loss: conflict.loss,
    status,
    settle: conflict.settle,
    conditions: conditionsOf(ctx, conflict),
    remedies: (conflict.remedies ?? []).map((r) => ({
      says: sentence(r.says),
      leaves: r.leaves === "degrades" ? `${leaves.degrades}${r.loss ? `: ${r.loss}` : "."}` : leaves[r.leaves],
      costs: costWords[r.costs] ?? r.costs,
      ...(r.part ? { part: recordLink(ctx.catalogue, "part", r.part) } : {}),
    })),
    cause: conflict.cause,
    kind: classWords[conflict.class] ?? conflict.class,
    evidence: conflict.evidence.map((e) => ({
      grade: e.grade,
      says: e.says,
      by: [e.by, e.date].filter(Boolean).join(", "),
      ...(e.build ? { build: recordLink(ctx.catalogue, "build", e.build) } : {}),
    })),
    tested: testedWhere(ctx, (b) => b.result?.conflicts?.includes(conflict.id) ?? false),
    notes: conflict.notes,
    sources: sourcesView(conflict.sources),
    search: {
      ...ownWords.conflict(conflict, ctx.catalogue),
      answer,
      boards: boardsOf(conflict).map((b) => recordName(ctx.catalogue, "board", b)),
      verdict:
        conflict.status === "suspected"
          ? "not known"
          : conflict.status === "disproved"
            ? "works"
            : mark.verdict === "ruled-out"
              ? "no"
              : mark.verdict === "conditional"
                ? "works if"
                : "works",
    },
  };
}
