// Power in all: every rail may be within its limit and the supply still be overloaded.
import { itemAt, known, limitOf, unknown } from "../../records/index.js";
import type { Literal, Term } from "../../solver/index.js";
import { type ConstraintDraft, fact, ref, type TradeRule, unsettled } from "../draft.js";
import { allowed_nano, drawn_nano, most_nano, ofNano } from "../exact-amounts.js";
import { cardIn, eachCard, type Frame, ofRevision, onRevisions } from "../frame.js";
import { drawnFrom, drawTerms, mostDrawn } from "./rails.js";

export const power: TradeRule = {
  name: "power",
  says: "Worst-case currents together stay within the power the supply gives in all.",
  drafts: powerDrafts,
};

function powerDrafts(frame: Frame): ConstraintDraft[] {
  const { board, bus, revisions } = frame.question;
  const total = limitOf(board.total_W);
  if (total === Number.POSITIVE_INFINITY) return [];
  const users = eachCard(frame).filter(({ asked }) => asked.card.power.length > 0);
  const pointer = ref("board", board.id, "/total_W");
  if (total === unknown)
    return users.flatMap(({ at, asked }) =>
      unsettled(
        frame,
        fact(
          "rails",
          `What power the supply of ${board.name} can give in all is not known.`,
          pointer,
          ref("card", asked.card.id, "/power"),
        ),
        "Read the label of the supply.",
        [cardIn(frame, at), drawingAny(frame, at)],
      ),
    );
  const volts = (rail: string) => Math.abs(bus.rails.find((r) => r.id === rail)?.volts ?? 0);
  /** What the board itself takes in nW, per revision; a missing figure adds nothing here (the rail's own rule tells of it). */
  const own = revisions.map((r) =>
    board.rails.reduce((sum, l) => {
      const amps = known(l.board_A);
      return amps === unknown || (l.revisions && !l.revisions.includes(r)) ? sum : sum + drawn_nano(amps, volts(l.rail));
    }, 0),
  );
  const draw = (at: number) => (revision: string) => {
    const { card } = itemAt(frame.question.cards, at);
    const all = [...new Set(card.power.map((p) => p.rail))].reduce((sum, rail) => sum + drawnFrom(card, rail, revision, volts(rail)), 0);
    return Math.min(most_nano, all);
  };
  const open = boardUnknown(frame);
  const all = users.reduce((sum, { at }) => sum + mostDrawn(frame, at, draw(at)), 0);
  const limit = allowed_nano(total, board.total_derate ?? 1);
  const dearest = Math.max(...own);
  if (all + dearest <= limit) return open;
  const says = `In all the cards take up to ${ofNano(all)} W; the supply of ${board.name} leaves ${ofNano(Math.max(0, limit - dearest))} W.`;
  const board_nW: Term = { variable: frame.revision, weights: own };
  return [
    ...open,
    {
      kind: "sure",
      fact: fact("rails", says, pointer, ...users.map(({ asked }) => ref("card", asked.card.id, "/power"))),
      rules: [{ kind: "linear", terms: [...users.flatMap(({ at }) => drawTerms(frame, at, draw(at))), board_nW], max: limit }],
    },
  ];
}

/** The card is of a revision that takes something from some rail, or may. */
function drawingAny(frame: Frame, at: number): Literal {
  const { power } = itemAt(frame.question.cards, at).card;
  return ofRevision(frame, at, (r) => power.some((d) => known(d.worst_A) !== 0 && (!d.revisions || d.revisions.includes(r))));
}

/** What the board takes from any rail counts in the sum, also where no card takes from that rail. */
function boardUnknown(frame: Frame): ConstraintDraft[] {
  const { board } = frame.question;
  return board.rails.flatMap((limit, i) =>
    known(limit.board_A) !== unknown
      ? []
      : eachCard(frame).flatMap(({ at, asked: { card } }) =>
          unsettled(
            frame,
            fact(
              "rails",
              `What ${board.name} itself takes from ${limit.rail} V is not known, nor then what is left of the supply's power in all.`,
              ref("board", board.id, `/rails/${i}`),
              ref("card", card.id, "/power"),
            ),
            `Measure the ${limit.rail} V rail with no card fitted.`,
            [cardIn(frame, at), onRevisions(frame, (r) => !limit.revisions || limit.revisions.includes(r))],
          ),
        ),
  );
}
