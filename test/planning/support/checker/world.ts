// The second reader of the records: what it is given and what it answers. It was written from the field guide (the descriptions in
// src/records/schema) and shares no code with what it checks. It judges one complete machine, slowly and plainly.
import type { Board, Build, BuildCard, Bus, Card, Conflict, Firmware, Mode, Slot } from "../../../../src/records/index.js";

export interface World {
  readonly bus: Bus;
  readonly board: Board;
  readonly family: Firmware;
  readonly cards: ReadonlyMap<string, Card>;
  readonly conflicts: readonly Conflict[];
}

/** One complete way to fill the holes of a build. `slot` is an index into board.slots; `firmware` has one version for each mode. */
export interface Machine {
  readonly revision: string;
  /** Bytes; 0 when the board's record names no amounts. */
  readonly memory: number;
  readonly firmware: readonly string[];
  readonly cards: readonly { readonly slot: number; readonly revision: string; readonly settings: Readonly<Record<string, string>> }[];
}

/** What one matter comes to: it cannot be, or it hangs on something the records do not know, or nothing is against it. */
export interface Objection {
  readonly kind: "no" | "unknown";
  readonly why: string;
}

export const no = (why: string): Objection => ({ kind: "no", why });
export const unknown = (why: string): Objection => ({ kind: "unknown", why });

export interface Judgement {
  readonly bad: readonly string[];
  readonly open: readonly string[];
  /** 0 nothing, 1 only looks odd, 2 something is lost, 3 a remedy must be taken. */
  readonly level: number;
}

/** A card of the machine where it stands. */
export interface Fitted {
  /** Name of the copy. */
  readonly as: string;
  readonly card: Card;
  readonly revision: string;
  readonly slot: Slot;
  readonly settings: Readonly<Record<string, string>>;
}

export interface ModeOfUse {
  readonly id: string;
  readonly version: string;
  /** Copies that the mode names as on. */
  readonly named: readonly Fitted[];
}

/** Everything a matter is judged from. */
export interface Case {
  readonly world: World;
  readonly machine: Machine;
  readonly fitted: readonly Fitted[];
  readonly modes: readonly ModeOfUse[];
}

export function caseOf(world: World, build: Build, machine: Machine): Case {
  const fitted = build.cards.map((b, i): Fitted => {
    const { slot, revision, settings } = machine.cards[i]!;
    return { as: nameOf(b), card: world.cards.get(b.card)!, revision, slot: world.board.slots[slot]!, settings };
  });
  // Left out: one mode with every card on.
  const modes: readonly Mode[] = build.modes ?? [{ id: "always" }];
  return {
    world,
    machine,
    fitted,
    modes: modes.map((mode, i) => ({ id: mode.id, version: machine.firmware[i]!, named: namedBy(mode, fitted) })),
  };
}

export const nameOf = (b: BuildCard): string => b.as ?? b.card;

/** A name is first that of a copy, else that of a card, and then means every copy of it. Left out: all. */
export function namedBy(mode: Mode, fitted: readonly Fitted[]): Fitted[] {
  if (!mode.cards) return [...fitted];
  return fitted.filter((f) => mode.cards!.some((name) => (fitted.some((other) => other.as === name) ? f.as === name : f.card.id === name)));
}
