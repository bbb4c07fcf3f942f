// What a finite-domain problem is. Variables take values 0..size-1; rules say which values go together.
// The engine knows nothing of what they stand for; names are for people who read a problem file.

export interface Variable {
  readonly name: string;
  /** Number of values; the values are 0..size-1. */
  readonly size: number;
}

/** "This variable takes one of these values." */
export interface Literal {
  readonly variable: number;
  readonly values: readonly number[];
}

/** A value's part in a sum: `weights[v]`, a whole number, is added when the variable takes v (exact.ts says how far a sum may reach). */
export interface Term {
  readonly variable: number;
  readonly weights: readonly number[];
}

/** Runs of whole numbers [from, to] (both ends belong to it) that a variable occupies when it takes a value. */
export interface Occupier {
  readonly variable: number;
  readonly windows: readonly (readonly (readonly [number, number])[])[];
}

/**
 * A rule every solution keeps.
 * - `unary`: the variable takes one of the values.
 * - `forbid`: the literals never all hold at once (a nogood).
 * - `clause`: at least one literal holds.
 * - `table`: the variables together take one of the rows.
 * - `allDifferent`: no two variables take the same value; values in `except` may be shared.
 * - `cardinality`: the number of variables that take one of the values lies in min..max.
 * - `linear`: the sum of weights lies in min..max.
 * - `disjoint`: no two variables occupy overlapping windows.
 */
export type Constraint = { readonly id?: string } & (
  | { readonly kind: "unary"; readonly variable: number; readonly values: readonly number[] }
  | { readonly kind: "forbid"; readonly literals: readonly Literal[] }
  | { readonly kind: "clause"; readonly literals: readonly Literal[] }
  | { readonly kind: "table"; readonly variables: readonly number[]; readonly rows: readonly (readonly number[])[] }
  | { readonly kind: "allDifferent"; readonly variables: readonly number[]; readonly except?: readonly number[] }
  | {
      readonly kind: "cardinality";
      readonly variables: readonly number[];
      readonly values: readonly number[];
      readonly min?: number;
      readonly max?: number;
    }
  | { readonly kind: "linear"; readonly terms: readonly Term[]; readonly min?: number; readonly max?: number }
  | { readonly kind: "disjoint"; readonly occupiers: readonly Occupier[] }
);

export interface Problem {
  readonly variables: readonly Variable[];
  readonly rules: readonly Constraint[];
}

/** One value per variable. */
export type Solution = readonly number[];

/** What a task may spend. The caller owns the clock: `stop` is asked now and then, true ends the search. */
export interface Budget {
  /** Most search steps (decisions). */
  readonly steps?: number;
  readonly stop?: () => boolean;
}

/** A named rule that may be given up: something somebody chose, not a fact. Several rules may share one id. */
export interface Choice {
  readonly id: string;
  readonly rules: readonly Constraint[];
}
