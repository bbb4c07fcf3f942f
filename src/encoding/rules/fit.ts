// Bus and edge: which slots take the card at all, on which revision of the board.
import { type ConstraintDraft, fact, never, ref, type TradeRule } from "../draft.js";
import { cardIn, eachCard, inSlot, onRevisions } from "../frame.js";

export const fit: TradeRule = {
  name: "fit",
  says: "A card goes only into a slot of its bus whose edge takes its own, on a board revision that has the slot.",
  drafts(frame) {
    const { board, bus, slots } = frame.question;
    return eachCard(frame).flatMap(({ at, asked: { card } }): ConstraintDraft[] => {
      if (card.bus !== board.bus) {
        const other = frame.question.catalogue.buses.get(card.bus)?.name ?? card.bus;
        return never(
          frame,
          fact(
            "fit",
            `${card.name} is made for the ${other} bus; ${board.name} has the ${bus.name} bus.`,
            ref("card", card.id, "/bus"),
            ref("board", board.id, "/bus"),
          ),
          [cardIn(frame, at)],
        );
      }
      const edge = bus.edges.find((e) => e.id === card.edge);
      const wrong = slots.filter((s) => !edge?.fits.includes(s.edge));
      const list = wrong.map((s) => s.id).join(", ");
      const tooFew = never(
        frame,
        fact(
          "fit",
          `${card.name} has a ${card.edge} edge and does not go into ${wrong.length > 1 ? "slots" : "slot"} ${list} of ${board.name}.`,
          ref("card", card.id, "/edge"),
          ref("board", board.id, "/slots"),
        ),
        [inSlot(frame, at, (s) => wrong.includes(s))],
      );
      const missing = slots.flatMap((s, i) =>
        s.revisions
          ? never(
              frame,
              fact(
                "fit",
                `Slot ${s.id} is there only on revision ${s.revisions.join(", ")} of ${board.name}.`,
                ref("board", board.id, `/slots/${i}`),
              ),
              [inSlot(frame, at, (t) => t.id === s.id), onRevisions(frame, (r) => s.revisions?.includes(r) !== true)],
            )
          : [],
      );
      return [...tooFew, ...missing];
    });
  },
};
