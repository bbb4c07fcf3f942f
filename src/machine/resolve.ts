// A question: a build read against the catalogue, with every hole spelt out. Says what cannot be asked; judges nothing.
import { type Catalogue, cardsOn, copyName, findCopies, labelCopies, modesOf, versionIndex } from "../catalogue/index.js";
import {
  type Board,
  type Build,
  type BuildCard,
  type Bus,
  bytes,
  type Card,
  type Firmware,
  type FirmwareVersion,
  nearest,
  type Setting,
  type Slot,
  sizeText,
} from "../records/index.js";
import { type AskedUnread, findUnread } from "./unread.js";

/** A card of the build: one copy, its name, and what of it the owner fixed. */
export interface AskedCard {
  readonly as: string;
  /** Its record. Where the machine has several copies of the card, `name` is what tells this one apart: "Lightship (left)". */
  readonly card: Card;
  /** Revision ids; one entry "" when the record knows only one kind. */
  readonly revisions: readonly string[];
  readonly settings: readonly Setting[];
  readonly chosen: BuildCard;
  readonly pointer: string;
}

export interface AskedMode {
  readonly id: string;
  readonly name: string;
  readonly enabled: ReadonlySet<string>;
  readonly firmware?: string;
  readonly safest: boolean;
}

export interface Question {
  readonly catalogue: Catalogue;
  readonly build: Build;
  readonly board: Board;
  readonly bus: Bus;
  readonly family: Firmware;
  readonly revisions: readonly string[];
  /** Revisions the owner says it may be; all when not told. */
  readonly chosenRevisions: readonly string[];
  /** Versions that are looked at: all of the family, or only the ones the build names when the question is narrowed. */
  readonly versions: readonly FirmwareVersion[];
  /** Bytes; one entry 0 when the board record names no options. */
  readonly memories: readonly number[];
  readonly slots: readonly Slot[];
  readonly cards: readonly AskedCard[];
  readonly modes: readonly AskedMode[];
}

/** Something in the build that cannot be asked: an id nobody knows, a slot the board lacks. */
export interface Fault {
  /** JSON pointer into the build. */
  readonly pointer: string;
  readonly says: string;
  readonly hint: string;
}

export interface Misasked {
  readonly kind: "misasked";
  readonly faults: readonly Fault[];
}

export interface AskOptions {
  /** Look only at the board revisions and firmware versions the build names: quicker, but no reason will say "another version". */
  readonly narrow?: boolean;
}

/** Reads a build against the catalogue. */
export function ask(
  catalogue: Catalogue,
  build: Build,
  options: AskOptions = {},
): { readonly kind: "question"; readonly question: Question } | AskedUnread | Misasked {
  const unread = findUnread(catalogue, build);
  if (unread.length > 0) return { kind: "unread", unread };
  const faults: Fault[] = [];
  const miss = (pointer: string, what: string, word: string, among: Iterable<string>) => {
    const names = [...among];
    const near = nearest(word, names);
    const listed =
      names.length === 0
        ? "There are none."
        : `There are: ${names.slice(0, 12).join(", ")}${names.length > 12 ? ` and ${names.length - 12} more` : ""}.`;
    faults.push({ pointer, says: `No ${what} is called "${word}".`, hint: near ? `Did you mean "${near}"?` : listed });
  };
  const board = catalogue.boards.get(build.board);
  if (!board) {
    miss("/board", "board", build.board, catalogue.boards.keys());
    return { kind: "misasked", faults };
  }
  const bus = catalogue.buses.get(board.bus);
  const familyId = build.firmware ?? board.firmware[0]!;
  const family = catalogue.firmware.get(familyId);
  if (!bus) miss("/board", "bus", board.bus, catalogue.buses.keys());
  if (!family) miss("/firmware", "firmware family", familyId, catalogue.firmware.keys());
  if (!bus || !family) return { kind: "misasked", faults };

  const revisions = board.revisions.map((r) => r.id);
  const told = build.revision === undefined ? [] : typeof build.revision === "string" ? [build.revision] : build.revision;
  told.forEach((r) => {
    if (!revisions.includes(r)) miss("/revision", `revision of ${board.name}`, r, revisions);
  });
  const memories = board.memory ? board.memory.options.map(bytes) : [0];
  if (build.memory !== undefined && board.memory && !memories.includes(bytes(build.memory)))
    faults.push({
      pointer: "/memory",
      says: `${board.name} is not known with ${sizeText(bytes(build.memory))} of memory.`,
      hint: `Known amounts: ${memories.map(sizeText).join(", ")}.`,
    });
  const labels = labelCopies(build.cards, (id) => catalogue.cards.get(id)?.name ?? id);
  const cards = build.cards.flatMap((chosen, at): AskedCard[] => {
    const read = readCard(catalogue, board, chosen, `/cards/${at}`, miss);
    if (!read) return [];
    const name = labels.get(read.as) ?? read.card.name;
    return [name === read.card.name ? read : { ...read, card: { ...read.card, name } }];
  });
  const names = cards.map((c) => c.as);
  names.forEach((name, at) => {
    if (names.indexOf(name) !== at)
      faults.push({ pointer: `/cards/${at}`, says: `Two cards are called "${name}".`, hint: "Give each copy its own name with `as`." });
  });
  const modes = readModes(build, names, family, miss);
  if (faults.length > 0) return { kind: "misasked", faults };
  const question: Question = {
    catalogue,
    build,
    board,
    bus,
    family,
    revisions: options.narrow && told.length > 0 ? told : revisions,
    versions:
      options.narrow && modes.every((m) => m.firmware !== undefined)
        ? family.versions.filter((v) => modes.some((m) => m.firmware === v.id))
        : family.versions,
    chosenRevisions: told.length > 0 ? told : revisions,
    memories,
    slots: board.slots,
    cards,
    modes,
  };
  return { kind: "question", question };
}

