// The ways of a machine: what a switch can do for the wishes, and what the hand can do without one.
import type { Catalogue } from "../../catalogue/index.js";
import { type InvalidBuild, type ResolvedBuild, resolveBuild } from "../../machine/index.js";
import type { Build } from "../../records/index.js";
import type { Budget } from "../../solver/index.js";
import { type ChangeOverResult, changeOver } from "./change-over.js";
import { type Switched, withSwitch } from "./with-switch.js";

export interface Ways extends Switched {
  readonly kind: "ways";
  /** The same wishes granted without a switch, by opening the machine between two ways. */
  readonly byHand: ChangeOverResult;
}

export interface WaysOptions {
  /** Most divisions (default 6). */
  readonly most?: number;
  readonly budget?: Budget;
}

/** Steps each search may take when the caller names no budget. */
const defaultBudget: Budget = { steps: 400_000 };

/** The ways of a build's machine; undefined when it names records that could not be read, of which nothing can be said. */
export function findWays(catalogue: Catalogue, build: Build, options: WaysOptions = {}): Ways | InvalidBuild | undefined {
  const request = resolveBuild(catalogue, build);
  if (request.kind === "unread") return undefined;
  return request.kind === "misasked" ? request : waysOf(request.question, options);
}

function waysOf(question: ResolvedBuild, { most = 6, budget = defaultBudget }: WaysOptions): Ways {
  return { kind: "ways", ...withSwitch(question, { most, brief: false, budget }), byHand: changeOver(question, budget) };
}
