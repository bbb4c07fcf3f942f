// Look-ups over a catalogue that are made once and kept with it, so that one answer costs the same in a large club as in a small one.
import type { Catalogue } from "../catalogue/index.js";
import type { Build, Conflict } from "../records/index.js";

interface Lookup {
  /** Conflicts by the first card they name; "" holds those that name none. */
  readonly conflicts: ReadonlyMap<string, readonly Conflict[]>;
  /** Tested builds by board. */
  readonly tested: ReadonlyMap<string, readonly Build[]>;
}

const kept = new WeakMap<Catalogue, Lookup>();

function lookup(catalogue: Catalogue): Lookup {
  const before = kept.get(catalogue);
  if (before) return before;
  const made: Lookup = {
    conflicts: groupBy([...catalogue.conflicts.values()], (c) => c.when.cards?.[0]?.card ?? ""),
    tested: groupBy(
      [...catalogue.builds.values()].filter((b) => b.result),
      (b) => b.board,
    ),
  };
  kept.set(catalogue, made);
  return made;
}

function groupBy<T>(items: readonly T[], key: (item: T) => string): Map<string, T[]> {
  const out = new Map<string, T[]>();
  for (const item of items) {
    const group = out.get(key(item));
    if (group) group.push(item);
    else out.set(key(item), [item]);
  }
  return out;
}

/** Conflicts that could concern a machine with these cards, in the order of the catalogue. */
export function conflictsAmong(catalogue: Catalogue, cards: readonly string[]): Conflict[] {
  const { conflicts } = lookup(catalogue);
  return ["", ...new Set(cards)].flatMap((id) => conflicts.get(id) ?? []).sort((a, b) => a.id.localeCompare(b.id));
}

export function testedOn(catalogue: Catalogue, board: string): readonly Build[] {
  return lookup(catalogue).tested.get(board) ?? [];
}
