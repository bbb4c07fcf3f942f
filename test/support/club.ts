// A small club whose records keep every house rule; a test spoils one thing and sees what is told.
import { expect } from "vitest";
import { type Linked, link } from "../../src/catalogue/index.js";
import { type Kind, kinds, type RecordOf, readRecords, writeRecord } from "../../src/records/index.js";
import { sample } from "./samples.js";
import { spellOutBoard, spellOutCard } from "./spell-out.js";

export type TestClub = { -readonly [K in Kind]: Record<string, RecordOf[K]> } & {
  /** File names that differ from the id, by "kind/id". */
  files: Record<string, string>;
  /** What a file's text is changed to before it is read, by "kind/id": for what the writer would write otherwise. */
  texts: Record<string, (text: string) => string>;
  /** Keep what the records of boards and cards leave out; else it is written as none. */
  asWritten?: true;
};

export function testClub(): TestClub {
  const of = <K extends Kind>(kind: K) => Object.fromEntries(sample(kind).map((r) => [r.id, r])) as Record<string, RecordOf[K]>;
  return {
    club: of("club"),
    bus: of("bus"),
    board: of("board"),
    firmware: of("firmware"),
    card: of("card"),
    conflict: of("conflict"),
    build: of("build"),
    part: of("part"),
    files: {},
    texts: {},
  };
}

/** Writes the club's records as files, reads them back and links them: places in findings are real ones. */
export function linkClub(club: TestClub, today = "2000-01-01"): Linked {
  const files = (Object.keys(kinds) as Kind[]).flatMap((kind) =>
    Object.values(club[kind]).map((record) => ({
      file: `${kinds[kind].folder}/${club.files[`${kind}/${record.id}`] ?? record.id}.yaml`,
      content: (club.texts[`${kind}/${record.id}`] ?? ((text) => text))(
        writeRecord(kind, spelt(club, kind, record) as RecordOf[typeof kind]),
      ),
    })),
  );
  const reading = readRecords(files);
  expect(reading.findings, "the spoilt record still has the right shape").toEqual([]);
  return link(reading.records, { today, failed: reading.failed });
}

function spelt(club: TestClub, kind: Kind, record: unknown): unknown {
  if (club.asWritten) return record;
  if (kind === "card") return spellOutCard(record as RecordOf["card"]);
  return kind === "board" ? spellOutBoard(record as RecordOf["board"]) : record;
}
