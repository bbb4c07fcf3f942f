// A machine changed over by hand: each way is a machine of its own, on the same board and with the same cards. Cards may be moved or taken
// out, jumpers set, enable contacts made or opened, the memory device exchanged; what differs between two ways is what the hand must do.
//
//   way 1   firmware R4A   tracer S3 J2=300 on    disk out            one problem over all copies; a variable for each
//   way 2   firmware R5.1  tracer out             disk S5 J2=320 on   thing that differs, so that the fewest can be asked for

import { type Compiled, cardIn, complement, eachCard, type Frame, runsVersion, withRules } from "../../encoding/index.js";
import type { ResolvedBuild } from "../../machine/index.js";
import { itemAt } from "../../records/index.js";
import type { Constraint, Cost, Literal, Problem, Variable } from "../../solver/index.js";
import { atMostLevel, conditionalFrom } from "../answer/verdict.js";
import { openMachine } from "./open-machine.js";
import { isGranted, type Wish } from "./wishes.js";

export interface ByHand {
  /** The machine in one way; the copy for way w has its variables at w * size. */
  readonly compiled: Compiled;
  readonly size: number;
  readonly ways: number;
  readonly variables: readonly Variable[];
  /** What ties the copies to one another and to the wishes. */
  readonly rules: readonly Constraint[];
  /** One thing to do between two ways costs one, whichever it is; then its trouble. */
  readonly costs: readonly Cost[];
}

export type Sureness = "workable" | "conditional" | "unknown";

/** Trouble of one thing to do, to choose between plans with equally many. */
const trouble = { enable: 1, setting: 1, firmware: 2, slot: 3 } as const;

export function byHand(question: ResolvedBuild, wishes: readonly Wish[], ways: number): ByHand {
  const compiled = openMachine(question, 1);
  const { frame } = compiled;
  const size = frame.variables.length;
  const variables = Array.from({ length: ways }, (_, way) => frame.variables.map((v) => ({ ...v, name: `${way + 1}:${v.name}` }))).flat();
  const numbered = Array.from({ length: ways }, (_, way) => way);
  const at = (way: number) => (literal: Literal) => ({ ...literal, variable: literal.variable + way * size });
  const rules: Constraint[] = [];
  for (const wish of wishes) rules.push(...wishRules(frame, wish, wishes, numbered, at, variables));
  for (const variable of [frame.revision, frame.memory, ...frame.cards.map((c) => c.revision)])
    for (const way of numbered.slice(1)) rules.push(...same(variable, variable + way * size, variables));
  for (const way of numbered.slice(1)) rules.push(inOrder(frame, (way - 1) * size, way * size));
  const things = thingsOf(frame);
  const differs = numbered.flatMap((one) =>
    numbered.slice(one + 1).flatMap((other) =>
      things.map(({ variable, price }) => {
        const d = variables.push({ name: `differs:${one + 1}:${other + 1}:${variable}`, size: 2 }) - 1;
        rules.push(...different(variable + one * size, variable + other * size, d, variables));
        return { variable: d, price };
      }),
    ),
  );
  const cost = (of: (price: number) => number): Cost => ({
    terms: differs.map(({ variable, price }) => ({ variable, weights: [0, of(price)] })),
  });
  return { compiled, size, ways, variables, rules, costs: [cost(() => 1), cost((price) => price)] };
}

/** What is in the machine may be anything the rules allow, as sure as this; what the owner pinned holds of whatever is in. */
export function handProblem({ compiled, size, ways, variables, rules }: ByHand, sure: Sureness): Problem {
  const pins = compiled.choices.filter((c) => c.told.kind !== "card" && c.told.kind !== "mode").flatMap((c) => c.rules);
  const bare = withRules(compiled.facts, pins);
  const certain = withRules(
    bare,
    compiled.unsettled.flatMap((u) => u.when.map((literals): Constraint => ({ kind: "forbid", literals }))),
  );
  const single = sure === "unknown" ? bare : sure === "conditional" ? certain : atMostLevel(compiled, certain, conditionalFrom - 1);
  const copies = Array.from({ length: ways }, (_, way) => single.rules.map((rule) => shifted(rule, way * size)));
  return { variables, rules: [...copies.flat(), ...rules] };
}

