// The answer for a card on a board as pages show it: the sentence, the facts, what to do, what to get, where it is written.
import type { Answer, UnknownFact } from "../planning/index.js";
import { costWords } from "../words/index.js";
import { cellAsks } from "./asks.js";
import type { Cell } from "./cells.js";
import { type Context, type FactView, type LinkView, type MarkView, markOf, type RefView, recordLink, refView } from "./common.js";

export interface UnknownView extends FactView {
  readonly how: string;
}

export interface ConditionView extends FactView {
  readonly ways: readonly { readonly says: string; readonly costs: string; readonly part?: LinkView }[];
}

export interface ReasonsView {
  readonly mark: MarkView;
  readonly says: string;
  /** What stands against it. */
  readonly against: readonly FactView[];
  readonly conditions: readonly ConditionView[];
  readonly unknowns: readonly UnknownView[];
  /** The smallest changes that would help. */
  readonly repairs: readonly string[];
  /** What the evidence rests on, weakest first. */
  readonly rests: readonly FactView[];
  readonly near: readonly { readonly build: LinkView; readonly differs: string }[];
  readonly history: readonly FactView[];
}

function refs(ctx: Context, of: { readonly refs: readonly Parameters<typeof refView>[1][] }): readonly RefView[] {
  return of.refs.map((r) => refView(ctx, r));
}

export function unknownView(ctx: Context, fact: UnknownFact): UnknownView {
  return { says: fact.says, how: fact.how, refs: refs(ctx, fact) };
}

export function answerView(ctx: Context, answer: Answer, mark: MarkView): ReasonsView {
  const best = answer.combinations[0];
  const unknowns = answer.unknowns.length > 0 ? answer.unknowns : (best?.unknowns ?? []);
  return {
    mark,
    says: saysOf(answer),
    against: answer.reasons.flatMap((r) => r.facts.map((f) => ({ says: f.says, refs: refs(ctx, f) }))),
    conditions: (best?.conditions ?? []).map((c) => ({
      says: c.says,
      refs: refs(ctx, c),
      ways: c.ways.map((w) => ({
        says: w.says,
        costs: costWords[w.costs] ?? w.costs,
        ...(w.part ? { part: recordLink(ctx.catalogue, "part", w.part) } : {}),
      })),
    })),
    unknowns: unknowns.map((u) => unknownView(ctx, u)),
    repairs: answer.repairs.map((r) => r.says),
    rests: (best?.rests ?? []).map((n) => ({ says: n.says, refs: refs(ctx, n) })),
    near: (best?.nearMatches ?? []).map((n) => ({ build: recordLink(ctx.catalogue, "build", n.build), differs: n.differs })),
    history: answer.history.map((f) => ({ says: f.says, refs: refs(ctx, f) })),
  };
}

export function cellView(ctx: Context, cell: Cell): ReasonsView {
  return answerView(ctx, cell.answer, markOf(cell.verdict, cell.evidence, { kind: "answer", asks: cellAsks(cell) }));
}

/** What the answer comes to, where the lists below it do not say it already. */
function saysOf(answer: Answer): string {
  switch (answer.verdict) {
    case "workable":
      return "Nothing known stands against it.";
    case "conditional":
      return "";
    case "ruled-out":
      return answer.reasons.some((r) => r.facts.length > 0) ? "" : answer.says;
    case "unknown":
      return answer.unknowns.length > 0 || answer.combinations.length > 0 ? "" : answer.says;
    default:
      return answer.verdict satisfies never;
  }
}
