// Chains through the slots (priority, grant, acknowledge): each reaches a card only over slots that pass it on.
import { chainsNamed, onChain } from "../../catalogue/index.js";
import { type Board, type Card, itemAt, known } from "../../records/index.js";
import type { Literal } from "../../solver/index.js";
import { listText } from "../../words/index.js";
import { type ConstraintDraft, conjunctions, fact, never, ref, type TradeRule, unsettled } from "../draft.js";
import type { Fact, Ref } from "../facts.js";
import { always, cardIn, complement, eachCard, eachMode, type Frame, holdsIn, inSlot, modeKept, onRevisions } from "../frame.js";

export const chain: TradeRule = {
  name: "chain",
  says: "A card that uses a chain stands on it, every slot before it passes the chain on, and no more cards use it than it serves.",
  drafts: (frame) => {
    const all = chains(frame);
    return [
      ...all.flatMap((chain) => users(frame, chain).flatMap((at) => reaching(frame, chain, at))),
      ...all.flatMap((chain) => bridged(frame, chain)),
    ].concat(all.flatMap((chain) => tooMany(frame, chain)));
  },
};

type Empty = "breaks" | "passes" | "jumper" | "plug" | "unknown";

/** A chain of this machine. `slots` is empty where the board does not lead it. */
interface Chain {
  readonly id: string;
  readonly name: string;
  readonly slots: readonly string[];
  readonly empty: Empty;
  readonly most?: number | undefined;
  readonly ref: Ref;
}

/** The chains of the bus, and those that a card uses and the bus lacks. */
function chains(frame: Frame): readonly Chain[] {
  const { board, bus, cards } = frame.question;
  const own = (bus.chains ?? []).map(({ id, name, most }): Chain => {
    const at = board.chains?.findIndex((c) => c.chain === id) ?? -1;
    const led = board.chains?.[at];
    const ofBoard = ref("board", board.id, at < 0 ? "" : `/chains/${at}`);
    return { id, name, slots: led?.slots ?? [], empty: emptyOf(led), most, ref: ofBoard };
  });
  const strange = new Set(
    cards.flatMap(({ card }) => {
      const named = typeof card.chain === "string" && !bus.chains ? [""] : chainsNamed(card);
      return named.filter((id) => onChain(card, id) === "uses" && !own.some((c) => c.id === id));
    }),
  );
  const absent = [...strange].map(
    (id): Chain => ({ id, name: id || "priority chain", slots: [], empty: "passes", ref: ref("board", board.id) }),
  );
  return [...own, ...absent];
}

function emptyOf(led: NonNullable<Board["chains"]>[number] | undefined): Empty {
  const empty = known(led?.empty);
  return typeof empty === "string" ? empty : "unknown";
}

/** Cards that use the chain, or may: what is not written down may be any of the three. */
function users(frame: Frame, chain: Chain): readonly number[] {
  return eachCard(frame).flatMap(({ at, asked }) => {
    const word = onChain(asked.card, chain.id);
    return word === "uses" || (word === undefined && frame.question.bus.chains) ? [at] : [];
  });
}

/** The modes in which the cards do on the chain what their records say, as conditions; a single empty one when that is always. */
function togetherOnChain(frame: Frame, cards: readonly number[]): Literal[][] {
  const perMode = eachMode(frame).map(({ at: m }) => ({
    kept: modeKept(frame, m),
    on: cards.map((at) => holdsIn(frame, m, at, "chain")),
  }));
  if (perMode.every(({ on }) => on.every((l) => always(frame, l)))) return [[]];
  return perMode.filter(({ on }) => on.every((l) => l.values.length > 0)).map(({ kept, on }) => [kept, ...on]);
}

