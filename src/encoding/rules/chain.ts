// The priority chain through the slots: it reaches a card only over slots that pass it on.
import { type Card, itemAt } from "../../records/index.js";
import type { Literal } from "../../solver/index.js";
import { listText } from "../../words/index.js";
import { type Draft, fact, never, ref, type TradeRule, unsettled } from "../draft.js";
import type { Fact } from "../facts.js";
import { always, complement, eachCard, eachMode, type Frame, holdsIn, inSlot, modeKept, onRevisions } from "../frame.js";

export const chain: TradeRule = {
  name: "chain",
  says: "A card that uses the priority chain stands on it, and every slot before it passes the chain on.",
  drafts: (frame) =>
    eachCard(frame).flatMap(({ at, asked }) =>
      mayUse(asked.card) && (asked.card.chain || frame.question.bus.chain) ? reaching(frame, at) : [],
    ),
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

/** What is not written down of a card may be any of the three; where one of them would be refused, the machine hangs on it. */
function mayUse(card: Card): boolean {
  return card.chain === "uses" || card.chain === undefined;
}

function mayBreak(card: Card): boolean {
  return card.chain === "breaks" || card.chain === undefined;
}

/** Refused where the records say so; open where one of the cards is silent. */
function refused(frame: Frame, sure: boolean, cards: readonly Card[], told: Fact, ...when: Literal[][]): Draft[] {
  if (sure) return never(frame, told, ...when);
  const silent = cards.filter((card) => card.chain === undefined).map((card) => card.name);
  const says = `${told.says} What ${listText(silent)} ${silent.length > 1 ? "do" : "does"} on the chain is not written down.`;
  const how = `Look for a link between the two chain contacts at the card's edge: joined, it passes the chain on; led to a chip, it uses it; open, it breaks it.`;
  return unsettled(frame, { ...told, says }, how, ...when);
}

function reaching(frame: Frame, at: number): Draft[] {
  const { board, bus, slots, cards } = frame.question;
  const { card } = itemAt(cards, at);
  const order = board.chain ?? [];
  const name = bus.chain?.name ?? "priority chain";
  const refs = [ref("card", card.id, "/chain"), ref("board", board.id, "/chain")];
  const where = slots.filter((s) => !order.includes(s.id)).map((s) => s.id);
  const sure = card.chain === "uses";
  const uses = sure ? "uses" : "may use";
  const says = `${card.name} ${uses} the ${name}; it does not run through ${where.join(", ") || "this board"}.`;
  const off = refused(
    frame,
    sure,
    [card],
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
  const { card } = itemAt(cards, at);
  return eachCard(frame).flatMap(({ at: other, asked }): Draft[] => {
    if (other === at || !mayBreak(asked.card)) return [];
    const sure = card.chain === "uses" && asked.card.chain === "breaks";
    const breaks = asked.card.chain === "breaks" ? "breaks" : "may break";
    const says = `${asked.card.name} in ${before} ${breaks} the ${bus.chain?.name ?? "priority chain"} for ${card.name} behind it in ${own}.`;
    return refused(
      frame,
      sure,
      [asked.card, card],
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
  const { card } = itemAt(cards, at);
  const missing = slots.find((s) => s.id === before)?.revisions;
  const sure = card.chain === "uses";
  const needs = sure ? "needs" : "may need";
  const says = `${card.name} in ${own} ${needs} a card in ${before}: an empty slot breaks the ${bus.chain?.name ?? "priority chain"}.`;
  const fillers = eachCard(frame).filter((f) => f.at !== at);
  const told = fact("chain", says, ref("card", card.id, "/chain"), ref("board", board.id, "/chain"), ref("bus", bus.id, "/chain"));
  const empty = togetherOnChain(frame, [at]).map((on) => [
    inSlot(frame, at, (s) => s.id === own),
    ...on,
    ...(missing ? [onRevisions(frame, (r) => missing.includes(r))] : []),
    ...fillers.map((f) =>
      complement(
        frame.variables,
        inSlot(frame, f.at, (s) => s.id === before),
      ),
    ),
  ]);
  return refused(frame, sure, [card], told, ...empty);
}
