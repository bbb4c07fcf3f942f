// Unread records in an answer: which of them bear on it, and the answer to a question that names one.
import type { Catalogue } from "../../catalogue/index.js";
import { type Compiled, unreadWords } from "../../encoding/index.js";
import type { Unread } from "../../records/index.js";
import type { Answer, UnknownFact, UnreadRecord } from "./answer.js";
import { nothingTried } from "./repairs.js";
import { unknownSentence } from "./sentence.js";

/** All unread records of the club, those that bear first. */
export function unreadRecords(catalogue: Catalogue, bearing: readonly Unread[]): UnreadRecord[] {
  const told = catalogue.unread.map(({ kind, id, file, line, column, says, hint }, at): UnreadRecord => {
    const bears = bearing.some((one) => one === catalogue.unread[at]);
    return { ...(kind ? { kind } : {}), id, file, line, column, says, ...(hint ? { hint } : {}), bears };
  });
  return [...told.filter((record) => record.bears), ...told.filter((record) => !record.bears)];
}

/** Unread records that could change what the compiled question comes to. */
export function bearingOn({ unsettled, doubted }: Compiled): Unread[] {
  return [...new Set([...unsettled.flatMap((draft) => draft.unread ?? []), ...doubted])];
}

/** The answer to a question that names records which could not be read: not known, since nothing is known of them. */
export function answerUnread(catalogue: Catalogue, named: readonly Unread[]): Answer {
  const unknowns = named.map((record): UnknownFact => ({ ...unreadWords(record, "the question names it"), refs: [], settles: 1 }));
  return {
    kind: "answer",
    finished: true,
    verdict: "unknown",
    says: unknownSentence(unknowns[0]?.says ?? "a record that could not be read."),
    count: "0",
    exact: true,
    hanging: "0",
    hangingExact: false,
    taken: [],
    combinations: [],
    possible: [],
    reasons: [],
    reasonsComplete: false,
    repairs: [],
    repairsComplete: nothingTried,
    unknowns,
    unread: unreadRecords(catalogue, named),
    history: [],
  };
}
