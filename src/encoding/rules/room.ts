// Room: length, height, slots taken, rear openings, one card a slot.
import { itemAt, known, limitOf, type Slot, unknown } from "../../records/index.js";
import { type ConstraintDraft, conjunctions, fact, never, ref, type TradeRule, unsettled } from "../draft.js";
import { cardIn, eachCard, type Frame, inSlot, onRevisions } from "../frame.js";

export const room: TradeRule = {
  name: "room",
  says: "A card fits in length and height; a wide card keeps its neighbours free; two cards never share a slot or a rear opening.",
  drafts(frame) {
    return [...eachCard(frame).flatMap(({ at }) => [...size(frame, at), ...width(frame, at), ...opening(frame, at)]), ...oneEach(frame)];
  },
};

function size(frame: Frame, at: number): ConstraintDraft[] {
  const { board, slots, cards } = frame.question;
  const { card } = itemAt(cards, at);
  const measures = [
    {
      word: "long",
      of: known(card.room.length_mm),
      most: "longest_mm",
      pointer: "/room/length_mm",
      measure: "Measure the length of the card, bracket left out.",
    },
    {
      word: "high",
      of: known(card.room.height_mm),
      most: "highest_mm",
      pointer: "/room/height_mm",
      measure: "Measure the height of the card above its edge.",
    },
  ] as const;
  return measures.flatMap(({ word, of, most, pointer, measure }) =>
    slots.flatMap((slot, i): ConstraintDraft[] => {
      const limit = limitOf(slot[most]);
      if (limit === Number.POSITIVE_INFINITY) return [];
      const refs = [ref("card", card.id, pointer), ref("board", board.id, `/slots/${i}/${most}`)] as const;
      const here = [inSlot(frame, at, (s) => s.id === slot.id)];
      if (of === unknown)
        return unsettled(
          frame,
          fact(
            "room",
            `How ${word} ${card.name} is, is not known; slot ${slot.id} takes ${limit === unknown ? "nobody has written down how much" : `${limit} mm`}.`,
            ...refs,
          ),
          measure,
          here,
        );
      if (limit === unknown)
        return unsettled(
          frame,
          fact("room", `${card.name} is ${of} mm ${word}; how much slot ${slot.id} takes is not known.`, ...refs),
          `Measure the room above slot ${slot.id}.`,
          here,
        );
      return of > limit
        ? never(frame, fact("room", `${card.name} is ${of} mm ${word}; slot ${slot.id} takes at most ${limit} mm.`, ...refs), here)
        : [];
    }),
  );
}

function width(frame: Frame, at: number): ConstraintDraft[] {
  const { board, slots, cards, revisions } = frame.question;
  const { card } = itemAt(cards, at);
  const wide = card.room.slots ?? 1;
  if (wide === 1) return [];
  const pointer = ref("card", card.id, "/room/slots");
  // From these slots it would reach past the last slot, or over one that the revision lacks.
  const reaches = (s: Slot, revision: string) =>
    Array.from({ length: wide }, (_, k) => s.position + k).every((position) =>
      slots.some((t) => t.position === position && (!t.revisions || t.revisions.includes(revision))),
    );
  const tooFar = slots.filter((s) => !revisions.every((r) => reaches(s, r)));
  const out = never(
    frame,
    fact(
      "room",
      `${card.name} is ${wide} slots wide; from ${tooFar.map((s) => s.id).join(", ")} it would reach past the last slot.`,
      pointer,
      ref("board", board.id, "/slots"),
    ),
    ...tooFar.map((s) => [inSlot(frame, at, (x) => x.id === s.id), onRevisions(frame, (r) => !reaches(s, r))]),
  );
  const besides = eachCard(frame).flatMap(({ at: other, asked }) => {
    if (other === at) return [];
    const pairs = slots.flatMap((s) =>
      slots
        .filter((t) => t.position > s.position && t.position < s.position + wide)
        .map((t) => [inSlot(frame, at, (x) => x.id === s.id), inSlot(frame, other, (x) => x.id === t.id)]),
    );
    return never(
      frame,
      fact(
        "room",
        `${card.name} is ${wide} slots wide and covers the slot that ${asked.card.name} would stand in.`,
        pointer,
        ref("card", asked.card.id),
      ),
      ...pairs,
    );
  });
  return [...out, ...besides];
}

function opening(frame: Frame, at: number): ConstraintDraft[] {
  const { slots, cards, board } = frame.question;
  const { card } = itemAt(cards, at);
  if (!card.room.opening) return [];
  return eachCard(frame).flatMap(({ at: other, asked }) => {
    if (other <= at || !asked.card.room.opening) return [];
    const pairs = slots.flatMap((s) =>
      slots
        .filter((t) => t.id !== s.id && s.opening !== undefined && t.opening === s.opening)
        .map((t) => [inSlot(frame, at, (x) => x.id === s.id), inSlot(frame, other, (x) => x.id === t.id)]),
    );
    return never(
      frame,
      fact(
        "room",
        `${card.name} and ${asked.card.name} both use the rear opening of their slot, and these slots share one.`,
        ref("card", card.id, "/room/opening"),
        ref("card", asked.card.id, "/room/opening"),
        ref("board", board.id, "/slots"),
      ),
      ...pairs,
    );
  });
}

/** One card a slot; cards that are left out stand in none. */
function oneEach(frame: Frame): ConstraintDraft[] {
  const { board, cards, slots } = frame.question;
  if (cards.length < 2) return [];
  // More cards than slots: said as a fact of its own, since pairs alone would not explain it.
  const says = `${board.name} has ${slots.length} slots, and one slot takes one card.`;
  return conjunctions(frame, [[cardIn(frame, 0)]]).length === 0
    ? []
    : [
        {
          kind: "sure",
          fact: fact("room", says, ref("board", board.id, "/slots")),
          rules: [{ kind: "allDifferent", variables: frame.cards.map((c) => c.slot), except: [slots.length] }],
        },
      ];
}