type Miss = (pointer: string, what: string, word: string, among: Iterable<string>) => void;

function readCard(catalogue: Catalogue, board: Board, chosen: BuildCard, pointer: string, miss: Miss): AskedCard | undefined {
  const card = catalogue.cards.get(chosen.card);
  if (!card) {
    miss(`${pointer}/card`, "card", chosen.card, catalogue.cards.keys());
    return undefined;
  }
  const revisions = card.revisions?.map((r) => r.id) ?? [""];
  if (chosen.revision !== undefined && !revisions.includes(chosen.revision))
    miss(`${pointer}/revision`, `revision of ${card.name}`, chosen.revision, revisions);
  const slots = board.slots.map((s) => s.id);
  if (chosen.slot !== undefined && !slots.includes(chosen.slot)) miss(`${pointer}/slot`, `slot of ${board.name}`, chosen.slot, slots);
  const settings = card.settings ?? [];
  for (const [id, position] of Object.entries(chosen.settings ?? {})) {
    const setting = settings.find((s) => s.id === id);
    if (!setting)
      miss(
        `${pointer}/settings/${id}`,
        `setting of ${card.name}`,
        id,
        settings.map((s) => s.id),
      );
    else if (!setting.positions.some((p) => p.id === position))
      miss(
        `${pointer}/settings/${id}`,
        `position of ${id} on ${card.name}`,
        position,
        setting.positions.map((p) => p.id),
      );
  }
  return { as: copyName(chosen), card, revisions, settings, chosen, pointer };
}

function readModes(build: Build, names: readonly string[], family: Firmware, miss: Miss): AskedMode[] {
  return modesOf(build).map((mode, at) => {
    for (const [i, name] of (mode.cards ?? []).entries())
      if (findCopies(build.cards, name).length === 0) miss(`/modes/${at}/cards/${i}`, "card of this build", name, names);
    if (mode.firmware !== undefined && versionIndex(family, mode.firmware) < 0)
      miss(
        `/modes/${at}/firmware`,
        `version of ${family.name}`,
        mode.firmware,
        family.versions.map((v) => v.id),
      );
    const enabled = new Set(cardsOn(build.cards, mode).map(copyName));
    return { id: mode.id, name: mode.name ?? mode.id, enabled, firmware: mode.firmware, safest: mode.safest ?? false };
  });
}

/** True when the modes of a machine can switch this card off. A jumper inside the case is no switch. */
export function switchable(card: Card): boolean {
  if (!card.enable) return false;
  if (card.enable.by === "contacts") return true;
  return card.settings?.find((s) => s.id === card.enable?.setting)?.by === "software";
}

export type Release = NonNullable<Card["enable"]>["releases"][number];

/** Revisions of the card that run in this mode: all when it is on, else those that nothing can switch off. */
export function running(asked: AskedCard, mode: AskedMode): readonly string[] {
  const { enable } = asked.card;
  if (mode.enabled.has(asked.as) || !enable || !switchable(asked.card)) return asked.revisions;
  return enable.revisions ? asked.revisions.filter((r) => !enable.revisions!.includes(r)) : [];
}

/** Revisions of the card that in this mode still take, or need, what `what` names. */
export function holding(asked: AskedCard, mode: AskedMode, what: Release): readonly string[] {
  return asked.card.enable?.releases.includes(what) ? running(asked, mode) : asked.revisions;
}
