// Disproved conflicts that somebody who has these cards may have heard of: shown as history, counting for nothing.

import { conflictsAmong, fact, ref } from "../../encoding/index.js";
import type { ResolvedBuild } from "../../machine/index.js";
import type { Fact } from "./answer.js";

export function disproved(question: ResolvedBuild): Fact[] {
  const wanted = new Set(question.cards.map((c) => c.card.id));
  return conflictsAmong(question.catalogue, question.board.id, [...wanted])
    .filter((c) => c.status === "disproved")
    .filter((c) => !c.when.boards || c.when.boards.some((b) => b.board === question.board.id))
    .filter((c) => (c.when.cards ?? []).every((x) => wanted.has(x.card)) && (c.when.cards ?? []).length > 0)
    .map((c) => fact("conflict", `Once believed, since disproved: ${c.name}.`, ref("conflict", c.id)));
}
