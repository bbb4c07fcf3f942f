// Gaps in random records: a kind of resource or a current that nobody wrote down, or that is said to be unknown.
import { type Board, type Card, type Claims, type ResourceKind, resourceKinds } from "../../../src/records/index.js";
import type { Random } from "../../support/solver/random.js";

/** Now and then a record leaves something out, or says that nobody knows. The looser the world, the seldomer. */
export function withGaps(r: Random, tight: number, card: Card): Card {
  if (r.next() >= 0.25 * tight) return card;
  const how = r.pick(["no claims", "unknown", "none", "entry", "entry", "position", "position", "empty", "chain", "main"] as const);
  const entries = typeof card.claims === "object" ? card.claims : [];
  const settings = card.settings ?? [];
  switch (how) {
    case "no claims": {
      const { claims: _, ...rest } = card;
      return rest;
    }
    case "main":
      return JSON.parse(JSON.stringify(card, (key, value) => (key === "main" ? undefined : value))) as Card;
    case "chain": {
      const { chain: _, ...rest } = card;
      return rest;
    }
    case "unknown":
    case "none":
      return { ...card, claims: how };
    case "empty":
      return { ...card, claims: [...entries, {}] };
    case "entry": {
      const at = r.int(0, entries.length - 1);
      return { ...card, claims: entries.map((entry, i) => (i === at ? gap(r, entry) : entry)) };
    }
    case "position": {
      if (settings.length === 0) return card;
      const [s, p] = [r.int(0, settings.length - 1), r.int(0, 1)];
      const spoken = resourceKinds.filter((kind) => settings[s]!.positions.some((position) => position[kind] !== undefined));
      if (spoken.length === 0) return card;
      const spoil = (i: number, positions: (typeof settings)[number]["positions"]) =>
        positions.map((position, at) => (i === s && at === p ? gap(r, position, spoken) : position));
      return { ...card, settings: settings.map((setting, i) => ({ ...setting, positions: spoil(i, setting.positions) })) };
    }
  }
}

export function withGapsOnBoard(r: Random, tight: number, board: Board): Board {
  const fixed = board.fixed.map((part) => (r.next() < 0.15 * tight ? gap(r, part) : part));
  const chance = () => r.next() < 0.05 * tight;
  const rails = board.rails.map((rail) => without(rail, chance() ? "board_A" : chance() ? "per_slot_A" : undefined));
  const slots = board.slots.map((slot) =>
    without(slot, chance() ? "longest_mm" : chance() ? "highest_mm" : chance() ? "bus_master" : undefined),
  );
  const told = without({ ...board, fixed, rails, slots }, chance() ? "total_W" : undefined);
  if (r.next() >= 0.08 * tight) return told;
  const { memory, ...rest } = told;
  return typeof memory === "object" && r.next() < 0.5
    ? { ...rest, memory: { options: memory.options } }
    : { ...rest, ...(r.next() < 0.5 ? { memory: "unknown" } : {}) };
}

function without<T extends object>(of: T, key: keyof T | undefined): T {
  if (key === undefined) return of;
  const { [key]: _, ...rest } = of;
  return rest as T;
}

/** One kind of resource left out or called unknown. */
function gap<T extends Claims>(r: Random, of: T, kinds: readonly ResourceKind[] = resourceKinds): T {
  const kind = r.pick(kinds);
  if (r.next() < 0.3) return { ...of, [kind]: "unknown" };
  const { [kind]: _, ...rest } = of;
  return rest as T;
}
