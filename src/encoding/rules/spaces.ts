// Address spaces: on a bus with several, a window that does not say which it lies in may meet any other.
import { lacksSpace } from "../../catalogue/index.js";
import { hex, listed } from "../../records/index.js";
import { capital, type ResourceClaim, resourceClaims, together } from "../claims.js";
import { type ConstraintDraft, fact, ref, type TradeRule, unsettled } from "../draft.js";

export const spaces: TradeRule = {
  name: "spaces",
  says: "On a bus with several address spaces, a memory window whose space is not written down may meet any other.",
  drafts(frame) {
    const { bus } = frame.question;
    if (!bus.spaces) return [];
    const all = resourceClaims(frame).filter((t) => listed(t.claims.memory).length > 0);
    const cards = all.filter((t) => t.card !== undefined);
    return all.flatMap((taken): ConstraintDraft[] => {
      const open = listed(taken.claims.memory).filter((w) => lacksSpace(bus, w));
      const [first] = open;
      if (!first) return [];
      const says = `In which address space of ${bus.name} ${taken.who} answers at ${hex(first.base, 5)} is not written down.`;
      const told = fact("spaces", capital(says), taken.ref, ref("bus", bus.id, "/spaces"));
      const names = bus.spaces?.map((s) => s.id).join(" or ");
      const how = `Look up the address modifiers it answers to, and write its space into the record: ${names}.`;
      // A card that is off in a mode and lets go of its memory meets nothing in it; a window of the board can meet only a card.
      const meets: readonly ResourceClaim[] = taken.card === undefined ? cards : [taken];
      const when = meets.flatMap((t) => together(frame, t, t, "memory").map((on) => [...taken.when, ...t.when, ...on]));
      return unsettled(frame, told, how, ...when);
    });
  },
};
