// The linked catalogue: every record of a club under its id, with the look-ups the later stages need.
// Made by `link`; the ids in it are known to resolve.
import type { Board, Build, Bus, Card, Club, Conflict, Firmware, Kind, Part, RecordOf } from "../records/index.js";

/** A schema-valid record and the file it came from. */
export interface Loaded<K extends Kind = Kind> {
  readonly kind: K;
  readonly record: RecordOf[K];
  /** Path as the club's folder names it: cards/tallow-bus-tracer.yaml */
  readonly file: string;
}

export interface Catalogue {
  readonly club?: Club;
  readonly buses: ReadonlyMap<string, Bus>;
  readonly boards: ReadonlyMap<string, Board>;
  readonly firmware: ReadonlyMap<string, Firmware>;
  readonly cards: ReadonlyMap<string, Card>;
  readonly conflicts: ReadonlyMap<string, Conflict>;
  readonly builds: ReadonlyMap<string, Build>;
  readonly parts: ReadonlyMap<string, Part>;
  /** File of a record, by "kind/id". */
  readonly files: ReadonlyMap<string, string>;
}

/** Gathers records into a catalogue without judging them; of two records with one id the first stays. */
export function gather(loaded: readonly Loaded[]): Catalogue {
  const files = new Map<string, string>();
  const byKind = new Map<Kind, Map<string, unknown>>();
  for (const { kind, record, file } of loaded) {
    const of = byKind.get(kind) ?? new Map<string, unknown>();
    byKind.set(kind, of);
    if (of.has(record.id)) continue;
    of.set(record.id, record);
    files.set(`${kind}/${record.id}`, file);
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
  };
}
