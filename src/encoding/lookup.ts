// Look-ups over a catalogue that are made once and kept with it, so that one answer costs the same in a large club as in a small one.
import type { Catalogue } from "../catalogue/index.js";
import type { Build, Conflict } from "../records/index.js";

interface Lookup {
  /** Conflicts by the first card they name. */
  readonly byCard: ReadonlyMap<string, readonly Conflict[]>;
  /** Conflicts that name no card, by each board they name; "" holds those that name neither. */
  readonly byBoard: ReadonlyMap<string, readonly Conflict[]>;
  /** Tested builds by "board/card", once for each kind of card in them; those without a card by "board/". */
  readonly tested: ReadonlyMap<string, readonly Build[]>;
}

const kept = new WeakMap<Catalogue, Lookup>();

function lookup(catalogue: Catalogue): Lookup {
  const before = kept.get(catalogue);
  if (before) return before;
  const conflicts = [...catalogue.conflicts.values()];
  const cardOf = (c: Conflict) => c.when.cards?.[0]?.card;
  const made: Lookup = {
    byCard: groupBy(conflicts, (c) => cardOf(c) ?? []),
    byBoard: groupBy(conflicts, (c) => (cardOf(c) === undefined ? (c.when.boards?.map((b) => b.board) ?? "") : [])),
    tested: groupBy(
      [...catalogue.builds.values()].filter((b) => b.result),
      (b) => (b.cards.length === 0 ? `${b.board}/` : b.cards.map((c) => `${b.board}/${c.card}`)),
    ),
  };
  kept.set(catalogue, made);
  return made;
}

/** Groups by one key or several; under each key an item stands once. */
function groupBy<T>(items: readonly T[], keys: (item: T) => string | readonly string[]): Map<string, T[]> {
  const out = new Map<string, T[]>();
  for (const item of items)
    for (const key of new Set([keys(item)].flat())) {
      const group = out.get(key);
      if (group) group.push(item);
      else out.set(key, [item]);
    }
  return out;
}

/** Conflicts that could concern this board with these cards, by id. */
export function conflictsAmong(catalogue: Catalogue, board: string, cards: readonly string[]): Conflict[] {
  const { byCard, byBoard } = lookup(catalogue);
  const ofCards = [...new Set(cards)].flatMap((id) => byCard.get(id) ?? []);
  return [...ofCards, ...(byBoard.get(board) ?? []), ...(byBoard.get("") ?? [])].sort((a, b) => a.id.localeCompare(b.id));
}

/** Tested builds on this board with at least one of these cards, by id; for a board without a card, those that had none either. */
export function testedOn(catalogue: Catalogue, board: string, cards: readonly string[]): Build[] {
  const { tested } = lookup(catalogue);
  const ids = cards.length === 0 ? [""] : cards;
  return [...new Set(ids.flatMap((card) => tested.get(`${board}/${card}`) ?? []))].sort((a, b) => a.id.localeCompare(b.id));
}
