// Supply rails: worst-case current per slot and in all, whether cards are switched on or not. A missing figure is unknown, never 0.
import { type Card, known, type Unknown, unknown } from "../../records/index.js";
import { type Draft, fact, never, ref, type TradeRule, unsettled } from "../draft.js";
import { cardIn, eachCard, type Frame, inSlot, ofRevision, onRevisions } from "../frame.js";

export const rails: TradeRule = {
  name: "rails",
  says: "Worst-case currents stay within each rail's limit, per slot and in all, and within the supply's power.",
  drafts: (frame) => [...railNames(frame).flatMap((rail) => oneRail(frame, rail)), ...power(frame)],
};

/** Worst-case draws of a card on a rail: one entry per revision that differs. */
export function draws(
  card: Card,
  rail: string,
): { readonly worst: number | Unknown; readonly revisions?: readonly string[]; readonly pointer: string }[] {
  return card.power.flatMap((d, i) =>
    d.rail === rail ? [{ worst: known(d.worst_A), revisions: d.revisions, pointer: `/power/${i}` }] : [],
  );
}

function railNames(frame: Frame): string[] {
  return [
    ...new Set([...frame.question.bus.rails.map((r) => r.id), ...frame.question.cards.flatMap((c) => c.card.power.map((p) => p.rail))]),
  ];
}

const mA = (amps: number) => Math.round(amps * 1000);

function oneRail(frame: Frame, rail: string): Draft[] {
  const { board } = frame.question;
  const users = eachCard(frame).filter(({ asked }) => draws(asked.card, rail).length > 0);
  if (users.length === 0) return [];
  const limits = board.rails.flatMap((limit, i) => (limit.rail === rail ? [{ limit, i }] : []));
  const without = onRevisions(frame, (r) => !limits.some(({ limit }) => !limit.revisions || limit.revisions.includes(r)));
  const missing = users.flatMap(({ at, asked }) =>
    never(
      frame,
      fact(
        "rails",
        `${asked.card.name} needs ${rail} V, which ${board.name} does not have.`,
        ref("card", asked.card.id, "/power"),
        ref("board", board.id, "/rails"),
      ),
      [cardIn(frame, at), without],
    ),
  );
  return [
    ...missing,
    ...unknownDraws(frame, rail),
    ...limits.flatMap(({ limit, i }) => {
      const pointer = `/rails/${i}`;
      const here = onRevisions(frame, (r) => !limit.revisions || limit.revisions.includes(r));
      const total = known(limit.limit_A);
      const own = limit.board_A === undefined ? 0 : known(limit.board_A);
      if (total === unknown || own === unknown) {
        const says =
          total === unknown
            ? `What ${board.name} can give on ${rail} V is not known.`
            : `What ${board.name} itself takes from ${rail} V is not known.`;
        return users.flatMap(({ at, asked }) =>
          unsettled(
            frame,
            fact("rails", says, ref("board", board.id, pointer), ref("card", asked.card.id, "/power")),
            `Read the supply's label, and measure the ${rail} V rail with no card fitted.`,
            [here, cardIn(frame, at)],
          ),
        );
      }
      const allowed = total * (limit.derate ?? 1) - own;
      return [
        ...sum(
          frame,
          rail,
          users.map((u) => u.at),
          here.values,
          allowed,
          pointer,
        ),
        ...perSlot(
          frame,
          rail,
          users.map((u) => u.at),
          limit,
          pointer,
          here,
        ),
      ];
    }),
  ];
}

function unknownDraws(frame: Frame, rail: string): Draft[] {
  return eachCard(frame).flatMap(({ at, asked: { card } }) =>
    draws(card, rail).flatMap((d) =>
      d.worst === unknown
        ? unsettled(
            frame,
            fact("rails", `How much ${card.name} takes from ${rail} V is not known.`, ref("card", card.id, d.pointer)),
            findOr(card, d.pointer, `Measure its ${rail} V current at work, in a machine with current to spare.`),
            [cardIn(frame, at), ofRevision(frame, at, (r) => !d.revisions || d.revisions.includes(r))],
          )
        : [],
    ),
  );
}

function findOr(card: Card, pointer: string, otherwise: string): string {
  const worst = card.power[Number(pointer.split("/")[2])]?.worst_A;
  return typeof worst === "object" && worst.find ? worst.find : otherwise;
}

