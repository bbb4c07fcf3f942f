// Swaps: what belongs on two terminals exchanged, two wires exchanged at one end, and two pairs of throws at once.
import { entryOf, itemAt } from "../../records/index.js";
import type { BuiltModel } from "../simulate/build-model.js";
import type { Variant } from "../simulate/model.js";
import type { Join } from "../simulate/netlist.js";
import { type FaultCase, type FaultInput, switchWires } from "./fault-case.js";

/** Two different pairs of throws swapped. */
export function doubleSwaps(input: FaultInput): FaultCase[] {
  const swaps = terminalPairs(input).filter((p) => p.throws);
  return swaps.flatMap((first, i) =>
    swaps.slice(i + 1).map((second): FaultCase => {
      const says = `${first.says} and ${second.says} swapped`;
      const variant = swapNodes(swapNodes(input.built.good, input.built, first.a, first.b), input.built, second.a, second.b);
      return {
        fault: { id: `two-swaps:${first.id}+${second.id}`, kind: "two-swaps", says, fix: `Put right ${first.says}, then ${second.says}.` },
        variant,
        burn: false,
      };
    }),
  );
}

interface TerminalPair {
  readonly id: string;
  readonly x: string;
  readonly y: string;
  readonly says: string;
  readonly a: number;
  readonly b: number;
  /** Both are throws of one pole. */
  readonly throws: boolean;
}

/** Pairs of terminals within the positions that are used: of one pole with at least one wired, of two poles with both wired. */
function terminalPairs({ built, candidate }: FaultInput): TerminalPair[] {
  const { contacts } = candidate;
  const reached = (closed: ReadonlySet<number>) => [...closed].some((p) => contacts.modeAt[p] !== undefined);
  const terminals = contacts.sections.flatMap((section, s) => {
    const use = contacts.uses[s];
    if (!use) return [];
    const throws = section.throws.filter((t) => reached(t.closed)).map((t) => ({ terminal: t.terminal, hub: false }));
    return [...throws, { terminal: section.hub, hub: true }].map((t) => ({
      ...t,
      pole: section.pole,
      wired: use.has(t.terminal),
    }));
  });
  return terminals.flatMap((x, i) =>
    terminals.slice(i + 1).flatMap((y): TerminalPair[] => {
      const same = x.pole === y.pole;
      if (same && !x.hub && !y.hub ? !x.wired && !y.wired : !x.wired || !y.wired) return [];
      const where = same ? ` of pole ${x.pole}` : "";
      return [
        {
          id: `${x.terminal}~${y.terminal}`,
          x: x.terminal,
          y: y.terminal,
          says: `terminals ${x.terminal} and ${y.terminal}${where}`,
          a: entryOf(built.terminal, x.terminal),
          b: entryOf(built.terminal, y.terminal),
          throws: same && !x.hub && !y.hub,
        },
      ];
    }),
  );
}

export function throwSwaps(input: FaultInput): FaultCase[] {
  const single = singleEnds(input);
  // Two terminals with one wire each: that is those two wires swapped, which wireSwaps tells.
  const pairs = terminalPairs(input).filter(({ x, y }) => !single.has(x) || !single.has(y));
  return pairs.map(({ id, says, a, b, throws }) => ({
    fault: {
      id: `${throws ? "throws-swapped" : "terminals-swapped"}:${id}`,
      kind: throws ? "throws-swapped" : "terminals-swapped",
      says: `What belongs on ${says} is swapped`,
      fix: `Exchange what is soldered to ${says}.`,
    },
    variant: swapNodes(input.built.good, input.built, a, b),
    burn: false,
  }));
}

/** Terminals of the switch where just one wire ends. */
function singleEnds(input: FaultInput): ReadonlySet<string> {
  const ends = switchWires(input).flatMap((w) => [w.from, w.to].flatMap((end) => (end.at === "switch" ? [end.terminal] : [])));
  return new Set(ends.filter((t) => ends.indexOf(t) === ends.lastIndexOf(t)));
}

