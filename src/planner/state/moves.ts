// Moves: what the person at the page has chosen, one after another. The build is what they amount to, so that any one of them
// can be taken back in any order; the others stand.
import { copyName, findCopies, modesOf } from "../../catalogue/index.js";
import {
  applyEdits,
  asStanding,
  type ChoiceValue,
  copyOfChoice,
  type Edit,
  nameForCopy,
  pinsOf,
  withCard,
  withChoice,
  withCountAtHand,
  withoutCard,
  withoutMode,
} from "../../machine/index.js";
import type { Build, Mode } from "../../records/index.js";

export type Move =
  | { readonly do: "board"; readonly board: string }
  | { readonly do: "choose"; readonly id: string; readonly value: ChoiceValue }
  /** `as` is the name the copy got when it was put in; other moves speak of it by that name. */
  | { readonly do: "add"; readonly card: string; readonly as?: string }
  | { readonly do: "drop"; readonly as: string }
  | { readonly do: "mode"; readonly mode: Mode }
  | { readonly do: "drop-mode"; readonly id: string }
  | { readonly do: "safest"; readonly id: string }
  /** `count`: how many, of a card; one when left out. */
  | { readonly do: "have"; readonly what: "firmware" | "cards" | "parts"; readonly id: string; readonly count?: number }
  | { readonly do: "family"; readonly id: string }
  | { readonly do: "switch"; readonly what: "device" | "switch" | "connector" | "cable"; readonly id: string }
  | { readonly do: "stands" }
  /** A repair, or a combination taken as it is: several edits at once, around which others may be taken back. */
  | { readonly do: "all"; readonly says: string; readonly edits: readonly Edit[] };

export interface State {
  /** Where the moves start from: an empty build, one that was imported, or one from an address. */
  readonly base: Build;
  readonly moves: readonly Move[];
}

/** A machine nobody has said anything about; no board is chosen while `board` is empty. */
export const blank: Build = { id: "my-build", name: "My build", board: "", cards: [] };

export function buildOf({ base, moves }: State): Build {
  return namingOnlyWhatIsThere(moves.reduce(made, base));
}

function made(build: Build, move: Move): Build {
  switch (move.do) {
    case "board":
      return onBoard(build, move.board);
    case "choose":
      return withChoice(build, move.id, move.value);
    case "add":
      return withCard(build, move.card, isFree(build, move.as) ? move.as : nameForCopy(build, move.card));
    case "drop":
      return withoutCard(build, move.as);
    case "mode":
      return withMode(build, move.mode);
    case "drop-mode":
      return dropMode(build, move.id);
    case "safest":
      return withSafest(build, move.id);
    case "have":
      return move.what === "cards" ? withCountAtHand(build, move.id, move.count ?? 1) : having(build, move.what, move.id);
    case "family":
      return {
        ...build,
        firmware: move.id,
        ...(build.modes ? { modes: build.modes.map(({ firmware: _, ...m }) => m) } : {}),
      };
    case "switch":
      return withPart(build, move.what, move.id);
    case "stands":
      return asStanding(build);
    case "all":
      return applyEdits(build, move.edits);
  }
}

function isFree(build: Build, as: string | undefined): boolean {
  return as !== undefined && !build.cards.some((c) => copyName(c) === as);
}

/** Another board has other revisions, slots and amounts of memory; what was said of those belongs to the old one. */
function onBoard(build: Build, board: string): Build {
  if (build.board === board) return build;
  const { revision: _r, memory: _m, firmware: _f, stands: _s, ...rest } = build;
  return {
    ...rest,
    board,
    cards: build.cards.map(({ slot: _, ...c }) => c),
    ...(build.modes ? { modes: build.modes.map(({ firmware: _, ...m }) => m) } : {}),
  };
}

function withMode(build: Build, mode: Mode): Build {
  const modes = modesOf(build);
  const known = modes.some((m) => m.id === mode.id);
  return { ...build, modes: known ? modes.map((m) => (m.id === mode.id ? { ...m, ...mode } : m)) : [...modes, mode] };
}

function dropMode(build: Build, id: string): Build {
  const { modes, ...rest } = withoutMode(build, id);
  return modes && modes.length > 0 ? { ...rest, modes } : rest;
}

/** One mode at most is the safest; naming it again takes the word back. */
function withSafest(build: Build, id: string): Build {
  const modes = build.modes?.map((m): Mode => {
    const { safest, ...rest } = m;
    return m.id === id && !safest ? { ...rest, safest: true } : rest;
  });
  return modes ? { ...build, modes } : build;
}

/** The empty id leaves the part to the plan again. */
function withPart(build: Build, what: "device" | "switch" | "connector" | "cable", id: string): Build {
  const { [what]: _, ...others } = build.switch ?? {};
  const { switch: _s, ...rest } = build;
  const parts = id === "" ? others : { ...others, [what]: id };
  return Object.keys(parts).length > 0 ? { ...rest, switch: parts } : rest;
}

