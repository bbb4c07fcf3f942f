// Records that could not be read: a conflict in one of them may speak of this machine, and nobody knows what it says.
// What can be read of it all the same may show that it does not apply; then it counts for nothing.
import type { Failed } from "../../../records/index.js";
import { type Draft, fact, ref, type TradeRule } from "../draft.js";
import { type Frame, onRevisions } from "../frame.js";

export const unread: TradeRule = {
  name: "unread",
  says: "A conflict record that could not be read leaves the matter open, unless what can be read of it names another board or a card that is not there.",
  drafts: (frame) =>
    (frame.question.catalogue.unread ?? []).flatMap((failed): Draft[] =>
      failed.kind === "conflict" && mayApply(frame, failed.value) ? [openDraft(frame, failed)] : [],
    ),
};

function openDraft(frame: Frame, { id, file, line, column }: Failed): Draft {
  return {
    kind: "unknown",
    fact: fact(
      "unread",
      `The conflict record ${id} could not be read (${file}:${line}:${column}), and it may speak of this machine.`,
      ref("conflict", id),
    ),
    how: "Mend that file; slotwright check says what is wrong in it.",
    when: [[onRevisions(frame, () => true)]],
    despiteTest: true,
  };
}

/** False only when the readable part says so for sure. */
function mayApply(frame: Frame, value: unknown): boolean {
  const { board, cards } = frame.question;
  const record = fieldsOf(value);
  if (record.status === "disproved") return false;
  const when = fieldsOf(record.when);
  const here = new Set(cards.map((c) => c.card.id));
  const known = frame.question.catalogue;
  const boards = idsOf(when.boards, "board", known.boards);
  const named = idsOf(when.cards, "card", known.cards);
  if (boards && !boards.includes(board.id)) return false;
  return !named?.some((id) => !here.has(id));
}

/** The ids a list names, when every entry names one that there is; a misspelt id could mean any. */
function idsOf(list: unknown, field: string, known: ReadonlyMap<string, unknown>): readonly string[] | undefined {
  if (!Array.isArray(list) || list.length === 0) return undefined;
  const ids = list.map((entry) => fieldsOf(entry)[field]);
  return ids.every((id): id is string => typeof id === "string" && known.has(id)) ? ids : undefined;
}

function fieldsOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Readonly<Record<string, unknown>>) : {};
}