/** Wires on two terminals exchanged; the contacts inside the switch stay as they are. */
function swapNodes(variant: Variant, built: BuiltModel, a: number, b: number): Variant {
  const fixed = built.grounds.length;
  const swap = (n: number) => (n === a ? b : n === b ? a : n);
  return { ...variant, joins: variant.joins.map((join, j): Join => (j < fixed ? join : [swap(join[0]), swap(join[1])])) };
}

/** One end of one wire: `a` where the table says from, `b` where it says to. */
export interface WireEnd {
  readonly wire: number;
  readonly end: "a" | "b";
}

/** Exchanges two wire ends. */
export function swapEnds(built: BuiltModel, x: WireEnd, y: WireEnd): Variant {
  const first = built.grounds.length;
  const joins = built.good.joins.map((join): [number, number] => [join[0], join[1]]);
  const side = (end: WireEnd["end"]) => (end === "a" ? 0 : 1);
  const [one, other] = [itemAt(joins, first + x.wire), itemAt(joins, first + y.wire)];
  [one[side(x.end)], other[side(y.end)]] = [itemAt(other, side(y.end)), itemAt(one, side(x.end))];
  return { ...built.good, joins };
}

/** Every two wire ends that meet at the same place: the connector's fixed half, its loose half, the switch. */
export function wireSwaps(input: FaultInput): FaultCase[] {
  const wires = switchWires(input);
  const single = singleEnds(input);
  const pole = new Map(input.candidate.contacts.sections.flatMap((s) => s.throws.map((t) => [t.terminal, s.pole] as const)));
  const throwOf = (wire: number) => {
    const end = itemAt(wires, wire).to;
    return end.at === "switch" && single.has(end.terminal) ? pole.get(end.terminal) : undefined;
  };
  const cases: FaultCase[] = [];
  const add = (x: WireEnd, y: WireEnd, place: string, kind: "wires-swapped" | "throws-swapped" = "wires-swapped") => {
    const name = [x, y].map(({ wire }) => `${itemAt(wires, wire).number} (${itemAt(wires, wire).label})`).join(" and ");
    const numbers = [x, y].map(({ wire }) => itemAt(wires, wire).number).join(" and ");
    const ids = [x, y].map(({ wire, end }) => `${itemAt(wires, wire).number}${end}`).join("~");
    cases.push({
      fault: {
        id: `wires-swapped:${ids}`,
        kind,
        says: `Wires ${name} swapped ${place}`,
        short: `Wires ${numbers} swapped ${place}`,
        fix: `Exchange wires ${name} ${place}.`,
      },
      variant: swapEnds(input.built, x, y),
      burn: false,
    });
  };
  const pairs = (ends: readonly WireEnd[], take: (x: WireEnd, y: WireEnd) => void) => {
    ends.forEach((x, i) => {
      for (const y of ends.slice(i + 1)) if (x.wire !== y.wire) take(x, y);
    });
  };
  const ends = (run: string, end: WireEnd["end"]) => wires.flatMap((w, wire): WireEnd[] => (w.run === run ? [{ wire, end }] : []));
  pairs(ends("board", "b"), (x, y) => add(x, y, "at the connector, fixed half"));
  pairs(ends("cable", "a"), (x, y) => {
    const same = throwOf(x.wire) !== undefined && throwOf(x.wire) === throwOf(y.wire);
    add(x, y, "at one end of the cable", same ? "throws-swapped" : "wires-swapped");
  });
  const atSwitch = wires.flatMap((w, wire): WireEnd[] => [
    ...(w.from.at === "switch" ? [{ wire, end: "a" as const }] : []),
    ...(w.to.at === "switch" ? [{ wire, end: "b" as const }] : []),
  ]);
  pairs(atSwitch, (x, y) => {
    // Two wires of the cable have been told: links at the switch go along with them.
    if (itemAt(wires, x.wire).run === "jumper" || itemAt(wires, y.wire).run === "jumper") add(x, y, "at the switch");
  });
  return cases;
}