/** One linear rule: the cards that are in, together, stay within what is left for them on these revisions. */
function sum(
  frame: Frame,
  rail: string,
  users: readonly number[],
  revisions: readonly number[],
  allowed: number,
  pointer: string,
): Draft[] {
  const { board, cards } = frame.question;
  const most = users.map((at) => Math.max(...draws(cards[at]!.card, rail).map((d) => (d.worst === unknown ? 0 : mA(d.worst)))));
  const loosen = most.reduce((a, b) => a + b, 0);
  const limit = Math.floor(allowed * 1000 + 1e-6);
  if (loosen <= limit) return [];
  const says = `${rail} V: ${users.map((at, i) => `${cards[at]!.card.name} ${most[i]! / 1000} A`).join(", ")} make ${loosen / 1000} A; ${board.name} leaves ${Math.round(allowed * 1000) / 1000} A for cards.`;
  const terms = users.map((at, i) => ({
    variable: frame.cards[at]!.slot,
    weights: frame.variables[frame.cards[at]!.slot]!.size > 0 ? outIsZero(frame, at, most[i]!) : [],
  }));
  const elsewhere = { variable: frame.revision, weights: frame.question.revisions.map((_, r) => (revisions.includes(r) ? 0 : -loosen)) };
  return [
    {
      kind: "sure",
      fact: fact("rails", says, ref("board", board.id, pointer), ...users.map((at) => ref("card", cards[at]!.card.id, "/power"))),
      rules: [{ kind: "linear", terms: [...terms, elsewhere], max: limit }],
    },
  ];
}

function outIsZero(frame: Frame, at: number, weight: number): number[] {
  const size = frame.variables[frame.cards[at]!.slot]!.size;
  return Array.from({ length: size }, (_, v) => (v === size - 1 ? 0 : weight));
}

function perSlot(
  frame: Frame,
  rail: string,
  users: readonly number[],
  limit: { per_slot_A?: unknown },
  pointer: string,
  here: ReturnType<typeof onRevisions>,
): Draft[] {
  if (limit.per_slot_A === undefined) return [];
  const most = known(limit.per_slot_A as number | Unknown);
  const { board, cards } = frame.question;
  return users.flatMap((at) =>
    draws(cards[at]!.card, rail).flatMap((d): Draft[] => {
      const refs = [ref("card", cards[at]!.card.id, d.pointer), ref("board", board.id, `${pointer}/per_slot_A`)];
      const when = [inSlot(frame, at, () => true), here, ofRevision(frame, at, (r) => !d.revisions || d.revisions.includes(r))];
      if (d.worst === unknown) return [];
      if (most === unknown)
        return unsettled(
          frame,
          fact("rails", `How much ${rail} V one slot of ${board.name} may take is not known.`, ...refs),
          "Look it up in the board's manual, or count the supply contacts of the slot.",
          when,
        );
      return d.worst > most
        ? never(
            frame,
            fact("rails", `${cards[at]!.card.name} takes up to ${d.worst} A from ${rail} V; one slot gives ${most} A.`, ...refs),
            when,
          )
        : [];
    }),
  );
}

/** Power in all: every rail may be within its limit and the supply still be overloaded. */
function power(frame: Frame): Draft[] {
  const { board, bus, cards } = frame.question;
  if (board.total_W === undefined) return [];
  const total = known(board.total_W);
  const volts = (rail: string) => Math.abs(bus.rails.find((r) => r.id === rail)?.volts ?? 0);
  const own = board.rails.map((r) => ({ rail: r.rail, amps: r.board_A === undefined ? 0 : known(r.board_A) }));
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
  const seen = new Set<string>();
  const boardMilliwatts = own.reduce((sum, { rail, amps }) => {
    if (amps === unknown || seen.has(rail)) return sum;
    seen.add(rail);
    return sum + mA(amps) * volts(rail);
  }, 0);
  const most = users
    .map(({ asked }) =>
      asked.card.power.reduce((sum, d) => sum + (known(d.worst_A) === unknown ? 0 : mA(known(d.worst_A) as number) * volts(d.rail)), 0),
    )
    .map(Math.round);
  const limit = Math.floor(total * 1000 - boardMilliwatts);
  const all = most.reduce((a, b) => a + b, 0);
  if (all <= limit) return [];
  const says = `In all the cards take up to ${(all / 1000).toFixed(1)} W; the supply of ${board.name} leaves ${(limit / 1000).toFixed(1)} W.`;
  return [
    {
      kind: "sure",
      fact: fact("rails", says, pointer, ...users.map(({ at }) => ref("card", cards[at]!.card.id, "/power"))),
      rules: [
        {
          kind: "linear",
          terms: users.map(({ at }, i) => ({ variable: frame.cards[at]!.slot, weights: outIsZero(frame, at, most[i]!) })),
          max: limit,
        },
      ],
    },
  ];
}
