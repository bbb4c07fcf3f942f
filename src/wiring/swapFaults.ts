// Swaps: what belongs on two terminals exchanged, two wires exchanged at one end, and two pairs of throws at once.
import type { BuiltModel } from "./buildModel.js";
import { type FaultCase, type FaultInput, switchWires } from "./faultCase.js";
import type { Variant } from "./model.js";
import type { Join } from "./netlist.js";

/** Two different pairs of throws swapped. */
export function doubleSwaps(input: FaultInput): FaultCase[] {
  const swaps = throwPairs(input).filter((p) => !p.hub);
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

interface ThrowPair {
  readonly id: string;
  readonly says: string;
  readonly a: number;
  readonly b: number;
  readonly hub: boolean;
}

/** Pairs of terminals of one section, at least one of them wired, within the positions that are used. */
function throwPairs({ built, candidate }: FaultInput): ThrowPair[] {
  const { contacts } = candidate;
  const reached = (closed: ReadonlySet<number>) => [...closed].some((p) => contacts.modeAt[p] !== undefined);
  return contacts.sections.flatMap((section, s) => {
    const use = contacts.uses[s];
    if (!use) return [];
    const throws = section.throws.filter((t) => reached(t.closed)).map((t) => t.terminal);
    const terminals = [...throws, section.hub];
    return terminals.flatMap((x, i) =>
      terminals.slice(i + 1).flatMap((y): ThrowPair[] => {
        const hub = y === section.hub;
        if (!use.throws.has(x) && !use.throws.has(y)) return [];
        if (hub && !use.throws.has(x)) return [];
        return [
          {
            id: `${x}~${y}`,
            says: `terminals ${x} and ${y} of pole ${section.pole}`,
            a: built.terminal.get(x)!,
            b: built.terminal.get(y)!,
            hub,
          },
        ];
      }),
    );
  });
}

export function throwSwaps(input: FaultInput): FaultCase[] {
  return throwPairs(input).map(({ id, says, a, b }) => ({
    fault: {
      id: `throws-swapped:${id}`,
      kind: "throws-swapped",
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

/** Exchanges one end of two wires. */
export function swapEnds(built: BuiltModel, first: number, second: number, end: "a" | "b"): Variant {
  const at = built.grounds.length;
  const joins = [...built.good.joins];
  const [x, y] = [joins[at + first]!, joins[at + second]!];
  joins[at + first] = end === "a" ? [y[0], x[1]] : [x[0], y[1]];
  joins[at + second] = end === "a" ? [x[0], y[1]] : [y[0], x[1]];
  return { ...built.good, joins };
}

export function wireSwaps(input: FaultInput): FaultCase[] {
  const wires = switchWires(input);
  const chained = new Set(wires.filter((w) => w.run === "jumper" && w.from.at === "switch").map((w) => w.net));
  const cases: FaultCase[] = [];
  wires.forEach((x, i) => {
    wires.forEach((y, j) => {
      if (j <= i || x.run !== y.run || x.run === "jumper" || x.net === y.net) return;
      const name = `wires ${x.number} (${x.label}) and ${y.number} (${y.label})`;
      const add = (end: "a" | "b", place: string) =>
        cases.push({
          fault: {
            id: `wires-swapped:${x.number}~${y.number}:${end}`,
            kind: "wires-swapped",
            says: `${name} swapped ${place}`,
            fix: `Exchange ${name} ${place}.`,
          },
          variant: swapEnds(input.built, i, j, end),
          burn: false,
        });
      if (x.run === "board") {
        add("b", "at the connector, fixed half");
        return;
      }
      add("a", x.from.at === "connector" ? "at the connector, loose half" : "in the machine");
      if (chained.has(x.net) || chained.has(y.net)) add("b", "at the switch");
    });
  });
  return cases;
}
