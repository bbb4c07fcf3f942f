// Cases of one house rule: changes to the small club that keep the rule, and changes that break it.
import type { TestClub } from "./club.js";

export type Change = (club: TestClub) => void;

export interface RuleCases {
  /** Close to the edge, but allowed: the rule says nothing. */
  readonly good: Readonly<Record<string, Change>>;
  /** The rule speaks, and no other rule does: one mistake, one message. What it says is in the .txt beside the cases. */
  readonly bad: Readonly<Record<string, Change>>;
}
