// The linked catalogue: every record of a club under its id, with the look-ups the later stages need.
// Made by `link`; the ids in it are known to resolve.
import type { Board, Build, Bus, Card, Club, Conflict, Firmware, Kind, Loaded, Part, RecordOf, Unread } from "../records/index.js";

/** An error of the records, short enough to be told wherever something rests on them. */
export interface RecordError {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly says: string;
}

/** What is wrong with the records of a catalogue: told with every answer and on every page. */
export interface Flaws {
  /** Records that are in files and not in the catalogue. */
  readonly unread: readonly Unread[];
  /** Every error, those of unread records among them. */
  readonly errors: readonly RecordError[];
}

/** The records as they are sent to another program that gathers them again. */
export interface PlannerRecords extends Flaws {
  readonly records: readonly Loaded[];
}

export interface Catalogue extends Flaws {
  readonly club?: Club | undefined;
  readonly buses: ReadonlyMap<string, Bus>;
  readonly boards: ReadonlyMap<string, Board>;
  readonly firmware: ReadonlyMap<string, Firmware>;
  readonly cards: ReadonlyMap<string, Card>;
  readonly conflicts: ReadonlyMap<string, Conflict>;
  readonly builds: ReadonlyMap<string, Build>;
  readonly parts: ReadonlyMap<string, Part>;
  /** File of a record, by "kind/id". */
  readonly files: ReadonlyMap<string, string>;
  /** Text of a file, for places; empty in a browser, where nobody asks for them. */
  readonly texts: ReadonlyMap<string, string>;
}

const flawless: Flaws = { unread: [], errors: [] };

/** Gathers records into a catalogue without judging them; of two records with one id the first stays. */
export function gather(loaded: readonly Loaded[], { unread, errors }: Flaws = flawless): Catalogue {
  const files = new Map<string, string>();
  const texts = new Map<string, string>();
  const byKind = new Map<Kind, Map<string, unknown>>();
  for (const { kind, record, file, text } of loaded) {
    const of = byKind.get(kind) ?? new Map<string, unknown>();
    byKind.set(kind, of);
    if (of.has(record.id)) continue;
    of.set(record.id, record);
    files.set(`${kind}/${record.id}`, file);
    if (text !== undefined) texts.set(file, text);
  }
  const map = <K extends Kind>(kind: K) => (byKind.get(kind) ?? new Map()) as ReadonlyMap<string, RecordOf[K]>;
  return {
    club: [...map("club").values()][0],
    buses: map("bus"),
    boards: map("board"),
    firmware: map("firmware"),
    cards: map("card"),
    conflicts: map("conflict"),
    builds: map("build"),
    parts: map("part"),
    files,
    texts,
    unread,
    errors,
  };
}

/** All records of a kind, under their ids. */
export function allOf<K extends Kind>(catalogue: Catalogue, kind: K): ReadonlyMap<string, RecordOf[K]> {
  const maps = {
    club: new Map(catalogue.club ? [[catalogue.club.id, catalogue.club]] : []),
    bus: catalogue.buses,
    board: catalogue.boards,
    firmware: catalogue.firmware,
    card: catalogue.cards,
    conflict: catalogue.conflicts,
    build: catalogue.builds,
    part: catalogue.parts,
  } as const;
  return maps[kind] as unknown as ReadonlyMap<string, RecordOf[K]>;
}
