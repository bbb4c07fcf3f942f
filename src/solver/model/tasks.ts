// The tasks the engine answers, as types. Running out of budget is its own result, never a wrong answer.
import type { Solution, Term } from "./problem.js";

export type Decision = { readonly kind: "found"; readonly solution: Solution } | { readonly kind: "none" } | { readonly kind: "stopped" };

/** `complete`: the list holds every solution (or every projection). Otherwise limit or budget cut it. */
export interface Listing {
  readonly solutions: readonly Solution[];
  readonly complete: boolean;
}

/** `exact` false: at least `count`. */
export interface Count {
  readonly count: bigint;
  readonly exact: boolean;
}

/** Per variable the values some solution takes. `exact` false: more may be possible than are listed. */
export interface Possible {
  readonly values: readonly ReadonlySet<number>[];
  readonly exact: boolean;
}

/** A cost to minimise: the sum of its terms. Several are taken in order, the first mattering most. */
export interface Cost {
  readonly terms: readonly Term[];
}

export interface Ranked {
  /** Best first; each with its cost vector. */
  readonly solutions: readonly { readonly solution: Solution; readonly cost: readonly number[] }[];
  /** The list is proven best and in order (and complete when shorter than asked). */
  readonly proven: boolean;
}

/** Sets of choice ids, shortest first, then in the order the choices were given. */
export interface ChoiceSets {
  readonly sets: readonly (readonly string[])[];
  readonly complete: boolean;
}

/** Both lists; complete together or not at all. */
export interface ReasonsAndRepairs {
  readonly reasons: ChoiceSets;
  readonly repairs: ChoiceSets;
}
