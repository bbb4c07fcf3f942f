// What is left of a budget. Several searches of one task share one; a sub-budget is some steps out of it, for a search that may be tried
// again with more. Running out in the middle of a proof is thrown inside this room, and the tasks turn it into their result.
import type { Budget } from "./problem.js";

/** Thrown when the budget ends where no result can be given yet. */
export class BudgetExhausted extends Error {}

/** Counts steps and asks the caller's `stop` now and then. */
export class StepBudget {
  private left: number;
  private asked = 0;
  constructor(private readonly budget: Budget = {}) {
    this.left = budget.steps ?? Number.POSITIVE_INFINITY;
  }
  /** True while there is something to spend. */
  spend(): boolean {
    if (this.left <= 0) return false;
    this.left--;
    if ((this.asked++ & 63) === 0 && this.budget.stop?.()) this.left = -1;
    return this.left >= 0;
  }
}

/** Some steps out of a budget. A search that has spent them may be tried again; one that exhausted the budget itself may not. */
export class SubBudget extends StepBudget {
  /** The whole budget is gone. */
  empty = false;
  constructor(
    private readonly whole: StepBudget,
    private share: number,
  ) {
    super();
  }
  override spend(): boolean {
    if (this.share-- <= 0) return false;
    if (this.whole.spend()) return true;
    this.empty = true;
    return false;
  }
}
