// The priority chain through the slots: it reaches a card only over slots that pass it on.
import { type Draft, fact, never, ref, type TradeRule } from "../draft.js";
import { eachCard, inSlot } from "../frame.js";

export const chain: TradeRule = {
  name: "chain",
  says: "A card that uses the priority chain stands on it, and every slot before it passes the chain on.",
  drafts(frame) {
    const { board, bus, slots } = frame.question;
    return eachCard(frame).flatMap(({ at, asked: { card } }): Draft[] => {
      if (card.chain !== "uses") return [];
      const order = board.chain ?? [];
      const refs = [ref("card", card.id, "/chain"), ref("board", board.id, "/chain")];
      const name = bus.chain?.name ?? "priority chain";
      const off = never(
        frame,
        fact(
          "chain",
          `${card.name} uses the ${name}; it does not run through ${
            slots
              .filter((s) => !order.includes(s.id))
              .map((s) => s.id)
              .join(", ") || "this board"
          }.`,
          ...refs,
        ),
        [inSlot(frame, at, (s) => !order.includes(s.id))],
      );
      const behind = order.flatMap((own, place) =>
        order.slice(0, place).flatMap((before): Draft[] => {
          const mine = inSlot(frame, at, (s) => s.id === own);
          const broken = eachCard(frame).filter(({ asked }) => asked.card.chain === "breaks");
          const breakers = broken.flatMap(({ at: other, asked }) =>
            never(
              frame,
              fact(
                "chain",
                `${asked.card.name} in ${before} breaks the ${name} for ${card.name} behind it in ${own}.`,
                ref("card", asked.card.id, "/chain"),
                ...refs,
              ),
              [mine, inSlot(frame, other, (s) => s.id === before)],
            ),
          );
          if (!bus.chain?.broken_by_empty) return breakers;
          const fillers = eachCard(frame).filter(({ at: other, asked }) => other !== at && asked.card.chain !== "breaks");
          const elsewhere = {
            variable: mine.variable,
            values: Array.from({ length: slots.length + 1 }, (_, v) => v).filter((v) => !mine.values.includes(v)),
          };
          const filled: Draft = {
            kind: "sure",
            fact: fact(
              "chain",
              `${card.name} in ${own} needs a card in ${before}: an empty slot breaks the ${name}.`,
              ...refs,
              ref("bus", bus.id, "/chain"),
            ),
            rules: [{ kind: "clause", literals: [elsewhere, ...fillers.map((f) => inSlot(frame, f.at, (s) => s.id === before))] }],
          };
          return [...breakers, filled];
        }),
      );
      return [...off, ...behind];
    });
  },
};
