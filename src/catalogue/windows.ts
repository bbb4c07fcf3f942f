// When two address windows meet, and when one gives way to the other. Plain arithmetic, shared by house rules and planning.
import { type Bus, bytes, type IoWindow, type MemoryWindow } from "../records/index.js";

/** Addresses at which two windows meet. `aliased`: only because one of them looks at too few address bits. */
export interface Meeting {
  readonly from: number;
  readonly to: number;
  readonly aliased: boolean;
}

/** What to take a number of bits for that nobody knows. With fewer bits windows meet wherever they met with more: "all" says what meets for sure, "fewest" what may. */
export type UnknownBits = "all" | "fewest";

interface Run {
  readonly base: number;
  readonly size: number;
  readonly decoded_bits?: number | "unknown" | undefined;
}

/** Least number of low address bits a window can be decoded with: as many as tell its addresses from each other and from lower ones. */
export function fewestBits({ base, size }: { readonly base: number; readonly size: number }): number {
  return Math.ceil(Math.log2(base + size));
}

/** How many low address bits are looked at: all there are where nothing else is written; where nobody knows, all, or the fewest. */
function lookedAt(run: Run, bits: number, unknown: UnknownBits): number {
  const { decoded_bits: written = bits } = run;
  const looked = written !== "unknown" ? written : unknown === "all" ? bits : fewestBits(run);
  return Math.min(looked, bits);
}

/**
 * A thing that looks at d bits answers at every address equal to its own modulo 2^d, so two windows meet exactly when they meet modulo
 * 2^min(d1, d2).
 */
function meeting(a: Run, b: Run, bits: number, unknown: UnknownBits): Meeting | undefined {
  const [from, to] = [Math.max(a.base, b.base), Math.min(a.base + a.size, b.base + b.size) - 1];
  if (from <= to) return { from, to, aliased: false };
  const turn = 2 ** Math.min(lookedAt(a, bits, unknown), lookedAt(b, bits, unknown));
  // Seen in the bits both look at, each window is a run on a circle of 2^bits addresses: b begins this far after a.
  const after = (((b.base - a.base) % turn) + turn) % turn;
  if (after >= a.size && turn - after >= b.size) return undefined;
  const first = after < a.size ? b.base % turn : a.base % turn;
  return { from: first, to: first, aliased: true };
}

export function ioMeeting(a: IoWindow, b: IoWindow, busBits: number, unknown: UnknownBits = "all"): Meeting | undefined {
  return meeting(a, b, busBits, unknown);
}

export function meetIo(a: IoWindow, b: IoWindow, busBits: number): boolean {
  return ioMeeting(a, b, busBits) !== undefined;
}

/** What of a bus decides where memory windows meet. */
export type Spaces = Pick<Bus, "memory_address_bits" | "spaces">;

/** Address bits of a space; of the bus's only one where none is named. */
export function spaceBits(bus: Spaces, space: string | undefined): number {
  return bus.spaces?.find((s) => s.id === space)?.bits ?? bus.memory_address_bits;
}

/** The bus has several address spaces, and the window does not say which it lies in. */
export function lacksSpace(bus: Spaces, window: { readonly space?: string | undefined }): boolean {
  return bus.spaces !== undefined && window.space === undefined;
}

/** Both windows are known to lie in one space. */
function inOneSpace(bus: Spaces, a: Pick<MemoryWindow, "space">, b: Pick<MemoryWindow, "space">): boolean {
  return bus.spaces === undefined || (a.space !== undefined && a.space === b.space);
}

/** The addresses at which two memory windows of one space meet; undefined when they do not. A window whose space is not known meets nothing for sure. */
export function memoryMeeting(a: MemoryWindow, b: MemoryWindow, bus: Spaces, unknown: UnknownBits = "all"): Meeting | undefined {
  if (!inOneSpace(bus, a, b)) return undefined;
  return meeting({ ...a, size: bytes(a.size) }, { ...b, size: bytes(b.size) }, spaceBits(bus, a.space), unknown);
}

/**
 * Whether one of two windows keeps silent while the other answers: by an overlay line, or because software opens one at a time. Where each
 * would silence the other, neither answers, and that is no overlay.
 */
export function overlay(a: MemoryWindow, b: MemoryWindow): "yes" | "no" | "perhaps" {
  if (a.takes_turns && b.takes_turns) return "yes";
  const [over, under] = [silences(a, b), silences(b, a)];
  if (over === "perhaps" || under === "perhaps") return "perhaps";
  return over === under ? "no" : "yes";
}

/** Whether `under` keeps silent while `over` answers. */
function silences(over: MemoryWindow, under: MemoryWindow): "yes" | "no" | "perhaps" {
  if (over.asserts === undefined || under.yields_to === undefined) return "no";
  if (over.asserts === "unknown" || under.yields_to === "unknown") return "perhaps";
  return under.yields_to.includes(over.asserts) ? "yes" : "no";
}

/** Whether its bytes are main memory. */
export function mayBeMain({ main, is }: Pick<MemoryWindow, "main" | "is">): "yes" | "no" | "perhaps" {
  if (main !== undefined) return main ? "yes" : "no";
  return is === undefined || is === "ram" ? "perhaps" : "no";
}

/** The windows would fight at one address, for sure. */
export function meetMemory(a: MemoryWindow, b: MemoryWindow, bus: Spaces): boolean {
  return memoryMeeting(a, b, bus) !== undefined && overlay(a, b) === "no";
}
