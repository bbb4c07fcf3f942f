// Where records claim resources, and on which revisions.
import { type Board, type Card, type Claims, listed } from "../records/index.js";

export type Path = readonly (string | number)[];

/** A place in a record that claims resources. */
export interface ClaimSite {
  readonly path: Path;
  readonly claims: Claims;
  /** Left out: all revisions of the record. */
  readonly revisions?: readonly string[] | undefined;
}

export function claimSites(card: Card): readonly ClaimSite[] {
  const fixed = listed(card.claims).map((claims, i) => ({ path: ["claims", i], claims, revisions: claims.revisions }));
  const set = (card.settings ?? []).flatMap((s, i) =>
    s.positions.map((claims, p) => ({ path: ["settings", i, "positions", p], claims, revisions: s.revisions })),
  );
  return [...fixed, ...set];
}

export function fixedSites(board: Board): readonly ClaimSite[] {
  return board.fixed.map((claims, i) => ({ path: ["fixed", i], claims, revisions: claims.revisions }));
}

/** True when some revision is in both; a list left out means every revision. */
export function meetRevisions(a: readonly string[] | undefined, b: readonly string[] | undefined): boolean {
  return !a || !b || a.some((r) => b.includes(r));
}
