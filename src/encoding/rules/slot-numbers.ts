// Windows that follow the slot: where the number of a slot is not known, nobody knows where they lie.
import { type IoWindow, listed, type MemoryWindow } from "../../records/index.js";
import { together, unplaced } from "../claims.js";
import { type ConstraintDraft, fact, ref, type TradeRule, unsettled } from "../draft.js";
import { inSlot } from "../frame.js";

export const slotNumbers: TradeRule = {
  name: "slot-numbers",
  says: "A card whose addresses follow the slot stands in a slot whose number is known.",
  drafts(frame) {
    const { board, slots } = frame.question;
    return unplaced(frame).flatMap(({ taken, slot }): ConstraintDraft[] => {
      const at = taken.card;
      if (at === undefined) return [];
      const says = `${taken.who} answers at addresses that follow the slot; which number ${slot.id} of ${board.name} gives it is not known.`;
      const told = fact("slot-numbers", says, taken.ref, ref("board", board.id, `/slots/${slots.indexOf(slot)}`));
      const how = `Measure with the power off which of the contacts that number the slot are tied low in ${slot.id}, and write the number into the record.`;
      const kinds = (["io", "memory"] as const).filter((kind) =>
        listed<IoWindow | MemoryWindow>(taken.claims[kind]).some((w) => w.slot_step !== undefined),
      );
      const here = [...taken.when, inSlot(frame, at, (s) => s.id === slot.id)];
      return unsettled(frame, told, how, ...kinds.flatMap((kind) => together(frame, taken, taken, kind).map((on) => [...here, ...on])));
    });
  },
};
