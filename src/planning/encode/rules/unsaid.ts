// Resources of which a record says nothing: nobody knows what the thing takes, so nobody knows that it meets nothing.
import { unsaidOfCard, unsaidOfPart } from "../../../catalogue/index.js";
import { type Board, bytes, listed } from "../../../records/index.js";
import { unsaidOwner, unsaidText } from "../../../words/index.js";
import { takings, together } from "../claims.js";
import { type Draft, fact, ref, type TradeRule, unsettled } from "../draft.js";
import { cardIn, eachCard, type Frame, ofRevision, onRevisions, settingsStand, withMemory } from "../frame.js";

export const unsaid: TradeRule = {
  name: "unsaid",
  says: "Ports, memory, interrupt lines and DMA channels of which a record is silent are not known; none is written as none.",
  drafts: (frame) => [...ofCards(frame), ...ofBoard(frame)],
};

function ofCards(frame: Frame): Draft[] {
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
function ofBoard(frame: Frame): Draft[] {
  const { board, bus } = frame.question;
  const cards = takings(frame).filter((t) => t.card !== undefined);
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

function findForPart(part: Board["fixed"][number], board: Board): string {
  return part.find ?? `Look it up in the manual or schematic of ${board.name} and write it into the record: none, where it takes none.`;
}

function pointer(path: readonly (string | number)[]): string {
  return path.map((step) => `/${step}`).join("");
}