/** Refused where the records say so; open where one of the cards is silent. */
function refused(frame: Frame, chain: Chain, sure: boolean, cards: readonly Card[], told: Fact, ...when: Literal[][]): ConstraintDraft[] {
  if (sure) return never(frame, told, ...when);
  const silent = cards.filter((card) => onChain(card, chain.id) === undefined).map((card) => card.name);
  const says = `${told.says} What ${listText(silent)} ${silent.length > 1 ? "do" : "does"} on the chain is not written down.`;
  const how = `Look for a link between the two chain contacts at the card's edge: joined, it passes the chain on; led to a chip, it uses it; open, it breaks it.`;
  return unsettled(frame, { ...told, says }, how, ...when);
}

/** A card that uses the chain stands on it, and no card before it breaks it. */
function reaching(frame: Frame, chain: Chain, at: number): ConstraintDraft[] {
  const { slots, cards } = frame.question;
  const { card } = itemAt(cards, at);
  const off = slots.filter((s) => !chain.slots.includes(s.id)).map((s) => s.id);
  const sure = onChain(card, chain.id) === "uses";
  const where = chain.slots.length === 0 ? "this board" : off.join(", ") || "this board";
  const says = `${card.name} ${sure ? "uses" : "may use"} the ${chain.name}; it does not run through ${where}.`;
  const told = fact("chain", says, ref("card", card.id, "/chain"), chain.ref);
  const nowhere = togetherOnChain(frame, [at]).map((on) => [inSlot(frame, at, (s) => off.includes(s.id)), ...on]);
  const behind = chain.slots.flatMap((own, place) =>
    chain.slots.slice(0, place).flatMap((before) => [...breaking(frame, chain, at, own, before), ...filled(frame, chain, at, own, before)]),
  );
  return [...refused(frame, chain, sure, [card], told, ...nowhere), ...behind];
}

function breaking(frame: Frame, chain: Chain, at: number, own: string, before: string): ConstraintDraft[] {
  const { card } = itemAt(frame.question.cards, at);
  return eachCard(frame).flatMap(({ at: other, asked }): ConstraintDraft[] => {
    const word = onChain(asked.card, chain.id);
    if (other === at || word === "uses" || word === "passes") return [];
    const sure = onChain(card, chain.id) === "uses" && word === "breaks";
    const says = `${asked.card.name} in ${before} ${word ?? "may break"} the ${chain.name} for ${card.name} behind it in ${own}.`;
    const told = fact("chain", says, ref("card", asked.card.id, "/chain"), ref("card", card.id, "/chain"), chain.ref);
    const when = togetherOnChain(frame, [at, other]).map((on) => [
      inSlot(frame, at, (s) => s.id === own),
      inSlot(frame, other, (s) => s.id === before),
      ...on,
    ]);
    return refused(frame, chain, sure, [asked.card, card], told, ...when);
  });
}

