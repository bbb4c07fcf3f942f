// A question: a build read against the catalogue, with every hole spelt out. Says what cannot be asked; judges nothing.
import {
  allOf,
  type Catalogue,
  cardsOn,
  cardsOnOrOff,
  copyName,
  kindWord,
  labelCopies,
  mainMemory,
  modesOf,
  switchable,
  type Unresolved,
  unresolvedNames,
} from "../catalogue/index.js";
import {
  type Board,
  type Build,
  type BuildCard,
  type Bus,
  bytes,
  type Card,
  type Firmware,
  type FirmwareVersion,
  goesBy,
  type Kind,
  nearest,
  type Setting,
  type Slot,
  sizeText,
  step,
  truncateList,
} from "../records/index.js";
import { type AskedUnread, findUnread } from "./unread.js";

/** A card of the build: one copy, its name, and what of it the owner fixed. */
export interface ResolvedCard {
  readonly as: string;
  /** Its record. Where the machine has several copies of the card, `name` is what tells this one apart: "Lightship (left)". */
  readonly card: Card;
  /** Revision ids; one entry "" when the record knows only one kind. */
  readonly revisions: readonly string[];
  readonly settings: readonly Setting[];
  readonly chosen: BuildCard;
  readonly pointer: string;
}

export interface ResolvedMode {
  readonly id: string;
  readonly name: string;
  /** Names of the copies that are on. A card that nothing switches off runs whether it is among them or not. */
  readonly enabled: ReadonlySet<string>;
  /** Copies among them whose being on is itself a hole: it does not matter, or the ways to run a machine are to be found. */
  readonly free?: ReadonlySet<string>;
  readonly firmware?: string | undefined;
  readonly safest: boolean;
}

export interface ResolvedBuild {
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
  readonly cards: readonly ResolvedCard[];
  readonly modes: readonly ResolvedMode[];
}

/** Something in the build that cannot be asked: an id nobody knows, a slot the board lacks. */
export interface Fault {
  /** JSON pointer into the build. */
  readonly pointer: string;
  /** What is wrong is the field's name, not its value. */
  readonly on?: "key" | undefined;
  readonly says: string;
  readonly hint: string;
}

export interface InvalidBuild {
  readonly kind: "misasked";
  readonly faults: readonly Fault[];
}

export interface AskOptions {
  /** Look only at the board revisions and firmware versions the build names: quicker, but no reason will say "another version". */
  readonly narrow?: boolean;
}

/**
 * Every name in a build that the records do not have, each with the name that was probably meant. A record that is there and could not be
 * read is not among them. All that is asked about a build, by command or page, comes through here.
 */
export function findFaults(catalogue: Catalogue, build: Build): readonly Fault[] {
  return [
    ...unresolvedNames(catalogue, build).map((one) => ({ pointer: one.path.reduce<string>(step, ""), on: one.on, ...faultWords(one) })),
    ...doubles("cards", build.cards.map(copyName), "Give each copy its own name with `as`."),
    ...doubles(
      "modes",
      (build.modes ?? []).map((m) => m.id),
      "Give each mode its own id.",
    ),
  ];
}

function doubles(what: "cards" | "modes", names: readonly string[], hint: string): readonly Fault[] {
  return names.flatMap((name, at) =>
    names.indexOf(name) === at ? [] : [{ pointer: `/${what}/${at}`, says: `Two ${what} are called "${name}".`, hint }],
  );
}

/** A record that is named beside a build, not in it: the card one thinks of buying. */
export function findRecordFault(catalogue: Catalogue, kind: Kind, id: string, pointer = ""): Fault | undefined {
  const of = allOf(catalogue, kind);
  if (of.has(id) || catalogue.unread.some((unread) => goesBy(unread, kind, id))) return undefined;
  return { pointer, ...faultWords({ about: "record", what: kindWord(kind), name: id, declared: [...of.keys()] }) };
}

function faultWords({ about, what, name, declared }: Omit<Unresolved, "path">): Pick<Fault, "says" | "hint"> {
  if (about === "memory")
    return {
      says: `${what} is not known with ${sizeText(Number(name))} of memory.`,
      hint: `Known amounts: ${declared.map((size) => sizeText(Number(size))).join(", ")}.`,
    };
  return { says: `No ${what} is called "${name}".`, hint: nameHint(name, declared) };
}

/** "Did you mean ...?", or the names there are. */
function nameHint(name: string, declared: readonly string[]): string {
  const near = nearest(name, declared);
  if (near !== undefined) return `Did you mean "${near}"?`;
  const holding = holders(name, declared);
  if (holding.length > 0) return `Did you mean ${holding.slice(0, 4).join(", or ")}?`;
  return declared.length === 0 ? "There are none." : `There are: ${truncateList(declared, 12)}.`;
}

