// A sum as a problem file writes it, decimals and all, as a sum of whole numbers: all of it counted in the smallest decimal place that
// occurs (0.7a + 0.25b <= 1 is 70a + 25b <= 100). What would reach past what the engine adds up exactly is refused.
import { itemAt } from "../../records/index.js";
import type { Term } from "../../solver/index.js";
import { type Decimal, decimalOf, times, unitsAt } from "./decimal.js";

/** `factor` times each of the weights, one a value. */
export interface WrittenTerm {
  readonly variable: number;
  readonly factor: number;
  readonly weights: readonly number[];
}

/** Whole numbers, each `10 ** -places` of what was written. */
export interface ScaledSum {
  readonly terms: readonly Term[];
  readonly places: number;
  readonly min?: number;
  readonly max?: number;
}

/** A sum past the exact range. */
export class SumMistake extends Error {}

/** Whole numbers are exact up to here; a decimal of so many digits is still told apart from its neighbours when it is printed. */
const furthest = Number.MAX_SAFE_INTEGER;
const furthestDecimal = 10 ** 15;

export function scaledSum(written: readonly WrittenTerm[], bounds: { readonly min?: number; readonly max?: number } = {}): ScaledSum {
  const plain = wholeSum(written, bounds);
  if (plain) return plain;
  const products = written.map(({ factor, weights }) => weights.map((weight) => times(decimalOf(factor), decimalOf(weight))));
  const ends = [bounds.min, bounds.max].map((bound) => (bound === undefined ? undefined : decimalOf(bound)));
  const places = products.flat().reduce((most, product) => Math.max(most, needed(product)), 0);
  const rows = products.map((row) => row.map((product) => unitsAt(shorter(product), places)));
  const reach = rows.reduce((sum, row) => sum + row.reduce((most, units) => larger(most, size(units)), 0n), 0n);
  const limit = places === 0 ? furthest : furthestDecimal;
  if (reach > BigInt(limit)) {
    const counted = places === 0 ? "" : ` in units of 1e-${places}`;
    throw new SumMistake(
      `this sum can reach ${reach}${counted}; sums are exact up to ${limit}: use smaller weights or fewer decimal places`,
    );
  }
  const [min, max] = [bound(ends[0], places, reach, 1n), bound(ends[1], places, reach, -1n)];
  return {
    terms: written.map(({ variable }, i) => ({ variable, weights: itemAt(rows, i).map(Number) })),
    places,
    ...(min === undefined ? {} : { min }),
    ...(max === undefined ? {} : { max }),
  };
}

/** The common case, without big numbers: everything whole, and nowhere near the end of the range. */
function wholeSum(written: readonly WrittenTerm[], bounds: { readonly min?: number; readonly max?: number }): ScaledSum | undefined {
  let reach = 0;
  const terms: Term[] = [];
  for (const { variable, factor, weights } of written) {
    let most = 0;
    for (const weight of weights) {
      if (!Number.isInteger(factor) || !Number.isInteger(weight)) return undefined;
      most = Math.max(most, Math.abs(factor * weight));
    }
    reach += most;
    terms.push({ variable, weights: weights.map((weight) => factor * weight) });
  }
  const ends = [bounds.min ?? 0, bounds.max ?? 0];
  return reach <= furthest && ends.every(Number.isSafeInteger) ? { terms, places: 0, ...bounds } : undefined;
}

const larger = (one: bigint, two: bigint): bigint => (one < two ? two : one);
const size = (units: bigint): bigint => (units < 0n ? -units : units);

/** The places a decimal needs, zeros at its end aside. */
function needed({ units, places }: Decimal): number {
  let left = places;
  for (let rest = units; left > 0 && rest % 10n === 0n; rest /= 10n) left--;
  return left;
}

function shorter(decimal: Decimal): Decimal {
  const places = needed(decimal);
  return { units: decimal.units / 10n ** BigInt(decimal.places - places), places };
}

/** A bound in the sum's units: between two of them the nearer one inside (`inward` 1 is up). Past what the sum can reach, just past it. */
function bound(end: Decimal | undefined, places: number, reach: bigint, inward: 1n | -1n): number | undefined {
  if (end === undefined) return undefined;
  const scale = 10n ** BigInt(Math.max(0, end.places - places));
  const units = end.units * 10n ** BigInt(Math.max(0, places - end.places));
  const whole = units / scale + (units % scale !== 0n && units > 0n === inward > 0n ? inward : 0n);
  if (whole > reach) return Number(reach + 1n);
  if (whole < -reach) return Number(-reach - 1n);
  return Number(whole);
}