/** The states in which the card stands in `own` and no card in `before`. A slot that the revision lacks is passed over. */
function withEmpty(frame: Frame, at: number, own: string, before: string): Literal[][] {
  const missing = frame.question.slots.find((s) => s.id === before)?.revisions;
  const fillers = eachCard(frame).filter((f) => f.at !== at);
  return togetherOnChain(frame, [at]).map((on) => [
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
}

/** A slot before it that nothing can bridge holds a card, whatever that card does. */
function filled(frame: Frame, chain: Chain, at: number, own: string, before: string): ConstraintDraft[] {
  const { card } = itemAt(frame.question.cards, at);
  const sure = onChain(card, chain.id) === "uses";
  const needs = `${card.name} in ${own} ${sure ? "needs" : "may need"}`;
  const refs = [ref("card", card.id, "/chain"), chain.ref];
  if (chain.empty === "breaks") {
    const says = `${needs} a card in ${before}: an empty slot breaks the ${chain.name}.`;
    return refused(frame, chain, sure, [card], fact("chain", says, ...refs), ...withEmpty(frame, at, own, before));
  }
  if (chain.empty === "unknown") {
    const says = `${needs} the ${chain.name} through ${before}; whether an empty slot passes it on is not known.`;
    const how =
      "Measure with the power off from one chain contact of an empty slot to the other, and look beside it for a jumper that joins them.";
    return unsettled(frame, fact("chain", says, ...refs), how, ...withEmpty(frame, at, own, before));
  }
  if (chain.empty !== "plug") return [];
  return eachCard(frame).flatMap(({ at: wide, asked }) => {
    const covering = coversFrom(frame, asked.card, before);
    const says = `${needs} a plug in ${before} for the ${chain.name}; ${asked.card.name} covers that slot.`;
    const told = fact("chain", says, ...refs, ref("card", asked.card.id, "/room/slots"));
    const when = withEmpty(frame, at, own, before).map((empty) => [...empty, inSlot(frame, wide, (s) => covering.includes(s.id))]);
    return refused(frame, chain, sure, [card], told, ...when);
  });
}

/** Slots from which a wide card covers this one. */
function coversFrom(frame: Frame, card: Card, covered: string): readonly string[] {
  const { slots } = frame.question;
  const place = slots.find((s) => s.id === covered)?.position;
  if (place === undefined) return [];
  return slots.filter((s) => s.position < place && place < s.position + (card.room.slots ?? 1)).map((s) => s.id);
}

/** Where a jumper or a plug bridges an empty slot, the answer says which is to be fitted, once a slot. */
function bridged(frame: Frame, chain: Chain): ConstraintDraft[] {
  const { empty } = chain;
  if (empty !== "jumper" && empty !== "plug") return [];
  return chain.slots.flatMap((before, place): ConstraintDraft[] => {
    const behind = chain.slots.slice(place + 1);
    const when = conjunctions(
      frame,
      users(frame, chain).flatMap((at) => behind.flatMap((own) => withEmpty(frame, at, own, before))),
    );
    if (when.length === 0) return [];
    const told = fact("chain", `An empty ${before} breaks the ${chain.name}, unless a ${empty} bridges it.`, chain.ref);
    const act = empty === "jumper" ? `Fit the jumper of the ${chain.name} at ${before}` : `Put a plug for the ${chain.name} into ${before}`;
    const says = `${act}; where a card stands that uses the chain there must be none.`;
    const condition = { kind: "remedy" as const, says: told.says, ways: [{ says, costs: "jumper" }], refs: told.refs };
    return [{ kind: "soft", fact: told, when, level: 3, condition }];
  });
}

/** More cards use the chain than it serves. */
function tooMany(frame: Frame, chain: Chain): ConstraintDraft[] {
  const { bus, cards } = frame.question;
  const all = users(frame, chain);
  if (chain.most === undefined || all.length <= chain.most) return [];
  const names = (of: readonly number[]) => of.map((at) => itemAt(cards, at).card.name);
  const silent = (at: number) => onChain(itemAt(cards, at).card, chain.id) === undefined;
  const when = (groups: readonly (readonly number[])[]) =>
    groups.flatMap((group) => togetherOnChain(frame, group).map((on) => [...group.map((at) => cardIn(frame, at)), ...on]));
  const groups = choose(all, chain.most + 1);
  const told = (verb: string, of: readonly number[]) => {
    const says = `The ${chain.name} serves at most ${chain.most} cards; ${listText(names(of))} ${verb} it.`;
    return fact("chain", says, ref("bus", bus.id, "/chains"), ...of.map((at) => ref("card", itemAt(cards, at).card.id, "/chain")));
  };
  const sure = all.filter((at) => !silent(at));
  return [
    ...never(frame, told("use", sure), ...when(groups.filter((group) => !group.some(silent)))),
    ...refused(
      frame,
      chain,
      false,
      all.map((at) => itemAt(cards, at).card),
      told("may use", all),
      ...when(groups.filter((g) => g.some(silent))),
    ),
  ];
}

/** Every way to take so many. */
function choose(from: readonly number[], count: number): number[][] {
  if (count === 0) return [[]];
  return from.flatMap((first, i) => choose(from.slice(i + 1), count - 1).map((rest) => [first, ...rest]));
}