/** A part of a long id is a common slip: "tracer" for "tallow-bus-tracer". */
function holders(name: string, declared: readonly string[]): readonly string[] {
  return name.length < 3 ? [] : declared.filter((id) => id.split("-").includes(name) || id.startsWith(name));
}

/** Reads a build against the catalogue. */
export function resolveBuild(
  catalogue: Catalogue,
  build: Build,
  options: AskOptions = {},
): { readonly kind: "question"; readonly question: ResolvedBuild } | AskedUnread | InvalidBuild {
  const faults = [...findFaults(catalogue, build)];
  const board = catalogue.boards.get(build.board);
  const bus = board && catalogue.buses.get(board.bus);
  const family = catalogue.firmware.get(build.firmware ?? board?.firmware[0] ?? "");
  // What the board itself names is no fault of the build, but without it nothing can be answered.
  if (board) faults.push(...boardFaults(catalogue, board, build.firmware === undefined));
  if (faults.length > 0) return { kind: "misasked", faults };
  const unread = findUnread(catalogue, build);
  if (!board || !bus || !family || unread.length > 0) return { kind: "unread", unread };

  const revisions = board.revisions.map((r) => r.id);
  const told = build.revision === undefined ? [] : typeof build.revision === "string" ? [build.revision] : build.revision;
  const memories = mainMemory(board)?.options.map(bytes) ?? [build.memory === undefined ? 0 : bytes(build.memory)];
  const labels = labelCopies(build.cards, (id) => catalogue.cards.get(id)?.name ?? id);
  const cards = build.cards.flatMap((chosen, at): ResolvedCard[] =>
    readCard(catalogue, chosen, `/cards/${at}`).map((read) => {
      const name = labels.get(read.as) ?? read.card.name;
      return name === read.card.name ? read : { ...read, card: { ...read.card, name } };
    }),
  );
  const modes = readModes(build, cards);
  const question: ResolvedBuild = {
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

function boardFaults(catalogue: Catalogue, board: Board, withFirmware: boolean): readonly Fault[] {
  const [first = ""] = board.firmware;
  const bus = findRecordFault(catalogue, "bus", board.bus, "/board");
  const firmware = withFirmware ? findRecordFault(catalogue, "firmware", first, "/board") : undefined;
  return [...(bus ? [bus] : []), ...(firmware ? [firmware] : [])];
}

function readCard(catalogue: Catalogue, chosen: BuildCard, pointer: string): ResolvedCard[] {
  const card = catalogue.cards.get(chosen.card);
  if (!card) return [];
  const revisions = card.revisions?.map((r) => r.id) ?? [""];
  return [{ as: copyName(chosen), card, revisions, settings: card.settings ?? [], chosen, pointer }];
}

function readModes(build: Build, cards: readonly ResolvedCard[]): ResolvedMode[] {
  return modesOf(build).map((mode) => {
    const on = cardsOn(build.cards, mode);
    const left = cardsOnOrOff(build.cards, mode);
    const open = left.map(copyName);
    const enabled = new Set(build.cards.filter((c) => on.includes(c) || left.includes(c)).map(copyName));
    const free = open.filter((as) => cards.some((c) => c.as === as && switchable(c.card)));
    const { id, name = id, firmware, safest = false } = mode;
    return { id, name, enabled, ...(free.length > 0 ? { free: new Set(free) } : {}), firmware, safest };
  });
}

/** How much memory the machine has, or may have, is written down: in the board's record, or in the build. Else its one amount is 0. */
export function knowsMemory(question: Pick<ResolvedBuild, "memories">): boolean {
  return question.memories.some((amount) => amount > 0);
}

export type Release = NonNullable<Card["enable"]>["releases"][number];

/** Revisions of the card that run in this mode: all when it is on, else those that nothing can switch off. */
export function running(asked: ResolvedCard, mode: ResolvedMode): readonly string[] {
  const { enable } = asked.card;
  if (mode.enabled.has(asked.as) || !enable || !switchable(asked.card)) return asked.revisions;
  return enable.revisions ? asked.revisions.filter((r) => enable.revisions?.includes(r) !== true) : [];
}

/** Revisions of the card that in this mode still take, or need, what `what` names. */
export function holding(asked: ResolvedCard, mode: ResolvedMode, what: Release): readonly string[] {
  return asked.card.enable?.releases.includes(what) ? running(asked, mode) : asked.revisions;
}
