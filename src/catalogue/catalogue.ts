// The linked catalogue: every record of a club under its id, with the look-ups the later stages need.
// Made by `link`; the ids in it are known to resolve.
import type { Board, Build, Bus, Card, Club, Conflict, Failed, Firmware, Kind, Loaded, Part, RecordOf } from "../records/index.js";

export interface Catalogue {
  readonly club?: Club;
  readonly buses: ReadonlyMap<string, Bus>;
  readonly boards: ReadonlyMap<string, Board>;
  readonly firmware: ReadonlyMap<string, Firmware>;
  readonly cards: ReadonlyMap<string, Card>;
  readonly conflicts: ReadonlyMap<string, Conflict>;
  readonly builds: ReadonlyMap<string, Build>;
  readonly parts: ReadonlyMap<string, Part>;
  /** Files whose record could not be read: an answer they could bear on is not known. */
  readonly unread?: readonly Failed[];
  /** File of a record, by "kind/id". */
  readonly files: ReadonlyMap<string, string>;
  /** Text of a file, for places; empty in a browser, where nobody asks for them. */
  readonly texts: ReadonlyMap<string, string>;
}

/** Gathers records into a catalogue without judging them; of two records with one id the first stays. */
export function gather(loaded: readonly Loaded[]): Catalogue {
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
