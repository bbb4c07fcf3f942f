// Lines that reach a slot: an interrupt or DMA channel that is not on the card's edge, or not led to the slot, is never heard.
import { type Bus, itemAt, listed, type Slot } from "../../records/index.js";
import { lineOf, resourceClaims, together } from "../claims.js";
import { type ConstraintDraft, fact, never, ref, type TradeRule } from "../draft.js";
import { inSlot } from "../frame.js";

export const lines: TradeRule = {
  name: "lines",
  says: "An interrupt line or DMA channel works only where both the card's edge and the slot carry it.",
  drafts(frame) {
    const { bus, slots } = frame.question;
    return resourceClaims(frame).flatMap((taken): ConstraintDraft[] => {
      const at = taken.card;
      if (at === undefined) return [];
      const { card } = itemAt(frame.question.cards, at);
      const edge = bus.edges.find((e) => e.id === card.edge);
      const check = (what: "interrupts" | "dma", name: string): ConstraintDraft[] => {
        const deaf = slots.filter((s) => !reaches(bus, edge?.[what], s, what, name));
        if (deaf.length === 0) return [];
        const word = what === "interrupts" ? "interrupt" : "DMA channel";
        const where =
          deaf.length === slots.length
            ? `no slot of ${frame.question.board.name} leads it to this card`
            : `it does not reach ${deaf.map((s) => s.id).join(", ")}`;
        return never(
          frame,
          fact(
            "lines",
            `${taken.who} uses ${word} ${name}; ${where}.`,
            taken.ref,
            ref("board", frame.question.board.id, "/slots"),
            ref("bus", bus.id, "/edges"),
          ),
          // A card that is off in every mode, and then lets go of its lines, needs none of them.
          ...together(frame, taken, taken, what).map((on) => [...taken.when, inSlot(frame, at, (s) => deaf.includes(s)), ...on]),
        );
      };
      return [
        ...listed(taken.claims.interrupts).flatMap((i) => check("interrupts", i.line)),
        ...listed(taken.claims.dma).flatMap((d) => check("dma", d.channel)),
      ];
    });
  },
};

function reaches(bus: Bus, onEdge: readonly string[] | undefined, slot: Slot, what: "interrupts" | "dma", name: string): boolean {
  const same = (other: string) => (what === "interrupts" ? lineOf(bus, other)?.id === lineOf(bus, name)?.id : other === name);
  const slotEdge = bus.edges.find((e) => e.id === slot.edge);
  const atSlot = slot[what] ?? slotEdge?.[what];
  return (onEdge === undefined || onEdge.some(same)) && (atSlot === undefined || atSlot.some(same));
}
