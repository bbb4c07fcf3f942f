// Current: what the cards and the board take from each rail, from one slot, and in all. A figure nobody knows may be anything from 0 up.
import { known, onBoard, onCard } from "./facts.js";
import { type Case, type Fitted, no, type Objection, unknown } from "./world.js";

/** At least so much, and whether that is all. */
interface Sum {
  readonly least: number;
  readonly known: boolean;
}

const nothing: Sum = { least: 0, known: true };
const plus = (a: Sum, b: Sum): Sum => ({ least: a.least + b.least, known: a.known && b.known });
const times = (a: Sum, by: number): Sum => ({ least: a.least * by, known: a.known });
const figure = (value: number | undefined): Sum => (value === undefined ? { least: 0, known: false } : { least: value, known: true });

export function powerObjections(c: Case): Objection[] {
  const { board } = c.world;
  const limits = board.rails.filter((r) => onBoard(r, c));
  return [
    ...c.fitted.flatMap((f) => railsThere(c, f)),
    // "The board alone is within it": a rail is judged where a card takes from it.
    ...limits.flatMap((limit) => {
      if (c.fitted.map((f) => drawOf(f, limit.rail)).every((sum) => sum.known && sum.least === 0)) return [];
      const taken = c.fitted.map((f) => drawOf(f, limit.rail)).reduce(plus, figure(known(limit.board_A)));
      const perSlot = known(limit.per_slot_A);
      return [
        ...within(`rail ${limit.rail}`, taken, figureOrUnknown(known(limit.limit_A), limit.derate ?? 1)),
        ...(perSlot === "any" ? [] : c.fitted.flatMap((f) => within(`rail ${limit.rail} in ${f.slot.id}`, drawOf(f, limit.rail), perSlot))),
      ];
    }),
    ...inAll(c),
  ];
}

const figureOrUnknown = (value: number | undefined, by: number) => (value === undefined ? undefined : value * by);

function drawOf(f: Fitted, rail: string): Sum {
  return f.card.power
    .filter((p) => p.rail === rail && onCard(p, f))
    .map((p) => figure(known(p.worst_A)))
    .reduce(plus, nothing);
}

/** A hair above the limit is the arithmetic's, not the machine's. */
const hair = 1e-9;

function within(what: string, taken: Sum, limit: number | undefined): Objection[] {
  if (limit === undefined) return taken.least === 0 && taken.known ? [] : [unknown(`limit of ${what}`)];
  if (taken.least > limit + hair) return [no(`too much for ${what}`)];
  return taken.known ? [] : [unknown(`current on ${what}`)];
}

/** A card that takes current from a rail, or needs it at all, must have it. */
function railsThere(c: Case, f: Fitted): Objection[] {
  const there = c.world.board.rails.filter((r) => onBoard(r, c)).map((r) => r.rail);
  const wanted = [...f.card.power.filter((p) => onCard(p, f)).map((p) => p.rail), ...(f.card.needs?.rails ?? [])];
  return wanted.filter((rail) => !there.includes(rail)).map((rail) => no(`${f.as} has no ${rail}`));
}

function inAll(c: Case): Objection[] {
  const { board, bus } = c.world;
  const total = known(board.total_W);
  // "Any: no limit beside those of its rails." The board alone is within its supply.
  const takesNothing = (f: Fitted) => bus.rails.map((rail) => drawOf(f, rail.id)).every((sum) => sum.known && sum.least === 0);
  if (total === "any" || (total === undefined && c.fitted.every(takesNothing))) return [];
  const watts = bus.rails.map((rail) => {
    const own = board.rails.filter((r) => r.rail === rail.id && onBoard(r, c)).map((r) => figure(known(r.board_A)));
    return times([...own, ...c.fitted.map((f) => drawOf(f, rail.id))].reduce(plus, nothing), Math.abs(rail.volts));
  });
  return within("the supply in all", watts.reduce(plus, nothing), figureOrUnknown(total, board.total_derate ?? 1));
}
