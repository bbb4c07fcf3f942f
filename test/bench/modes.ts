// The switched machine as a problem: a build of generate.ts run in several modes. Slots, jumpers and the board's revision are shared;
// firmware and enabled cards are the mode's own. Windows, interrupt lines, conflicts, needs and firmware ranges bind within a mode, among
// the cards enabled in it; places and the supply rail bind over the whole machine. The cost is what the switch must carry: a line for each
// card enabled in some modes and not in others, and the lines that choose between so many firmware versions.
// Planted builds keep a hidden machine working in every mode, so that many have an answer; of the others most have none.
import type { Constraint, Cost, Literal, Problem, Variable } from "../../src/solver/index.js";
import { Random, range } from "../support/solver/random.js";
import { type BuildSize, generateBuild, type Strain } from "./generate.js";

export interface ModesBuild {
  readonly problem: Problem;
  readonly lines: Cost;
  readonly firmware: readonly number[];
  /** For each card its "enabled" variable in each mode. */
  readonly enabled: readonly (readonly number[])[];
}

export function generateModes(size: BuildSize, strain: Strain, seed: number, modes = 4): ModesBuild {
  const base = generateBuild(size, strain, seed);
  const random = new Random(seed * 104_729 + size.cards * 17 + strain.length);
  const variables: Variable[] = [];
  const rules: Constraint[] = [];
  const each = range(modes);
  const variable = (name: string, values: number) => variables.push({ name, size: values }) - 1;
  const on = (v: number): Literal => ({ variable: v, values: [1] });
  const off = (v: number): Literal => ({ variable: v, values: [0] });

  // Shared variables keep their numbers, firmware comes once a mode, and what is shared is kept as it stands.
  const role = base.problem.variables.map(({ name }) => {
    const [, card, part] = /^card (\d+) (\w+)$/.exec(name) ?? [undefined, "-1", name];
    return { card: Number(card), part: part as "slot" | "window" | "line" | "firmware" | "revision" };
  });
  for (const { name, size: values } of base.problem.variables) variable(name, name === "firmware" ? 1 : values);
  const firmware = each.map((m) => variable(`firmware ${m}`, size.firmware));
  const slots = base.slotVariables;
  const out = size.slots;
  const kept = /^(fit|present|lines \d|slots differ|rail)/;
  rules.push(...base.problem.rules.filter((r) => kept.test(r.id!)), ...base.choices.flatMap((c) => (/^pin/.test(c.id) ? c.rules : [])));

  // Enabled cards, and what each claims in a mode: 0 is nothing, else the setting's value.
  const enabled = slots.map((slot, c) =>
    each.map((m) => {
      const v = variable(`card ${c} in mode ${m}`, 2);
      rules.push({ kind: "forbid", literals: [on(v), { variable: slot, values: [out] }] });
      return v;
    }),
  );
  const claims = new Map<number, readonly number[]>();
  for (const [setting, { card, part }] of role.entries()) {
    if (part !== "window" && part !== "line") continue;
    const { size: values } = variables[setting]!;
    claims.set(
      setting,
      each.map((m) => {
        const claim = variable(`card ${card} ${part} in mode ${m}`, values);
        rules.push({
          kind: "table",
          variables: [setting, claim],
          rows: range(values).flatMap((s) =>
            s === 0
              ? [[0, 0]]
              : [
                  [s, 0],
                  [s, s],
                ],
          ),
        });
        const claimed = range(values - 1).map((s) => [1, s + 1]);
        rules.push({ kind: "table", variables: [enabled[card]![m]!, claim], rows: [[0, 0], ...claimed] });
        return claim;
      }),
    );
  }

  // The hidden modes: a version each out of few, and the cards that can run under it.
  const hidden = base.planted;
  const pool = random.shuffle(range(size.firmware)).slice(0, random.int(2, Math.min(3, modes)));
  const versions = random.shuffle(each.map((m) => pool[m] ?? random.pick(pool)));
  const end = size.firmware - 1;
  const spans = slots.map((): readonly [number, number] => {
    // Some cards stop at a version between those of the modes, some begin there: no version serves both.
    const cut = random.int(Math.min(...pool), Math.max(...pool) - 1);
    const shape = random.next();
    if (shape < 0.2) return [0, cut];
    if (shape < 0.4) return [cut + 1, end];
    return [random.int(0, Math.floor(size.firmware / 6)), end - random.int(0, Math.floor(size.firmware / 6))];
  });
  const runs = (c: number, m: number) => versions[m]! >= spans[c]![0] && versions[m]! <= spans[c]![1];
  const enabledThen = slots.map((slot, c) => each.map((m) => (!hidden || hidden[slot] !== out) && runs(c, m) && random.next() < 0.85));
  const wishes = new Set(base.choices.map((c) => c.id));
  for (const c of range(size.cards)) {
    for (const m of each) {
      const wanted = wishes.has(`card ${c}`) && (hidden ? enabledThen[c]![m]! : random.next() < 0.6) && random.next() < 0.75;
      if (wanted) rules.push({ id: `card ${c} wanted in mode ${m}`, kind: "unary", variable: enabled[c]![m]!, values: [1] });
    }
    const outside = range(size.firmware).filter((f) => f < spans[c]![0] || f > spans[c]![1]);
    for (const m of each) rules.push({ kind: "forbid", literals: [on(enabled[c]![m]!), { variable: firmware[m]!, values: outside }] });
  }
  // Cards that do not bear each other, some only under some versions.
  for (let left = size.cards; left > 0; ) {
    const [a, b] = random.shuffle(range(size.cards)) as [number, number];
    const under = random.next() < 0.5 ? range(size.firmware) : random.some(range(size.firmware), 0.4);
    if (hidden && each.some((m) => enabledThen[a]![m] && enabledThen[b]![m] && under.includes(versions[m]!))) continue;
    left--;
    for (const m of each) {
      rules.push({ kind: "forbid", literals: [on(enabled[a]![m]!), on(enabled[b]![m]!), { variable: firmware[m]!, values: under }] });
    }
  }

  /** Whether the hidden machine has what a literal of the build asks, in a mode. */
  const metThen = ({ variable: v, values }: Literal, m: number): boolean => {
    const { card, part } = role[v]!;
    if (part === "firmware") return values.includes(versions[m]!);
    return values.includes(hidden![v]!) && (part === "revision" || enabledThen[card]![m]!);
  };
  // What binds within a mode.
  for (const m of each) {
    const within = ({ variable: v, values }: Literal): Literal[] => {
      const { card, part } = role[v]!;
      if (part === "window") return [{ variable: claims.get(v)![m]!, values }];
      if (part === "slot") return [on(enabled[card]![m]!), ...(values.length < size.slots ? [{ variable: v, values }] : [])];
      return [{ variable: part === "firmware" ? firmware[m]! : v, values }];
    };
    for (const rule of base.problem.rules) {
      if (rule.kind === "disjoint")
        rules.push({ ...rule, occupiers: rule.occupiers.map((o) => ({ ...o, variable: claims.get(o.variable)![m]! })) });
      else if (rule.id === "lines differ" && rule.kind === "allDifferent")
        rules.push({ ...rule, variables: rule.variables.map((v) => claims.get(v)![m]!) });
      else if (rule.id!.startsWith("conflict") && rule.kind === "forbid") {
        const met = hidden && rule.literals.every((l) => metThen(l, m));
        // What would hit the hidden machine is known not to happen under the versions it runs.
        const literals = rule.literals.map((l) =>
          met && role[l.variable]!.part === "firmware" ? { ...l, values: l.values.filter((f) => !versions.includes(f)) } : l,
        );
        rules.push({ ...rule, literals: literals.flatMap(within) });
      } else if (rule.id!.startsWith("needs") && rule.kind === "clause") {
        const [a, b, c] = rule.literals.map((l) => enabled[role[l.variable]!.card]![m]!) as [number, number, number];
        const then = rule.literals.map((l) => enabledThen[role[l.variable]!.card]![m]!);
        if (!hidden || !then[0] || then[1] || then[2]) rules.push({ ...rule, literals: [off(a), on(b), on(c)] });
      }
    }
  }

  // A line for a card that is not the same in all modes: enabled in one mode and not in the next one round.
  const terms = enabled.map((row, c) => {
    const line = variable(`line for card ${c}`, 2);
    for (const m of each) rules.push({ kind: "forbid", literals: [off(line), on(row[m]!), off(row[(m + 1) % modes]!)] });
    return { variable: line, weights: [0, 1] };
  });
  // Lines for the versions: which modes run the same one, and how many lines choose among so many.
  const pairs = each.flatMap((m) => range(m).map((n): readonly [number, number] => [n, m]));
  const same = pairs.map(([m, n]) => {
    const v = variable(`modes ${m} and ${n} run the same`, 2);
    const rows = range(size.firmware).flatMap((f) => range(size.firmware).map((g) => [f, g, f === g ? 1 : 0]));
    rules.push({ kind: "table", variables: [firmware[m]!, firmware[n]!, v], rows });
    return v;
  });
  const bank = variable("lines for the versions", Math.ceil(Math.log2(modes)) + 1);
  const rows = groupings(modes).map((of) => [
    ...pairs.map(([m, n]) => (of[m] === of[n] ? 1 : 0)),
    Math.ceil(Math.log2(Math.max(...of) + 1)),
  ]);
  rules.push({ kind: "table", variables: [...same, bank], rows });
  return { problem: { variables, rules }, lines: { terms: [...terms, { variable: bank, weights: [0, 1, 2] }] }, firmware, enabled };
}

/** All ways to sort n things into groups, each thing with the number of its group. */
function groupings(n: number): number[][] {
  if (n === 0) return [[]];
  return groupings(n - 1).flatMap((of) => range(Math.max(-1, ...of) + 2).map((g) => [...of, g]));
}
