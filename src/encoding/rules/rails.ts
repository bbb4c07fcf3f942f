// Supply rails: worst-case current per slot and in all, whether cards are switched on or not. A missing figure is unknown, never 0.
import { type Card, howToFind, itemAt, known, limitOf, type Unknown, unknown } from "../../records/index.js";
import type { Literal, Term } from "../../solver/index.js";
import { type ConstraintDraft, fact, never, ref, type TradeRule, unsettled } from "../draft.js";
import { allowed_nano, drawn_nano, most_nano, ofNano } from "../exact-amounts.js";
import { cardIn, eachCard, type Frame, ofRevision, onRevisions } from "../frame.js";

export const rails: TradeRule = {
  name: "rails",
  says: "Worst-case currents stay within each rail's limit, per slot and in all.",
  drafts: (frame) => railNames(frame).flatMap((rail) => oneRail(frame, rail)),
};

type Limit = Frame["question"]["board"]["rails"][number];

/** Worst-case draws of a card on a rail: one entry per line of its record. */
export function draws(card: Card, rail: string): readonly Draw[] {
  return card.power.flatMap((d, i) =>
    d.rail === rail ? [{ worst: known(d.worst_A), find: howToFind(d.worst_A), revisions: d.revisions, pointer: `/power/${i}` }] : [],
  );
}

interface Draw {
  readonly worst: number | Unknown;
  /** How to find it out, in the words of the record. */
  readonly find?: string | undefined;
  readonly revisions?: readonly string[] | undefined;
  readonly pointer: string;
}

/**
 * What one revision of a card draws for sure from a rail, in nA, or in nW where the rail's volts are given; a missing figure adds nothing
 * here and is told apart.
 */
export function drawnFrom(card: Card, rail: string, revision: string, volts = 1): number {
  const all = draws(card, rail).reduce(
    (sum, d) => sum + (d.worst === unknown || (d.revisions && !d.revisions.includes(revision)) ? 0 : drawn_nano(d.worst, volts)),
    0,
  );
  return Math.min(most_nano, all);
}

/**
 * A card's part in a sum: its least draw while it is in a slot, and what its revision draws beyond that.
 * (A card that is left out draws nothing; its revision is then free, so the second term falls to 0.)
 */
export function drawTerms(frame: Frame, at: number, draw: (revision: string) => number): Term[] {
  const { revisions } = itemAt(frame.question.cards, at);
  const all = revisions.map(draw);
  const least = Math.min(...all);
  const slots = frame.question.slots.length;
  const inSlot: Term = {
    variable: itemAt(frame.cards, at).slot,
    weights: Array.from({ length: slots + 1 }, (_, v) => (v === slots ? 0 : least)),
  };
  return all.some((d) => d > least)
    ? [inSlot, { variable: itemAt(frame.cards, at).revision, weights: all.map((d) => d - least) }]
    : [inSlot];
}

export function mostDrawn(frame: Frame, at: number, draw: (revision: string) => number): number {
  return Math.max(...itemAt(frame.question.cards, at).revisions.map(draw));
}

function railNames(frame: Frame): string[] {
  return [...new Set(frame.question.cards.flatMap((c) => c.card.power.map((p) => p.rail)))];
}

function oneRail(frame: Frame, rail: string): ConstraintDraft[] {
  const { board } = frame.question;
  const users = eachCard(frame).filter(({ asked }) => draws(asked.card, rail).length > 0);
  const limits = board.rails.flatMap((limit, i) => (limit.rail === rail ? [{ limit, pointer: `/rails/${i}` }] : []));
  const lacking = onRevisions(frame, (r) => !limits.some(({ limit }) => !limit.revisions || limit.revisions.includes(r)));
  const missing = users.flatMap(({ at, asked }) =>
    never(
      frame,
      fact(
        "rails",
        `${asked.card.name} needs ${rail} V, which ${board.name} does not have.`,
        ref("card", asked.card.id, "/power"),
        ref("board", board.id, "/rails"),
      ),
      [cardIn(frame, at), lacking, naming(frame, at, rail)],
    ),
  );
  const limited = limits.flatMap(({ limit, pointer }) => oneLimit(frame, rail, limit, pointer));
  return [...missing, ...unknownDraws(frame, rail), ...limited];
}

function unknownDraws(frame: Frame, rail: string): ConstraintDraft[] {
  return eachCard(frame).flatMap(({ at, asked: { card } }) =>
    draws(card, rail).flatMap((d) =>
      d.worst === unknown
        ? unsettled(
            frame,
            fact("rails", `How much ${card.name} takes from ${rail} V is not known.`, ref("card", card.id, d.pointer)),
            d.find ?? `Measure its ${rail} V current at work, in a machine with current to spare.`,
            [cardIn(frame, at), ofRevision(frame, at, (r) => !d.revisions || d.revisions.includes(r))],
          )
        : [],
    ),
  );
}

