// Where records claim resources, and when two claims meet. Plain arithmetic, shared by the house rules.
import { type Board, bytes, type Card, type Claims, type IoWindow, listed, type MemoryWindow } from "../records/index.js";

export type Path = readonly (string | number)[];

/** A place in a record that claims resources. */
export interface ClaimSite {
  readonly path: Path;
  readonly claims: Claims;
  /** Left out: all revisions of the record. */
  readonly revisions?: readonly string[] | undefined;
}

export function claimSites(card: Card): readonly ClaimSite[] {
  const fixed = listed(card.claims).map((claims, i) => ({ path: ["claims", i], claims, revisions: claims.revisions }));
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

/** The addresses at which two memory windows meet; undefined when they do not, or when both are made to share. */
export function memoryMeeting(a: MemoryWindow, b: MemoryWindow): { readonly from: number; readonly to: number } | undefined {
  if (a.shareable && b.shareable) return undefined;
  const from = Math.max(a.base, b.base);
  const to = Math.min(a.base + bytes(a.size), b.base + bytes(b.size)) - 1;
  return from <= to ? { from, to } : undefined;
}

export function meetMemory(a: MemoryWindow, b: MemoryWindow): boolean {
  return memoryMeeting(a, b) !== undefined;
}

/** Least number of low address bits a window can be decoded with: as many as tell its ports from each other and from lower ones. */
function fewestBits({ base, size }: IoWindow): number {
  return Math.ceil(Math.log2(base + size));
}

/** How many low address bits are looked at: all of the bus where nothing else is written; where nobody knows, all, or the fewest. */
function lookedAt(window: IoWindow, busBits: number, unknown: "all" | "fewest"): number {
  const { decoded_bits: written = busBits } = window;
  const bits = written !== "unknown" ? written : unknown === "all" ? busBits : fewestBits(window);
  return Math.min(bits, busBits);
}

/**
 * The ports at which two windows meet. A card that looks at d bits answers at every address equal to its own modulo 2^d, so
 * two windows meet exactly when they meet modulo 2^min(d1, d2); `aliased` when it is only there. `unknown`: what to take a number of bits
 * for that nobody knows. With fewer bits windows meet wherever they met with more, so "all" says what meets for sure, "fewest" what may.
 */
export function ioMeeting(
  a: IoWindow,
  b: IoWindow,
  busBits: number,
  unknown: "all" | "fewest" = "all",
): { readonly from: number; readonly to: number; readonly aliased: boolean } | undefined {
  const [from, to] = [Math.max(a.base, b.base), Math.min(a.base + a.size, b.base + b.size) - 1];
  if (from <= to) return { from, to, aliased: false };
  const turn = 2 ** Math.min(lookedAt(a, busBits, unknown), lookedAt(b, busBits, unknown));
  // Seen in the bits both look at, each window is a run on a circle of 2^bits ports: b begins this far after a.
  const after = (((b.base - a.base) % turn) + turn) % turn;
  if (after >= a.size && turn - after >= b.size) return undefined;
  const first = after < a.size ? b.base % turn : a.base % turn;
  return { from: first, to: first, aliased: true };
}

export function meetIo(a: IoWindow, b: IoWindow, busBits: number): boolean {
  return ioMeeting(a, b, busBits) !== undefined;
}
