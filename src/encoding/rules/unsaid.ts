// Resources of which a record says nothing: nobody knows what the thing takes, so nobody knows that it meets nothing.
import { kindsOf, mainMemoryLiesAnywhere, unsaidOfCard, unsaidOfPart } from "../../catalogue/index.js";
import { type Board, bytes, listed } from "../../records/index.js";
import { mainMemoryLies, unsaidOwner, unsaidText } from "../../words/index.js";
import { resourceClaims, together } from "../claims.js";
import { type ConstraintDraft, fact, memoryUnknown, ref, type TradeRule, unsettled } from "../draft.js";
import { cardIn, eachCard, type Frame, ofRevision, onRevisions, settingsStand, withMemory } from "../frame.js";

export const unsaid: TradeRule = {
  name: "unsaid",
  says: "Ports, memory, interrupt lines and DMA channels of which a record is silent are not known; none is written as none.",
  drafts: (frame) => [...ofCards(frame), ...ofBoard(frame), ...ofMainMemory(frame), ...ofPartsByMemory(frame)],
};

function ofCards(frame: Frame): ConstraintDraft[] {
  return eachCard(frame).flatMap(({ at, asked: { card } }) =>
    unsaidOfCard(card, frame.question.bus).flatMap((gap) => {
      const told = fact("unsaid", unsaidText(gap.kinds, unsaidOwner(card.name, gap)), ref("card", card.id, pointer(gap.path)));
      const how = gap.find ?? "Look it up in the card's manual or schematic and write it into the record: none, where it takes none.";
      const state = [
        cardIn(frame, at),
        ofRevision(frame, at, (r) => !gap.revisions || gap.revisions.includes(r)),
        ...settingsStand(frame, at, gap.settings),
      ];
      // A card that is off in a mode, and then lets go of what is open, meets nothing in it.
      const when = gap.kinds.flatMap((kind) => together(frame, { card: at }, { card: at }, kind).map((on) => [...state, ...on]));
      return unsettled(frame, told, how, ...when);
    }),
  );
}

/** A part of the board can meet only a card that takes something of the kind. */
function ofBoard(frame: Frame): ConstraintDraft[] {
  const { board, bus } = frame.question;
  const cards = resourceClaims(frame).filter((t) => t.card !== undefined);
  return board.fixed.flatMap((part, at) => {
    const here = [
      onRevisions(frame, (r) => !part.revisions || part.revisions.includes(r)),
      withMemory(frame, (m) => !part.when_memory || part.when_memory.some((s) => bytes(s) === m)),
    ];
    return unsaidOfPart(part, bus).flatMap((kind) => {
      const meets = cards.filter((t) => listed<unknown>(t.claims[kind]).length > 0);
      const when = meets.flatMap((t) => together(frame, t, t, kind).map((on) => [...t.when, ...here, ...on]));
      const told = fact("unsaid", unsaidText([kind], `${part.name} of ${board.name}`), ref("board", board.id, `/fixed/${at}`));
      return unsettled(frame, told, findForPart(part, board), ...when);
    });
  });
}

/** Main memory can lie under any window of a card, where nobody has written down where it lies. */
function ofMainMemory(frame: Frame): ConstraintDraft[] {
  const { board } = frame.question;
  if (!mainMemoryLiesAnywhere(board)) return [];
  const meets = resourceClaims(frame).filter((t) => t.card !== undefined && listed(t.claims.memory).length > 0);
  const when = meets.flatMap((t) => together(frame, t, t, "memory").map((on) => [...t.when, ...on]));
  const told = fact("unsaid", mainMemoryLies(board), ref("board", board.id, board.memory === undefined ? "" : "/memory"));
  const how = `Look up the memory map of ${board.name} and write base and amounts into its record: none, where memory sits on cards.`;
  return unsettled(frame, told, how, ...when);
}

/** A part that is there with some amounts of memory only may be there, where nobody has written down how much is fitted. */
function ofPartsByMemory(frame: Frame): ConstraintDraft[] {
  const { board, bus, memories } = frame.question;
  if (memories.some((m) => m > 0)) return [];
  const cards = resourceClaims(frame).filter((t) => t.card !== undefined);
  return board.fixed.flatMap((part, at) => {
    if (!part.when_memory) return [];
    const here = onRevisions(frame, (r) => !part.revisions || part.revisions.includes(r));
    return kindsOf(bus).flatMap((kind) => {
      if (part[kind] === "none") return [];
      const meets = cards.filter((t) => listed<unknown>(t.claims[kind]).length > 0);
      const when = meets.flatMap((t) => together(frame, t, t, kind).map((on) => [...t.when, here, ...on]));
      const told = fact("unsaid", `Whether ${part.name} is there depends on the memory fitted.`, ref("board", board.id, `/fixed/${at}`));
      return memoryUnknown(frame, told, ...when);
    });
  });
}

function findForPart(part: Board["fixed"][number], board: Board): string {
  return part.find ?? `Look it up in the manual or schematic of ${board.name} and write it into the record: none, where it takes none.`;
}

function pointer(path: readonly (string | number)[]): string {
  return path.map((step) => `/${step}`).join("");
}
