// The priority chain through the slots: it reaches a card only over slots that pass it on.
import type { Literal, Rule } from "../../../solver/index.js";
import { type Draft, fact, never, ref, type TradeRule } from "../draft.js";
import { always, complement, eachCard, eachMode, type Frame, holdsIn, inSlot, modeKept, onRevisions } from "../frame.js";

export const chain: TradeRule = {
  name: "chain",
  says: "A card that uses the priority chain stands on it, and every slot before it passes the chain on.",
  drafts: (frame) => eachCard(frame).flatMap(({ at, asked }) => (asked.card.chain === "uses" ? reaching(frame, at) : [])),
};

/** The modes in which both cards do on the chain what their records say, as conditions; a single empty one when that is always. */
function togetherOnChain(frame: Frame, cards: readonly number[]): Literal[][] {
  const perMode = eachMode(frame).map(({ at: m }) => ({
    kept: modeKept(frame, m),
    on: cards.map((at) => holdsIn(frame, m, at, "chain")),
  }));
  if (perMode.every(({ on }) => on.every((l) => always(frame, l)))) return [[]];
  return perMode.filter(({ on }) => on.every((l) => l.values.length > 0)).map(({ kept, on }) => [kept, ...on]);
}

function reaching(frame: Frame, at: number): Draft[] {
  const { board, bus, slots, cards } = frame.question;
  const { card } = cards[at]!;
  const order = board.chain ?? [];
  const name = bus.chain?.name ?? "priority chain";
  const refs = [ref("card", card.id, "/chain"), ref("board", board.id, "/chain")];
  const where = slots.filter((s) => !order.includes(s.id)).map((s) => s.id);
  const says = `${card.name} uses the ${name}; it does not run through ${where.join(", ") || "this board"}.`;
  const off = never(
    frame,
    fact("chain", says, ...refs),
    ...togetherOnChain(frame, [at]).map((on) => [inSlot(frame, at, (s) => !order.includes(s.id)), ...on]),
  );
  const behind = order.flatMap((own, place) =>
    order
      .slice(0, place)
      .flatMap((before) => [...breaking(frame, at, own, before), ...(bus.chain?.broken_by_empty ? filled(frame, at, own, before) : [])]),
  );
  return [...off, ...behind];
}

function breaking(frame: Frame, at: number, own: string, before: string): Draft[] {
  const { board, bus, cards } = frame.question;
  const { card } = cards[at]!;
  return eachCard(frame).flatMap(({ at: other, asked }): Draft[] => {
    if (other === at || asked.card.chain !== "breaks") return [];
    const says = `${asked.card.name} in ${before} breaks the ${bus.chain?.name ?? "priority chain"} for ${card.name} behind it in ${own}.`;
    return never(
      frame,
      fact("chain", says, ref("card", asked.card.id, "/chain"), ref("card", card.id, "/chain"), ref("board", board.id, "/chain")),
      ...togetherOnChain(frame, [at, other]).map((on) => [
        inSlot(frame, at, (s) => s.id === own),
        inSlot(frame, other, (s) => s.id === before),
        ...on,
      ]),
    );
  });
}

/** A slot before it holds a card, whatever that card does. A slot that the revision lacks is passed over. */
function filled(frame: Frame, at: number, own: string, before: string): Draft[] {
  const { board, bus, cards, slots } = frame.question;
  const { card } = cards[at]!;
  const missing = slots.find((s) => s.id === before)?.revisions;
  const says = `${card.name} in ${own} needs a card in ${before}: an empty slot breaks the ${bus.chain?.name ?? "priority chain"}.`;
  const fillers = eachCard(frame).filter((f) => f.at !== at);
  const rules = togetherOnChain(frame, [at]).map(
    (on): Rule => ({
      kind: "clause",
      literals: [
        ...[inSlot(frame, at, (s) => s.id === own), ...on].map((l) => complement(frame.variables, l)),
        ...(missing ? [onRevisions(frame, (r) => !missing.includes(r))] : []),
        ...fillers.map((f) => inSlot(frame, f.at, (s) => s.id === before)),
      ],
    }),
  );
  const told = fact("chain", says, ref("card", card.id, "/chain"), ref("board", board.id, "/chain"), ref("bus", bus.id, "/chain"));
  return rules.length === 0 ? [] : [{ kind: "sure", fact: told, rules }];
}
