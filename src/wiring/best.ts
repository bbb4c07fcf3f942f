// Planning and wiring together: of the combinations of a machine, and of every division of its cards, the one that is best to build. The
// first that planning ranks may be one that no switch can do, or one that asks more of the switch than another as good.

import type { Catalogue } from "../catalogue/index.js";
import type { Combination, Offer, Round } from "../planning/index.js";
import { itemAt } from "../records/index.js";
import { demandsOf, socketsOf } from "../switching/index.js";
import type { WayOut, Wiring, WiringOptions, WiringReason } from "./answer-types.js";
import { betterIn, compareFigures, type FigureDifference, type Figures, figuresOf, type WiringFigures, wiringFigures } from "./figures.js";
import { imageRepeats } from "./harness/banks.js";
import { planWiring } from "./plan.js";

/** One build, or one division of a machine's cards, of which the best is looked for. */
export interface ToBuild {
  /** Best first; what is better lies in no later round. */
  readonly rounds: Iterable<Round>;
  /** Combinations that are told elsewhere, so that they are compared as well. */
  readonly told?: readonly Combination[];
  readonly options?: WiringOptions;
}

export interface Built {
  /** Place of its build or division among those asked. */
  readonly of: number;
  readonly combination: Combination;
  readonly figures: Figures;
}

export interface BestBuilt extends Built {
  readonly kind: "best";
  /** No switch is needed where every way runs the same firmware with the same cards on. */
  readonly wiring: Exclude<Wiring, { readonly kind: "refused" }>;
  readonly runnerUp?: Built & { readonly saves: readonly FigureDifference[]; readonly costs: readonly FigureDifference[] };
  /** Combinations that were compared, and others that no switch can do; those that differ only in slots and settings are one. */
  readonly compared: number;
  readonly refused: number;
  /** No combination, of any division asked about, is better; else this is the best of those compared. */
  readonly proven: boolean;
}

export type BestWiring =
  | BestBuilt
  | {
      readonly kind: "refused";
      readonly says: string;
      readonly reasons: readonly WiringReason[];
      readonly waysOut: readonly WayOut[];
      /** Combinations that were tried. */
      readonly refused: number;
      /** There are no others. */
      readonly proven: boolean;
    };

type Refused = Extract<Wiring, { kind: "refused" }>;

interface Found extends Built {
  readonly key: string;
  readonly told: () => Combination;
}

/** Undefined where there is no combination at all. */
export function bestWiring(catalogue: Catalogue, asked: readonly ToBuild[]): BestWiring | undefined {
  const searches = asked.map((toBuild, of) => searched(catalogue, toBuild, of));
  const found = searches.flatMap((s) => s.found).sort(byFigures);
  const refusals = searches.flatMap((s) => [...s.refusals.values()]);
  const proven = searches.every((s) => s.complete);
  const [best] = found;
  if (!best) {
    const [first] = refusals;
    return first && { ...first, refused: refusals.length, proven };
  }
  const combination = best.told();
  const wiring = planWiring(catalogue, combination, itemAt(asked, best.of).options);
  if (wiring.kind === "refused") throw new Error(`A combination that could be wired no longer can: ${wiring.says}`);
  const next = nextTo(best, found);
  return {
    kind: "best",
    ...built(best, combination),
    wiring,
    ...(next
      ? {
          runnerUp: {
            ...built(next, next.combination),
            saves: betterIn(next.figures, best.figures),
            costs: betterIn(best.figures, next.figures),
          },
        }
      : {}),
    compared: found.length,
    refused: refusals.length,
    proven,
  };
}

const built = ({ of, figures }: Found, combination: Combination): Built => ({ of, combination, figures });

/** Of equals the one that was offered first. */
function byFigures(a: Found, b: Found): number {
  return compareFigures(a.figures, b.figures) || a.of - b.of;
}

/** The best that saves something; else the next best. */
function nextTo(best: Found, found: readonly Found[]): Found | undefined {
  const others = found.filter((f) => f !== best);
  return others.find((f) => betterIn(f.figures, best.figures).length > 0) ?? others[0];
}

interface Searched {
  readonly found: readonly Found[];
  readonly refusals: ReadonlyMap<string, Refused>;
  /** Nothing better than the best of these was left out. */
  readonly complete: boolean;
}

/** Rounds are looked at until one has been wired, and another beside it. */
function searched(catalogue: Catalogue, { rounds, told = [], options = {} }: ToBuild, of: number): Searched {
  const found = new Map<string, Found>();
  const refusals = new Map<string, Refused>();
  const wired = new Map<string, WiringFigures | Refused>();
  /** Of equals the one that is told elsewhere is kept. */
  const add = ({ combination, told }: Offer, preferred = false) => {
    const key = classOf(catalogue, combination);
    if (refusals.has(key)) return;
    const alike = wiredAlike(catalogue, combination, options) ?? key;
    const known = wired.get(alike);
    const result = known ?? resultOf(planWiring(catalogue, combination, { ...options, tables: false, judge: undefined }));
    if (!known) wired.set(alike, result);
    if ("kind" in result) {
      refusals.set(key, result);
      return;
    }
    const one: Found = { of, key, combination, told, figures: figuresOf(combination, result) };
    const before = found.get(key);
    if (!before || compareFigures(one.figures, before.figures) < (preferred ? 1 : 0)) found.set(key, one);
  };
  let complete = true;
  for (const round of rounds) {
    const first = found.size === 0;
    for (const offer of round.offers) add(offer);
    if (first) complete &&= round.complete;
    if (found.size > 1) break;
  }
  for (const combination of told) add({ combination, told: () => combination }, true);
  return { found: [...found.values()], refusals, complete };
}

function resultOf(wiring: Wiring): WiringFigures | Refused {
  return wiring.kind === "refused" ? wiring : wiringFigures(wiring);
}

/** Combinations that differ in slots and settings alone ask the same of a switch. */
function classOf(catalogue: Catalogue, { revision, modes, cards }: Combination): string {
  const switched = cards.map(({ as, card, revision }) => [as, catalogue.cards.get(card)?.enable?.revisions ? revision : ""]);
  return JSON.stringify([revision, modes.map((m) => [m.firmware, [...m.enabled].sort()]), switched]);
}

/**
 * The same for combinations that are wired alike and differ in nothing but which version is which; undefined where nothing can be said
 * before it is tried.
 */
function wiredAlike(catalogue: Catalogue, combination: Combination, options: WiringOptions): string | undefined {
  const board = catalogue.boards.get(combination.board);
  const family = catalogue.firmware.get(combination.firmwareFamily);
  const asked = demandsOf(catalogue, combination, options);
  if (!board || !family || asked.kind === "refused") return undefined;
  const { modes, cards, versions, safest } = asked.demands;
  const sockets = socketsOf(board, combination.revision);
  const images = "reason" in sockets ? undefined : imageRepeats(family, versions, sockets);
  if (versions.length > 1 && (!images || images.reasons.length > 0)) return undefined;
  return JSON.stringify([
    modes.map((m) => [versions.indexOf(m.firmware), m.on]),
    cards,
    safest,
    versions.length > 1 ? [sockets, versions.map((v) => images?.repeats.get(v))] : [],
    combination.cards.map((c) => [c.as, c.card, c.revision]),
  ]);
}
