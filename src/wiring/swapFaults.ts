// Swaps: what belongs on two terminals exchanged, two wires exchanged at one end, and two pairs of throws at once.
import type { BuiltModel } from "./buildModel.js";
import { type FaultCase, type FaultInput, switchWires } from "./faultCase.js";
import type { Variant } from "./model.js";
import type { Join } from "./netlist.js";

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
          says: `terminals ${x.terminal} and ${y.terminal}${where}`,
          a: built.terminal.get(x.terminal)!,
          b: built.terminal.get(y.terminal)!,
          throws: same && !x.hub && !y.hub,
        },
      ];
    }),
  );
}

export function throwSwaps(input: FaultInput): FaultCase[] {
  return terminalPairs(input).map(({ id, says, a, b, throws }) => ({
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
  const [one, other] = [joins[first + x.wire]!, joins[first + y.wire]!];
  [one[side(x.end)], other[side(y.end)]] = [other[side(y.end)]!, one[side(x.end)]!];
  return { ...built.good, joins };
}

/** Every two wire ends that meet at the same place: the connector's fixed half, its loose half, the switch. */
export function wireSwaps(input: FaultInput): FaultCase[] {
  const wires = switchWires(input);
  const chained = new Set(wires.filter((w) => w.run === "jumper" && w.from.at === "switch").map((w) => w.net));
  const cases: FaultCase[] = [];
  const pairs = (ends: readonly WireEnd[], place: string, wanted: (x: WireEnd, y: WireEnd) => boolean) =>
    ends.forEach((x, i) => {
      for (const y of ends.slice(i + 1)) {
        if (x.wire === y.wire || !wanted(x, y)) continue;
        const name = [x, y].map(({ wire }) => `${wires[wire]!.number} (${wires[wire]!.label})`).join(" and ");
        const ids = [x, y].map(({ wire, end }) => `${wires[wire]!.number}${end}`).join("~");
        cases.push({
          fault: {
            id: `wires-swapped:${ids}`,
            kind: "wires-swapped",
            says: `Wires ${name} swapped ${place}`,
            fix: `Exchange wires ${name} ${place}.`,
          },
          variant: swapEnds(input.built, x, y),
          burn: false,
        });
      }
    });
  const ends = (run: string, end: WireEnd["end"]) => wires.flatMap((w, wire): WireEnd[] => (w.run === run ? [{ wire, end }] : []));
  const unlike = (x: WireEnd, y: WireEnd) => wires[x.wire]!.net !== wires[y.wire]!.net;
  const plugged = input.loom.pair !== undefined;
  pairs(ends("board", "b"), "at the connector, fixed half", unlike);
  pairs(ends("cable", "a"), plugged ? "at the connector, loose half" : "in the machine", unlike);
  // At the switch only nets with links: without them it is the same as exchanging the other ends.
  const atSwitch = wires.flatMap((w, wire): WireEnd[] => [
    ...(w.from.at === "switch" ? [{ wire, end: "a" as const }] : []),
    ...(w.to.at === "switch" ? [{ wire, end: "b" as const }] : []),
  ]);
  pairs(atSwitch, "at the switch", (x, y) => chained.has(wires[x.wire]!.net) || chained.has(wires[y.wire]!.net));
  return cases;
}