interface Thing {
  readonly variable: number;
  readonly price: number;
}

/** Everything a hand can change between two ways. */
function thingsOf(frame: Frame): readonly Thing[] {
  return [
    { variable: itemAt(frame.firmware, 0), price: trouble.firmware },
    ...frame.cards.flatMap((c, at) => [
      { variable: c.slot, price: trouble.slot },
      ...c.settings.map((variable) => ({ variable, price: trouble.setting })),
      ...(frame.on[0]?.[at] === undefined ? [] : [{ variable: frame.on[0][at], price: trouble.enable }]),
    ]),
  ];
}

/** The card is in the machine and on. */
function running(frame: Frame, as: string): readonly Literal[] {
  const at = frame.question.cards.findIndex((c) => c.as === as);
  const on = frame.on[0]?.[at];
  return [cardIn(frame, at), ...(on === undefined ? [] : [{ variable: on, values: [1] }])];
}

function wishRules(
  frame: Frame,
  wish: Wish,
  all: readonly Wish[],
  ways: readonly number[],
  at: (way: number) => (literal: Literal) => Literal,
  variables: Variable[],
): Constraint[] {
  if (isGranted(wish)) {
    const by = variables.push({ name: `granted:${wish.id}`, size: ways.length }) - 1;
    const had = [
      ...(wish.kind === "card" ? [wish.card] : wish.cards).flatMap((as) => running(frame, as)),
      ...(wish.kind === "card" || wish.firmware === undefined ? [] : [runsVersion(frame, 0, (v) => v === wish.firmware)]),
    ];
    return ways.flatMap((way) => {
      const another = { variable: by, values: ways.filter((w) => w !== way) };
      return had.map((literal): Constraint => ({ kind: "clause", literals: [another, at(way)(literal)] }));
    });
  }
  if (wish.kind === "always")
    return ways.flatMap((way) => running(frame, wish.card).map((l): Constraint => ({ kind: "unary", ...at(way)(l) })));
  const others = eachCard(frame).filter(
    ({ asked }) => asked.as !== wish.card && !all.some((w) => w.kind === "always" && w.card === asked.as),
  );
  return ways.flatMap((way) =>
    others.map(
      ({ asked }): Constraint => ({ kind: "forbid", literals: [...running(frame, wish.card), ...running(frame, asked.as)].map(at(way)) }),
    ),
  );
}

const values = (size: number) => Array.from({ length: size }, (_, v) => v);

function same(one: number, other: number, variables: readonly Variable[]): Constraint[] {
  return values(itemAt(variables, one).size).map((v) => ({
    kind: "clause",
    literals: [complement(variables, { variable: one, values: [v] }), { variable: other, values: [v] }],
  }));
}

/** `differs` is 1 where the two have different values. */
function different(one: number, other: number, differs: number, variables: readonly Variable[]): Constraint[] {
  return values(itemAt(variables, one).size).map((v) => ({
    kind: "forbid",
    literals: [{ variable: one, values: [v] }, complement(variables, { variable: other, values: [v] }), { variable: differs, values: [0] }],
  }));
}

/** Ways that could change places stand in the order of their firmware. */
function inOrder(frame: Frame, one: number, other: number): Constraint {
  const firmware = itemAt(frame.firmware, 0);
  const weights = (sign: number) => values(itemAt(frame.variables, firmware).size).map((v) => sign * v);
  return {
    kind: "linear",
    terms: [
      { variable: firmware + one, weights: weights(1) },
      { variable: firmware + other, weights: weights(-1) },
    ],
    max: 0,
  };
}

/** The rule over the variables of a copy. */
function shifted(rule: Constraint, by: number): Constraint {
  const move = <T extends { readonly variable: number }>(one: T): T => ({ ...one, variable: one.variable + by });
  switch (rule.kind) {
    case "unary":
      return move(rule);
    case "forbid":
    case "clause":
      return { ...rule, literals: rule.literals.map(move) };
    case "table":
    case "allDifferent":
    case "cardinality":
      return { ...rule, variables: rule.variables.map((v) => v + by) };
    case "linear":
      return { ...rule, terms: rule.terms.map(move) };
    case "disjoint":
      return { ...rule, occupiers: rule.occupiers.map(move) };
    default:
      return rule satisfies never;
  }
}
