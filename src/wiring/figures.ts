// What switched machines are compared by, in this order: how it works, how much must change between the ways, how well it is proven, what
// is held against it, what has to be got, poles, wires, and the work from the machine as it stands.

import type { Combination } from "../planning/index.js";
import { itemAt } from "../records/index.js";
import type { Wiring } from "./answer-types.js";

export interface Figures {
  /** Missing facts decide whether it works. */
  readonly unknown: boolean;
  /** What holds it back: the worst kind counts first, how many of each kind later. */
  readonly remedies: number;
  readonly losses: number;
  readonly notes: number;
  /** Cards that are on in some ways only, and versions beyond the first: each is a thing that the switch must change. */
  readonly cards: number;
  readonly versions: number;
  readonly evidence: Combination["evidence"];
  /** Parts, cards and firmware that are not at hand. */
  readonly toGet: number;
  readonly poles: number;
  readonly wires: number;
  /** From the machine as it stands. */
  readonly changes: number;
}

/** One figure in which two switched machines differ; `by` is how much less, or how many grades better, the one named has. */
export interface FigureDifference {
  readonly what: "sureness" | "remedies" | "losses" | "notes" | "cards" | "versions" | "evidence" | "toGet" | "poles" | "wires" | "changes";
  readonly by: number;
}

/** Of a wiring only these figures are taken, so that combinations that are wired alike need be wired once. */
export interface WiringFigures {
  readonly toGet: number;
  readonly poles: number;
  readonly wires: number;
}

export function wiringFigures(wiring: Exclude<Wiring, { kind: "refused" }>): WiringFigures {
  if (wiring.kind === "not-needed") return { toGet: 0, poles: 0, wires: 0 };
  const { parts, optimality, wires } = wiring.plan;
  return {
    toGet: parts.reduce((sum, part) => sum + (part.atHand ? 0 : part.count), 0),
    poles: optimality.poles,
    wires: wires.length,
  };
}

export function figuresOf(combination: Combination, wired: WiringFigures): Figures {
  const { modes, conditions, unknowns, evidence, changes } = combination;
  const held = (kind: (typeof conditions)[number]["kind"]) => conditions.filter((c) => c.kind === kind).length;
  const changing = combination.cards.filter(({ as }) => new Set(modes.map((m) => m.enabled.includes(as))).size > 1);
  return {
    unknown: unknowns.length > 0,
    remedies: held("remedy"),
    losses: held("loss"),
    notes: held("cosmetic"),
    cards: changing.length,
    versions: new Set(modes.map((m) => m.firmware)).size - 1,
    evidence,
    ...wired,
    toGet: wired.toGet + conditions.reduce((sum, { get }) => sum + (get ? (get.count ?? 1) : 0), 0),
    changes: changes.length,
  };
}

const grades: readonly Combination["evidence"][] = ["bench", "documented", "reported", "inferred"];

/** The figures in the order in which they count; less is better. */
export function inOrder(f: Figures): readonly number[] {
  const worst = f.remedies > 0 ? 2 : f.losses > 0 ? 1 : 0;
  const held = [f.remedies, f.losses, f.notes];
  return [f.unknown ? 1 : 0, worst, f.cards + f.versions, grades.indexOf(f.evidence), ...held, f.toGet, f.poles, f.wires, f.changes];
}

export function compareFigures(a: Figures, b: Figures): number {
  const [one, other] = [inOrder(a), inOrder(b)];
  for (const [at, figure] of one.entries()) if (figure !== other[at]) return figure - itemAt(other, at);
  return 0;
}

/** In what `one` is better than `other`. */
export function betterIn(one: Figures, other: Figures): readonly FigureDifference[] {
  const of = (what: FigureDifference["what"], figure: (f: Figures) => number): FigureDifference[] => {
    const by = figure(other) - figure(one);
    return by > 0 ? [{ what, by }] : [];
  };
  return [
    ...of("sureness", (f) => (f.unknown ? 1 : 0)),
    ...of("remedies", (f) => f.remedies),
    ...of("losses", (f) => f.losses),
    ...of("notes", (f) => f.notes),
    ...of("cards", (f) => f.cards),
    ...of("versions", (f) => f.versions),
    ...of("evidence", (f) => grades.indexOf(f.evidence)),
    ...of("toGet", (f) => f.toGet),
    ...of("poles", (f) => f.poles),
    ...of("wires", (f) => f.wires),
    ...of("changes", (f) => f.changes),
  ];
}
