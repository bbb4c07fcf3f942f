// An unread record: a file that holds a record which could not be read. It is kept, with what of it can still be read, so that no
// answer goes without it in silence. What is kept is the least that the record can still be meant to say.
import type { Finding } from "./finding.js";
import { BoardMatch, FirmwareRange } from "./schema/common.js";
import { CardCondition, Conflict } from "./schema/conflict.js";
import { Build, type Kind, Result } from "./schema/index.js";
import type { Shape } from "./shape.js";
import { validate } from "./validate.js";

export interface Unread {
  /** Left out when the file lies in no folder of records: then it may be of any kind. */
  readonly kind?: Kind;
  /** The id it gives itself, where that can be read; else the one its file's name gives it. */
  readonly id: string;
  readonly file: string;
  /** Where the first mistake stands, counted from 1, and what it is. */
  readonly line: number;
  readonly column: number;
  readonly says: string;
  readonly hint?: string;
  /** For a record that is or may be a known problem. */
  readonly conflict?: ReadableConflict;
  /** For a record that is or may be a tested build. */
  readonly test?: ReadableTest;
}

/** Where the problem may occur. A condition that cannot be read is left out, so that it may occur in more machines, never in fewer. */
export interface ReadableConflict {
  readonly when: Conflict["when"];
  readonly disproved: boolean;
}

/** Which machine a bench result may be of; what cannot be read is left out. */
export interface ReadableTest {
  readonly board?: string;
  readonly cards?: readonly string[];
  /** It says in so many words that the machine worked in every mode. */
  readonly worked: boolean;
}

/** The unread record of a file, from its first error and from the value it holds, where there is one. */
export function unreadOf(home: { readonly kind?: Kind; readonly id: string }, first: Finding, value?: unknown): Unread {
  const { file, line, column } = first.at;
  const { kind } = home;
  const id = fieldOf(value, "id");
  return {
    ...(kind ? { kind } : {}),
    id: fits<string>(shapeOf(Build, "id"), id) ? id : home.id,
    file,
    line,
    column,
    says: first.says,
    ...(first.hint ? { hint: first.hint } : {}),
    ...(kind === undefined || kind === "conflict" ? { conflict: readConflict(value) } : {}),
    ...(kind === undefined || kind === "build" ? readTest(value) : {}),
  };
}

/** True when the record goes by this id: the one it gives itself, or the one its file's name gives it. */
export function goesBy(unread: Unread, kind: Kind, id: string): boolean {
  if (unread.kind !== undefined && unread.kind !== kind) return false;
  return unread.id === id || unread.file.replace(/^.*\//, "").replace(/\.[^.]*$/, "") === id;
}

function isMapping(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function fieldOf(value: unknown, name: string): unknown {
  return isMapping(value) && Object.hasOwn(value, name) ? value[name] : undefined;
}

function shapeOf(schema: { readonly properties: Readonly<Record<string, unknown>> }, field: string): Shape {
  return schema.properties[field] as Shape;
}

function fits<T>(shape: Shape, value: unknown): value is T {
  return value !== undefined && validate(shape, value).length === 0;
}

/** The fields of a mapping that have their right shape. */
function soundFields<T>(schema: { readonly properties: Readonly<Record<string, unknown>> }, value: Readonly<Record<string, unknown>>) {
  const sound = Object.entries(value).filter(([name, inner]) => {
    const shape = Object.hasOwn(schema.properties, name) ? shapeOf(schema, name) : undefined;
    return shape !== undefined && fits(shape, inner);
  });
  return Object.fromEntries(sound) as Partial<T>;
}

function readConflict(value: unknown): ReadableConflict {
  const when = fieldOf(value, "when");
  const disproved = fieldOf(value, "status") === "disproved";
  if (!isMapping(when)) return { when: {}, disproved };
  const { boards: _, firmware: __, cards: ___, adjacent, ...plain } = soundFields<Conflict["when"]>(Conflict.properties.when, when);
  const boards = anyOf(fieldOf(when, "boards"), boardMatch);
  const firmware = anyOf(fieldOf(when, "firmware"), (span) => (fits<FirmwareRange>(FirmwareRange as Shape, span) ? span : undefined));
  const { cards, whole } = allOf(fieldOf(when, "cards"));
  return {
    when: {
      ...plain,
      ...(boards ? { boards } : {}),
      ...(firmware ? { firmware } : {}),
      ...(cards.length > 0 ? { cards } : {}),
      // Neighbours are the first two cards; which they are is only known while every card can be read.
      ...(adjacent && whole ? { adjacent } : {}),
    },
    disproved,
  };
}

/** "Any one of these": one that cannot be read may be anything, so that the whole says nothing. */
function anyOf<T>(value: unknown, read: (entry: unknown) => T | undefined): T[] | undefined {
  if (!Array.isArray(value) || value.length === 0) return undefined;
  const entries = value.flatMap((entry) => read(entry) ?? []);
  return entries.length === value.length ? entries : undefined;
}

/** A board match without the revisions that cannot be read: then any revision. */
function boardMatch(value: unknown): BoardMatch | undefined {
  if (!isMapping(value)) return undefined;
  const sound = soundFields<BoardMatch>(BoardMatch, value);
  return sound.board === undefined ? undefined : { ...sound, board: sound.board };
}

/** "All of these cards": one that cannot be read is left out. */
function allOf(value: unknown): { readonly cards: CardCondition[]; readonly whole: boolean } {
  if (!Array.isArray(value)) return { cards: [], whole: false };
  const cards = value.flatMap((entry): CardCondition[] => {
    if (!isMapping(entry)) return [];
    const { even_disabled, ...sound } = soundFields<CardCondition>(CardCondition, entry);
    if (sound.card === undefined) return [];
    // A field that cannot be read may be the one that says: also while the card is switched off.
    const clear =
      Object.keys(entry).every((name) => name in sound || name === "even_disabled") &&
      (even_disabled !== undefined || !("even_disabled" in entry));
    return [{ ...sound, card: sound.card, ...(clear ? (even_disabled === undefined ? {} : { even_disabled }) : { even_disabled: true }) }];
  });
  return { cards, whole: cards.length === value.length };
}

/** Nothing for a build that surely was not tested. */
function readTest(value: unknown): { readonly test?: ReadableTest } {
  const board = fieldOf(value, "board");
  const cards = fieldOf(value, "cards");
  const result = fieldOf(value, "result");
  const known = isMapping(value) && Object.keys(value).every((name) => Object.hasOwn(Build.properties, name));
  if (known && result === undefined) return {};
  const names = (Array.isArray(cards) ? cards : [undefined]).map((c) => fieldOf(c, "card"));
  const sound = fits<Result>(Result as Shape, result) ? result : undefined;
  return {
    test: {
      ...(fits<string>(shapeOf(Build, "board"), board) ? { board } : {}),
      ...(names.every((name): name is string => typeof name === "string") ? { cards: names } : {}),
      worked: sound !== undefined && [sound, ...(sound.modes ?? [])].every((seen) => seen.outcome === "worked"),
    },
  };
}
