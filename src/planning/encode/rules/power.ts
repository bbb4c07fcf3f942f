// Power in all: every rail may be within its limit and the supply still be overloaded.
import { known, unknown } from "../../../records/index.js";
import type { Term } from "../../../solver/index.js";
import { type Draft, fact, ref, type TradeRule, unsettled } from "../draft.js";
import { cardIn, eachCard, type Frame } from "../frame.js";
import { drawn_mA, drawTerms, milli, mostDrawn } from "./rails.js";

export const power: TradeRule = {
  name: "power",
  says: "Worst-case currents together stay within the power the supply gives in all.",
  drafts: powerDrafts,
};

function powerDrafts(frame: Frame): Draft[] {
  const { board, bus, revisions } = frame.question;
  if (board.total_W === undefined) return [];
  const total = known(board.total_W);
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
        [cardIn(frame, at)],
      ),
    );
  const volts = (rail: string) => Math.abs(bus.rails.find((r) => r.id === rail)?.volts ?? 0);
  /** Milliwatts the board itself takes, per revision; a missing figure adds nothing here (the rail's own rule tells of it). */
  const own = revisions.map((r) =>
    board.rails.reduce((sum, l) => {
      const amps = l.board_A === undefined ? 0 : known(l.board_A);
      return amps === unknown || (l.revisions && !l.revisions.includes(r)) ? sum : sum + milli(amps) * volts(l.rail);
    }, 0),
  );
  const draw = (at: number) => (revision: string) => {
    const { card } = frame.question.cards[at]!;
    return [...new Set(card.power.map((p) => p.rail))].reduce((sum, rail) => sum + drawn_mA(card, rail, revision) * volts(rail), 0);
  };
  const all = users.reduce((sum, { at }) => sum + mostDrawn(frame, at, draw(at)), 0);
  const limit = Math.floor(total * (board.total_derate ?? 1) * 1000 + 1e-6);
  const dearest = Math.max(...own);
  if (all + dearest <= limit) return [];
  const says = `In all the cards take up to ${(all / 1000).toFixed(1)} W; the supply of ${board.name} leaves ${((limit - dearest) / 1000).toFixed(1)} W.`;
  const board_mW: Term = { variable: frame.revision, weights: own.map(Math.round) };
  const rounded = (at: number) => (r: string) => Math.round(draw(at)(r));
  return [
    {
      kind: "sure",
      fact: fact("rails", says, pointer, ...users.map(({ asked }) => ref("card", asked.card.id, "/power"))),
      rules: [{ kind: "linear", terms: [...users.flatMap(({ at }) => drawTerms(frame, at, rounded(at))), board_mW], max: limit }],
    },
  ];
}
