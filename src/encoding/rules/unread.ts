// Known problems that could not be read: a machine in which one may still occur, by what can be read of it, is not known to work in any way.
import type { Unread } from "../../records/index.js";
import { type ConstraintDraft, fact, type TradeRule } from "../draft.js";
import { type Frame, onRevisions } from "../frame.js";
import { occurrences } from "./conflicts.js";

export const unread: TradeRule = {
  name: "unread",
  says: "A known problem that could not be read leaves the whole answer open, unless what can be read of it shows that it cannot occur in this machine.",
  drafts: (frame) => frame.question.catalogue.unread.flatMap((record) => unreadDrafts(frame, record)),
};

function unreadDrafts(frame: Frame, record: Unread): ConstraintDraft[] {
  if (!record.conflict || record.conflict.disproved) return [];
  if (occurrences(frame, record.conflict).length === 0) return [];
  const { says, how } = unreadWords(record, "what it says may bear on this");
  const when = [[onRevisions(frame, () => true)]];
  return [{ kind: "unknown", fact: fact("unread", says), how, when, despiteTest: true, unread: record }];
}

/** What is missing and how it is found out, for a record that could not be read. */
export function unreadWords({ file, line, column, says, hint }: Unread, why: string): { readonly says: string; readonly how: string } {
  return {
    says: `${file}:${line}:${column} could not be read, and ${why}.`,
    how: `Mend it, then ask again. ${says}${hint ? ` ${hint}` : ""}`,
  };
}
