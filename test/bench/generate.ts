// Seeded random builds: slots, cards that may stay out, jumper settings that claim windows and interrupt lines, firmware versions,
// a board revision, a supply rail and known conflicts. The benchmark's stand-in for what planning asks of the engine.
// Three of four builds (none of the over-constrained) are drawn around a hidden working machine, so that tight ones are not all refused.
import type { Choice, Constraint, Literal, Problem, Variable } from "../../src/solver/index.js";
import { Random, range } from "../support/solver/random.js";

export interface BuildSize {
  readonly slots: number;
  readonly cards: number;
  readonly firmware: number;
  readonly conflicts: number;
}

export const sizes = {
  small: { slots: 6, cards: 6, firmware: 6, conflicts: 15 },
  medium: { slots: 10, cards: 12, firmware: 12, conflicts: 40 },
  large: { slots: 20, cards: 20, firmware: 30, conflicts: 200 },
  larger: { slots: 32, cards: 40, firmware: 60, conflicts: 400 },
} as const satisfies Record<string, BuildSize>;

export type Strain = "normal" | "tight" | "loose" | "over";
export const strains: readonly Strain[] = ["normal", "tight", "loose", "over"];

/** How much each strain asks: chance that a card is wanted, that a slot suits a card, settings a card has, literals' width, rail room. */
const strainOf = {
  normal: { wanted: 0.75, suits: 0.5, options: [2, 5], wide: 0.3, rail: 1.15 },
  tight: { wanted: 0.8, suits: 0.3, options: [2, 4], wide: 0.35, rail: 1.02 },
  loose: { wanted: 0.6, suits: 0.85, options: [3, 6], wide: 0.2, rail: 1.6 },
  over: { wanted: 0.9, suits: 0.3, options: [2, 4], wide: 0.4, rail: 1.6 },
} as const;

export interface Build {
  readonly problem: Problem;
  /** What the owner chose: wanted cards, one pinned slot or setting here and there, the firmware. */
  readonly choices: readonly Choice[];
  /** The problem with all choices taken as rules. */
  readonly whole: Problem;
  readonly slotVariables: readonly number[];
  /** The working machine it was drawn around, one value per variable; undefined where there is none. */
  readonly planted: readonly number[] | undefined;
}

