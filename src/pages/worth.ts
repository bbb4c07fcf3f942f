// Worth finding out: the missing facts behind unknown cells of all matrices, those that could settle most first.
import { type CellQuestion, type OpenFact, openFacts } from "../planning/index.js";
import type { Cells } from "./cells.js";
import { type Context, countText, head, type LinkView, type PageHead, type RefView, recordLink, refView } from "./common.js";

export interface WorthFact {
  readonly says: string;
  readonly how: string;
  readonly refs: readonly RefView[];
  /** "It could settle 6 answers by itself." */
  readonly settles: string;
  /** Cards whose answers hang on it. */
  readonly cards: readonly LinkView[];
}

export interface WorthPage extends PageHead {
  readonly answer: string;
  readonly facts: readonly WorthFact[];
}

export function worthPage(ctx: Context, cells: Cells): WorthPage {
  const facts = openFacts(ctx.catalogue, unknownCells(ctx, cells));
  const open = new Set(facts.flatMap((f) => [...f.settles, ...f.among]).map((q) => Object.values(q).join("|")));
  const answer =
    facts.length === 0
      ? "No answer in these records hangs on a missing fact."
      : `${countText(open.size, "answer")} in the matrices ${open.size === 1 ? "hangs" : "hang"} on ${countText(facts.length, "missing fact")}. A measurement at the top of this list settles most.`;
  return {
    ...head("worth-finding-out.html", "Worth finding out", answer, "sure"),
    answer,
    facts: facts.map((f) => worthFact(ctx, f)),
    search: { kind: "help", answer, boards: [], names: ["unknown", "not known", "measure"], symptoms: [] },
  };
}

function worthFact(ctx: Context, fact: OpenFact): WorthFact {
  const { settles, among } = fact;
  const alone = settles.length > 0 ? `It could settle ${countText(settles.length, "answer")} by itself` : "It settles no answer by itself";
  const cards = [...new Set([...settles, ...among].map((q) => q.card))];
  return {
    says: fact.says,
    how: fact.how,
    refs: fact.refs.map((r) => refView(ctx, r)),
    settles: among.length > 0 ? `${alone}, and is one of several that decide ${among.length} more.` : `${alone}.`,
    cards: cards.map((id) => recordLink(ctx.catalogue, "card", id)),
  };
}

/** The same cells the matrices show. */
function* unknownCells(ctx: Context, cells: Cells): Generator<CellQuestion> {
  for (const board of ctx.catalogue.boards.values())
    for (const { id: revision } of board.revisions)
      for (const { family, version } of cells.columns(board.id, revision))
        for (const card of ctx.catalogue.cards.values()) {
          if (card.bus !== board.bus) continue;
          const { verdict } = cells.at({ board: board.id, revision, family, version, card: card.id });
          if (verdict === "unknown") yield { board: board.id, revision, family, firmware: version, card: card.id };
        }
}
