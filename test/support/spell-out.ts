// Test records are written short: here what they leave out is written as none, so that they say all that the planner must know.
import { mayBeMain } from "../../src/catalogue/index.js";
import { type Board, type Card, type Claims, listed, resourceKinds } from "../../src/records/index.js";

type Filled<T> = T & Claims;

/** The card, with every kind of resource it does not speak of written as none, or as left to its settings; it passes the chain on. */
export function spellOutCard(card: Card): Card {
  const settings = card.settings?.map((setting) => {
    const spoken = resourceKinds.filter((kind) => setting.positions.some((p) => p[kind] !== undefined));
    return {
      ...setting,
      positions: setting.positions.map((p) => filled(paged(p), (kind) => (spoken.includes(kind) ? "none" : undefined))),
    };
  });
  const bySettings = (kind: (typeof resourceKinds)[number]) =>
    settings?.some((s) => s.positions.some((p) => p[kind] !== undefined)) ? ("settings" as const) : ("none" as const);
  const passing = { ...card, chain: card.chain ?? ("passes" as const) };
  if (typeof card.claims === "string") return { ...passing, ...(settings ? { settings } : {}) };
  const entries = listed(card.claims).map((entry) => filled(paged(entry), entry.when ? () => "none" : bySettings));
  const whole = entries.some((entry) => !entry.when && !entry.revisions);
  const claims = whole ? entries : [...entries, filled({}, bySettings)];
  return { ...passing, claims: claims as Exclude<NonNullable<Card["claims"]>, string>, ...(settings ? { settings } : {}) };
}

/** The board, with every kind its parts do not speak of written as none, each current it does not name as 0, each limit as any, main memory as none or from 0. */
export function spellOutBoard(board: Board): Board {
  return {
    ...board,
    fixed: board.fixed.map((part) => filled(part, () => "none") as Board["fixed"][number]),
    rails: board.rails.map((rail) => ({ ...rail, board_A: rail.board_A ?? 0, per_slot_A: rail.per_slot_A ?? "any" })),
    slots: board.slots.map((slot) => ({
      ...slot,
      longest_mm: slot.longest_mm ?? "any",
      highest_mm: slot.highest_mm ?? "any",
      bus_master: slot.bus_master ?? false,
    })),
    total_W: board.total_W ?? "any",
    ...(board.chains ? { chains: board.chains.map((chain) => ({ ...chain, empty: chain.empty ?? ("passes" as const) })) } : {}),
    memory: typeof board.memory === "object" ? { ...board.memory, base: board.memory.base ?? 0 } : (board.memory ?? "none"),
  };
}

/** Memory of a card counts with no other, where its record does not say. */
function paged<T extends Claims>(of: T): T {
  return Array.isArray(of.memory) ? { ...of, memory: of.memory.map((w) => (mayBeMain(w) === "perhaps" ? { ...w, main: false } : w)) } : of;
}

function filled<T extends Claims>(of: T, word: (kind: (typeof resourceKinds)[number]) => "none" | "settings" | undefined): Filled<T> {
  const added = resourceKinds.flatMap((kind) => (of[kind] === undefined && word(kind) ? [[kind, word(kind)]] : []));
  return { ...of, ...Object.fromEntries(added) };
}