function oneLimit(frame: Frame, rail: string, limit: Limit, pointer: string): ConstraintDraft[] {
  const { board } = frame.question;
  const users = eachCard(frame).filter(({ asked }) => draws(asked.card, rail).length > 0);
  const here = onRevisions(frame, (r) => !limit.revisions || limit.revisions.includes(r));
  const total = known(limit.limit_A);
  const own = known(limit.board_A);
  const each = users.flatMap(({ at }) => perSlot(frame, rail, at, limit, pointer));
  if (total !== unknown && own !== unknown)
    return [...sum(frame, rail, here.values, allowed_nano(total, limit.derate ?? 1) - drawn_nano(own), pointer), ...each];
  const says =
    total === unknown
      ? `What ${board.name} can give on ${rail} V is not known.`
      : `What ${board.name} itself takes from ${rail} V is not known.`;
  const open = users.flatMap(({ at, asked }) =>
    unsettled(
      frame,
      fact("rails", says, ref("board", board.id, pointer), ref("card", asked.card.id, "/power")),
      `Read the supply's label, and measure the ${rail} V rail with no card fitted.`,
      [here, cardIn(frame, at), drawing(frame, at, rail)],
    ),
  );
  // However little the board takes, what the cards take alone may be too much.
  const atLeast = total === unknown ? [] : sum(frame, rail, here.values, allowed_nano(total, limit.derate ?? 1), pointer);
  return [...open, ...atLeast, ...each];
}

/** One linear rule: the cards that are in, together, stay within the nA that are left for them on these revisions. */
function sum(frame: Frame, rail: string, revisions: readonly number[], limit: number, pointer: string): ConstraintDraft[] {
  const { board } = frame.question;
  const users = eachCard(frame).filter(({ asked }) => draws(asked.card, rail).length > 0);
  const draw = (at: number) => (revision: string) => drawnFrom(itemAt(frame.question.cards, at).card, rail, revision);
  const most = users.map(({ at }) => mostDrawn(frame, at, draw(at)));
  const all = most.reduce((a, b) => a + b, 0);
  if (all <= limit) return [];
  const parts = users.map(({ asked }, i) => `${asked.card.name} ${ofNano(itemAt(most, i))} A`).join(", ");
  const says = `${rail} V: ${parts} make ${ofNano(all)} A; ${board.name} leaves ${ofNano(Math.max(0, limit))} A for cards.`;
  // On revisions this limit is not for, the sum is loosened by more than it can reach.
  const elsewhere: Term = {
    variable: frame.revision,
    weights: frame.question.revisions.map((_, r) => (revisions.includes(r) ? 0 : -all - Math.abs(limit))),
  };
  return [
    {
      kind: "sure",
      fact: fact("rails", says, ref("board", board.id, pointer), ...users.map(({ asked }) => ref("card", asked.card.id, "/power"))),
      rules: [{ kind: "linear", terms: [...users.flatMap(({ at }) => drawTerms(frame, at, draw(at))), elsewhere], max: limit }],
    },
  ];
}

/** The card is of a revision whose record names the rail, if only to say that it takes nothing. */
function naming(frame: Frame, at: number, rail: string): Literal {
  const { card } = itemAt(frame.question.cards, at);
  return ofRevision(frame, at, (r) => draws(card, rail).some((d) => !d.revisions || d.revisions.includes(r)));
}

/** The card is of a revision that takes something from the rail, or may. */
function drawing(frame: Frame, at: number, rail: string): Literal {
  const { card } = itemAt(frame.question.cards, at);
  return ofRevision(frame, at, (r) => draws(card, rail).some((d) => d.worst !== 0 && (!d.revisions || d.revisions.includes(r))));
}

/** What one revision of a card takes in all; the entries of its record for one rail add up. */
function perSlot(frame: Frame, rail: string, at: number, limit: Limit, pointer: string): ConstraintDraft[] {
  const most = limitOf(limit.per_slot_A);
  if (most === Number.POSITIVE_INFINITY) return [];
  const { board, cards } = frame.question;
  const { card, revisions } = itemAt(cards, at);
  const refs = [ref("card", card.id, "/power"), ref("board", board.id, `${pointer}/per_slot_A`)];
  const here = [cardIn(frame, at), onRevisions(frame, (r) => !limit.revisions || limit.revisions.includes(r))];
  if (most === unknown)
    return unsettled(
      frame,
      fact("rails", `How much ${rail} V one slot of ${board.name} may take is not known.`, ...refs),
      "Look it up in the board's manual, or count the supply contacts of the slot.",
      [...here, drawing(frame, at, rail)],
    );
  const tooMuch = (revision: string) => drawnFrom(card, rail, revision) > allowed_nano(most);
  const worst = ofNano(Math.max(...revisions.filter(tooMuch).map((r) => drawnFrom(card, rail, r))));
  const says = `${card.name} takes up to ${worst} A from ${rail} V; one slot gives ${most} A.`;
  return never(frame, fact("rails", says, ...refs), [...here, ofRevision(frame, at, tooMuch)]);
}
