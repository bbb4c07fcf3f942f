// Wherever a revision is named, the board or card has it.
import { listed } from "../../records/index.js";
import { boardMatches } from "../names.js";
import { type Ref, ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { noSuch } from "../say.js";

export const revisionNames: Rule = {
  name: "revision-names",
  says: "A revision that is named is one the board or card has.",
  why: "What is said of a revision that does not exist is said of no machine.",
  mend: "Write the revision as the board or card lists it, or add it there.",
  scope: ["board", "firmware", "card", "conflict"],
  *check({ catalogue }): Iterable<Draft> {
    for (const { from, match } of boardMatches(catalogue)) {
      const board = catalogue.boards.get(match.board);
      if (!board) continue;
      yield* strange(`revision of ${board.name}`, match.revisions, board.revisions, from, ref("board", board.id, "revisions"));
    }
    for (const board of catalogue.boards.values()) {
      const lists = ["slots", "fixed", "rails", "firmware_sockets"] as const;
      for (const list of lists)
        for (const [i, thing] of board[list].entries())
          yield* strange("revision of this board", thing.revisions, board.revisions, ref("board", board.id, list, i));
    }
    for (const card of catalogue.cards.values()) {
      for (const list of ["claims", "settings", "power"] as const)
        for (const [i, thing] of listed<{ readonly revisions?: readonly string[] }>(card[list]).entries())
          yield* strange("revision of this card", thing.revisions, card.revisions ?? [], ref("card", card.id, list, i));
    }
    for (const conflict of catalogue.conflicts.values()) {
      for (const [i, c] of (conflict.when.cards ?? []).entries()) {
        const card = catalogue.cards.get(c.card);
        if (!card) continue;
        const from = ref("conflict", conflict.id, "when", "cards", i);
        yield* strange(`revision of ${card.name}`, c.revisions, card.revisions ?? [], from, ref("card", card.id, "revisions"));
      }
    }
  },
};

function* strange(
  what: string,
  names: readonly string[] | undefined,
  declared: readonly { readonly id: string }[],
  from: Ref,
  home?: Ref,
): Iterable<Draft> {
  for (const [i, name] of (names ?? []).entries()) {
    if (declared.some((r) => r.id === name)) continue;
    yield noSuch(
      what,
      name,
      declared.map((r) => r.id),
      { ...from, pointer: `${from.pointer}/revisions/${i}` },
      home,
    );
  }
}