export function generateBuild(size: BuildSize, strain: Strain, seed: number): Build {
  const random = new Random(seed * 7919 + size.cards * 31 + strains.indexOf(strain));
  const how = strainOf[strain];
  const variables: Variable[] = [];
  const rules: Constraint[] = [];
  const choices: Choice[] = [];
  const variable = (name: string, values: number) => variables.push({ name, size: values }) - 1;
  let rule = 0;
  const id = (kind: string) => `${kind} ${rule++}`;

  const planted = strain !== "over" && seed % 4 !== 0;
  /** The hidden machine: one value per variable. */
  const hidden: number[] = [];
  const firmware = variable("firmware", size.firmware);
  const revision = variable("revision", 3);
  const out = size.slots;
  const slots: number[] = [];
  const settings: number[] = [];
  const windows: { variable: number; windows: (readonly [number, number])[][] }[] = [];
  const lines: number[] = [];
  const current: { variable: number; weights: number[] }[] = [];
  let worst = 0;
  let drawn = 0;
  hidden[firmware] = random.int(Math.floor(size.firmware / 3), Math.floor((size.firmware * 2) / 3) - 1);
  hidden[revision] = random.int(0, 2);
  const places = random.shuffle(range(size.slots));
  const slotKinds = Math.max(2, Math.min(5, Math.round(size.slots / 4)));
  const kindOf = range(size.slots).map((s) => Math.floor((s * slotKinds) / size.slots));
  const claimed = new Set<number>();
  const raised = new Set<number>();

  for (const card of range(size.cards)) {
    const slot = variable(`card ${card} slot`, size.slots + 1);
    slots.push(slot);
    // A card fits whole kinds of slots (length, bus), now and then not the one beside a tall heat sink.
    const kinds = random.some(range(slotKinds), how.suits);
    if (kinds.length === 0) kinds.push(random.int(0, slotKinds - 1));
    const blocked = random.next() < 0.15 ? random.int(0, size.slots - 1) : -1;
    const fits = range(size.slots).filter((s) => kinds.includes(kindOf[s]!) && s !== blocked);
    const wanted = random.next() < how.wanted && places.length > 0;
    const stays = wanted || (random.next() < 0.3 && places.length > size.cards - card);
    hidden[slot] = stays ? places.pop()! : out;
    if (planted && stays && !fits.includes(hidden[slot]!))
      fits.push(...range(size.slots).filter((s) => kindOf[s] === kindOf[hidden[slot]!]));
    rules.push({ id: id("fit"), kind: "unary", variable: slot, values: [...fits, out] });
    if (wanted) choices.push({ id: `card ${card}`, rules: [{ kind: "unary", variable: slot, values: range(size.slots) }] });

    // Value 0 of a setting means "not in the machine": nothing is claimed.
    const options = random.int(how.options[0], how.options[1]);
    const setting = variable(`card ${card} window`, options + 1);
    settings.push(setting);
    present(slot, setting, options + 1);
    const region = size.cards * 4;
    const width = random.pick([1, 1, 2, 2, 4]);
    hidden[setting] = stays ? random.int(1, options) : 0;
    const runs = range(options + 1).map((o): (readonly [number, number])[] => {
      if (o === 0) return [];
      for (;;) {
        const from = random.int(0, Math.floor(region / width)) * width;
        const cells = range(width).map((i) => from + i);
        if (planted && o === hidden[setting]) {
          if (cells.some((cell) => claimed.has(cell))) continue;
          for (const cell of cells) claimed.add(cell);
        }
        return [[from, from + width - 1]];
      }
    });
    windows.push({ variable: setting, windows: runs });
    if (random.next() < 0.6) {
      const line = variable(`card ${card} line`, 12);
      lines.push(line);
      const offered = random.shuffle(range(11)).slice(0, random.int(how.options[0], how.options[1]));
      // Line 11 is shared by nature; the others carry one card each.
      const free = offered.filter((l) => !raised.has(l));
      hidden[line] = stays ? (free[0] ?? 10) + 1 : 0;
      if (free[0] !== undefined && free[0] !== 10) raised.add(free[0]);
      if (free.length === 0) offered.push(10);
      rules.push({ id: id("lines"), kind: "unary", variable: line, values: [0, ...offered.map((l) => l + 1)] });
      present(slot, line, 12);
    }
    const draw = random.int(1, 20);
    worst += draw;
    if (stays) drawn += draw;
    current.push({ variable: slot, weights: range(size.slots + 1).map((s) => (s === out ? 0 : draw)) });

    // A card takes a range of firmware versions once it is in.
    const from = random.int(0, Math.floor(size.firmware / 3));
    const to = random.int(Math.floor((size.firmware * 2) / 3) - 1, size.firmware - 1);
    const outside = range(size.firmware).filter((f) => f < from || f > to);
    if (outside.length > 0)
      rules.push({ id: id("firmware"), kind: "forbid", literals: [inside(slot), { variable: firmware, values: outside }] });
  }

  rules.push({ id: "slots differ", kind: "allDifferent", variables: slots, except: [out] });
  if (lines.length > 1) rules.push({ id: "lines differ", kind: "allDifferent", variables: lines, except: [0, 11] });
  rules.push({ id: "windows", kind: "disjoint", occupiers: windows });
  rules.push({
    id: "rail",
    kind: "linear",
    terms: current,
    max: planted ? Math.floor(drawn * how.rail) : Math.floor((worst * how.rail * 0.6 * size.slots) / size.cards),
  });

  for (const _ of range(size.conflicts)) rules.push({ id: id("conflict"), kind: "forbid", literals: spared(conflict) });
  for (const _ of range(Math.floor(size.cards / 6))) {
    let [a, b, c] = random.shuffle(slots) as [number, number, number];
    if (planted && hidden[a] !== out && hidden[b] === out && hidden[c] === out) [a, b] = [b, a];
    rules.push({ id: id("needs"), kind: "clause", literals: [{ variable: a, values: [out] }, inside(b), inside(c)] });
  }
  if (random.next() < 0.5) {
    const some = range(size.firmware).filter((f) => (planted && f === hidden[firmware]) || random.next() < 0.5);
    if (some.length > 0) choices.push({ id: "firmware", rules: [{ kind: "unary", variable: firmware, values: some }] });
  }
  for (const _ of range(Math.floor(size.cards / 5))) {
    const card = random.int(0, size.cards - 1);
    const setting = settings[card]!;
    const pin = [0, planted && hidden[setting] !== 0 ? hidden[setting]! : random.int(1, variables[setting]!.size - 1)];
    choices.push({ id: `pin ${choices.length}`, rules: [{ kind: "unary", variable: setting, values: pin }] });
  }
  const problem: Problem = { variables, rules };
  return {
    problem,
    choices,
    whole: { variables, rules: [...rules, ...choices.flatMap((c) => c.rules)] },
    slotVariables: slots,
    planted: planted ? hidden : undefined,
  };

  function present(slot: number, setting: number, count: number): void {
    rules.push({
      id: id("present"),
      kind: "forbid",
      literals: [
        { variable: slot, values: [out] },
        { variable: setting, values: range(count).slice(1) },
      ],
    });
    rules.push({ id: id("present"), kind: "forbid", literals: [inside(slot), { variable: setting, values: [0] }] });
  }
  function inside(slot: number): Literal {
    return { variable: slot, values: range(size.slots) };
  }
  /** Draws until the hidden machine is spared. */
  function spared(draw: () => Literal[]): Literal[] {
    for (;;) {
      const literals = draw();
      if (!planted || !literals.every((l) => l.values.includes(hidden[l.variable]!))) return literals;
    }
  }
  /** Two to four literals over cards, slots, settings, firmware and revision. */
  function conflict(): Literal[] {
    const [a, b] = random.shuffle(range(size.cards)) as [number, number];
    const part = (v: number, from: number): Literal => {
      const values = range(variables[v]!.size)
        .slice(from)
        .filter(() => random.next() < how.wide);
      return { variable: v, values: values.length > 0 ? values : [random.int(from, variables[v]!.size - 1)] };
    };
    // Slots are named by their kind or as a few neighbours.
    const spot = (card: number): Literal => {
      const kind = random.int(0, slotKinds - 1);
      const from = random.int(0, size.slots - 1);
      const byKind = random.next() < 0.6;
      return { variable: slots[card]!, values: range(size.slots).filter((s) => (byKind ? kindOf[s] === kind : s >= from && s < from + 3)) };
    };
    switch (random.int(0, 5)) {
      case 0:
        return [spot(a), spot(b)];
      case 1:
        return [part(settings[a]!, 1), part(settings[b]!, 1)];
      case 2:
        return [part(settings[a]!, 1), part(firmware, 0)];
      case 3:
        return [spot(a), part(settings[b]!, 1), part(firmware, 0)];
      case 4:
        return [part(settings[a]!, 1), part(settings[b]!, 1), part(revision, 0)];
      default:
        return [inside(slots[a]!), part(settings[b]!, 1), part(firmware, 0), part(revision, 0)];
    }
  }
}