function having(build: Build, what: "firmware" | "parts", id: string): Build {
  const before = build.at_hand?.[what] ?? [];
  return before.includes(id) ? build : { ...build, at_hand: { ...build.at_hand, [what]: [...before, id] } };
}

/** A mode may name a card that was put in by a move since taken back; it names only what is there. */
function namingOnlyWhatIsThere(build: Build): Build {
  const dead = (name: string) => findCopies(build.cards, name).length === 0;
  if (!build.modes?.some((m) => m.cards?.some(dead) || m.on_or_off?.some(dead))) return build;
  return { ...build, modes: build.modes.map((m) => namingOnly(m, (name) => !dead(name))) };
}

function namingOnly({ cards, on_or_off: open, ...mode }: Mode, test: (name: string) => boolean): Mode {
  const left = open?.filter(test) ?? [];
  return { ...mode, ...(cards ? { cards: cards.filter(test) } : {}), ...(left.length > 0 ? { on_or_off: left } : {}) };
}

/**
 * The moves with one more. A later word on the same thing takes the place of the earlier; adding what was dropped, or dropping
 * what was added, leaves no trace of either.
 */
export function withMove(state: State, move: Move): State {
  if (move.do === "drop") {
    const at = state.moves.findIndex((m) => m.do === "add" && copyName(m) === move.as);
    if (at >= 0) return without(state, at);
    return { ...state, moves: [...state.moves.filter((m) => !(m.do === "choose" && copyOfChoice(m.id) === move.as)), move] };
  }
  if (move.do === "add" && move.as === undefined) {
    const as = nameForCopy(buildOf(state), move.card);
    if (as !== undefined) return { ...state, moves: [...state.moves, { ...move, as }] };
  }
  const same = (m: Move) => {
    if (m.do === "choose" && move.do === "choose") return m.id === move.id;
    if (m.do === "switch" && move.do === "switch") return m.what === move.what;
    if (m.do === "have" && move.do === "have") return m.what === move.what && m.id === move.id;
    return m.do === move.do && (m.do === "board" || m.do === "family");
  };
  return { ...state, moves: [...state.moves.filter((m) => !same(m)), move] };
}

/** What is left of a move when a copy it speaks of was never put in: its pins are gone, and no mode has it on. */
function notOfCopy(move: Move, as: string): readonly Move[] {
  const off = (mode: Mode): Mode =>
    mode.cards?.includes(as) || mode.on_or_off?.includes(as) ? namingOnly(mode, (name) => name !== as) : mode;
  switch (move.do) {
    case "choose":
      return copyOfChoice(move.id) === as ? [] : [move];
    case "mode":
      return [off(move.mode) === move.mode ? move : { ...move, mode: off(move.mode) }];
    case "all":
      return [{ ...move, edits: move.edits.map((e) => ("modes" in e ? { modes: e.modes?.map(off) } : e)) }];
    default:
      return [move];
  }
}

/** The moves without one of them; the others stay and are made again in their order. */
export function without(state: State, at: number): State {
  const gone = state.moves[at];
  const rest = state.moves.filter((_, i) => i !== at);
  return { ...state, moves: gone?.do === "add" ? rest.flatMap((m) => notOfCopy(m, copyName(gone))) : rest };
}

/** The state with a pin taken back, wherever it came from: a move, a repair or the build the page was opened with. */
export function unpinned(state: State, id: string): State {
  const moves = state.moves.filter((m) => !(m.do === "choose" && m.id === id));
  const left = { ...state, moves };
  if (!pinsOf(buildOf(left)).has(id)) return left;
  return {
    base: withChoice(state.base, id, undefined),
    moves: moves.map((m) => (m.do === "all" ? { ...m, edits: m.edits.filter((e) => !("pin" in e && e.pin === id)) } : m)),
  };
}

/** The state with something at hand taken back, wherever it was said. */
export function notAtHand(state: State, what: "firmware" | "cards" | "parts", id: string): State {
  const moves = state.moves.filter((m) => !(m.do === "have" && m.what === what && m.id === id));
  if (what === "cards") return { base: withCountAtHand(state.base, id, 0), moves };
  const before = state.base.at_hand?.[what];
  if (!before?.includes(id)) return { ...state, moves };
  const left = before.filter((b) => b !== id);
  const { [what]: _, ...rest } = state.base.at_hand ?? {};
  const hand = left.length > 0 ? { ...rest, [what]: left } : rest;
  const { at_hand: _h, ...base } = state.base;
  return { base: Object.keys(hand).length > 0 ? { ...base, at_hand: hand } : base, moves };
}
