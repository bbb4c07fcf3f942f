// What a record is found by: names, numbers and symptoms that stand in it. Its page adds the answer and the verdict; the command `find` takes
// the record alone, since nobody waits for a command while all answers are worked out.
import type { Catalogue } from "../../catalogue/index.js";
import type { Board, Build, Card, Conflict, Firmware, Kind, Part } from "../../records/index.js";
import { recordName } from "../common.js";
import { pageOf } from "../links.js";
import { partTypes } from "../part-types.js";
import type { SearchEntry } from "./entries.js";

type OwnWords = Pick<SearchEntry, "kind" | "names" | "symptoms">;

export const ownWords = {
  card: (card: Card): OwnWords => ({ kind: "card", names: [card.model, card.id, card.maker, ...card.does], symptoms: [] }),
  board: (board: Board): OwnWords => ({
    kind: "board",
    names: [board.model, board.id, ...board.revisions.map((r) => `${board.model} ${r.id}`)],
    symptoms: [],
  }),
  firmware: (family: Firmware): OwnWords => ({
    kind: "firmware",
    names: [
      family.id,
      ...family.versions.map((v) => v.id),
      ...family.versions.flatMap((v) => (typeof v.image.crc32 === "string" && v.image.crc32 !== "" ? [v.image.crc32] : [])),
    ],
    symptoms: [],
  }),
  conflict: (conflict: Conflict, catalogue: Catalogue): OwnWords => ({
    kind: "known problem",
    names: [conflict.id, ...(conflict.when.cards ?? []).map((c) => recordName(catalogue, "card", c.card))],
    symptoms: conflict.symptoms,
  }),
  build: ({ id, result }: Build): OwnWords => ({
    kind: "tested build",
    names: [id],
    symptoms: [...(result?.symptoms ?? []), ...(result?.modes ?? []).flatMap((m) => m.symptoms ?? []), ...(result?.faults_open ?? [])],
  }),
  part: (part: Part): OwnWords => ({
    kind: "part",
    names: [part.id, part.type === "memory" || part.type === "connector" ? part.family : partTypes[part.type]],
    symptoms: [],
  }),
};

export interface RecordEntry extends SearchEntry {
  readonly of: { readonly kind: Kind; readonly id: string };
}

interface Named {
  readonly id: string;
  readonly name: string;
  readonly summary?: string;
}

/** Every record of the club as the search knows it without any answer. */
export function entriesOfRecords(catalogue: Catalogue): readonly RecordEntry[] {
  const entries = <R extends Named>(kind: Kind, records: Iterable<R>, own: (record: R) => OwnWords, says?: (record: R) => string) =>
    [...records].map(
      (record): RecordEntry => ({
        of: { kind, id: record.id },
        href: pageOf(kind, record.id),
        title: record.name,
        answer: says?.(record) ?? record.summary ?? "",
        boards: [],
        ...own(record),
      }),
    );
  return [
    ...entries("board", catalogue.boards.values(), ownWords.board),
    ...entries("card", catalogue.cards.values(), ownWords.card),
    ...entries("firmware", catalogue.firmware.values(), ownWords.firmware),
    ...entries(
      "conflict",
      catalogue.conflicts.values(),
      (c) => ownWords.conflict(c, catalogue),
      (c) => c.cause,
    ),
    ...entries("build", catalogue.builds.values(), ownWords.build),
    ...entries("part", catalogue.parts.values(), ownWords.part),
  ];
}
