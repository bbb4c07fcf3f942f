// Where records claim resources, and when two claims meet. Plain arithmetic, shared by the house rules.
import { type Board, bytes, type Card, type Claims, type IoWindow, type MemoryWindow } from "../records/index.js";

export type Path = readonly (string | number)[];

/** A place in a record that claims resources. */
export interface ClaimSite {
  readonly path: Path;
  readonly claims: Claims;
  /** Left out: all revisions of the record. */
  readonly revisions?: readonly string[];
}

export function claimSites(card: Card): readonly ClaimSite[] {
  const fixed = (card.claims ?? []).map((claims, i) => ({ path: ["claims", i], claims, revisions: claims.revisions }));
  const set = (card.settings ?? []).flatMap((s, i) =>
    s.positions.map((claims, p) => ({ path: ["settings", i, "positions", p], claims, revisions: s.revisions })),
  );
  return [...fixed, ...set];
}

export function fixedSites(board: Board): readonly ClaimSite[] {
  return board.fixed.map((claims, i) => ({ path: ["fixed", i], claims, revisions: claims.revisions }));
}

/** True when some revision is in both; a list left out means every revision. */
export function meetRevisions(a: readonly string[] | undefined, b: readonly string[] | undefined): boolean {
  return !a || !b || a.some((r) => b.includes(r));
}

export function meetMemory(a: MemoryWindow, b: MemoryWindow): boolean {
  if (a.shareable && b.shareable) return false;
  return a.base < b.base + bytes(b.size) && b.base < a.base + bytes(a.size);
}

/** Two port windows meet at an address both answer; a card that looks at few bits answers again at every alias. */
export function meetIo(a: IoWindow, b: IoWindow, busBits: number): boolean {
  const bits = Math.min(a.decoded_bits ?? busBits, b.decoded_bits ?? busBits, busBits);
  const turn = 2 ** bits;
  // Seen in the bits both look at, each window is a run on a circle of 2^bits ports.
  const from = (((b.base - a.base) % turn) + turn) % turn;
  return from < a.size || turn - from < b.size;
}
