// What is left of a budget. Several searches of one task share one; a sub-budget is some steps out of it, for a search that may be tried
// again with more. A step is a decision, or so much other work: setting up and propagating a large problem is paid for as well.
// Running out where no result can be given is thrown inside this room, and the tasks turn it into their result.
import type { Budget } from "./problem.js";

/** Thrown when the budget ends where no result can be given yet. */
export class BudgetExhausted extends Error {}

/** Elementary operations (a word of a bitset, a row, a literal) that cost a step: some milliseconds. Small problems pay nothing for them. */
const workOfAStep = 2 ** 20;

/** The result of a task, or what it gives when its budget ends in the middle. */
export function orExhausted<T>(task: () => T, otherwise: () => T): T {
  try {
    return task();
  } catch (error) {
    if (error instanceof BudgetExhausted) return otherwise();
    throw error;
  }
}

/** Counts steps and asks the caller's `stop` now and then. */
export class StepBudget {
  private left: number;
  private asked = 0;
  private work = 0;
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
  /** Pays for so many elementary operations already done. */
  charge(operations: number): void {
    this.work += operations;
    if (this.work < workOfAStep) return;
    this.left -= Math.floor(this.work / workOfAStep);
    this.work %= workOfAStep;
    if (this.budget.stop?.()) this.left = -1;
  }
  /** The same in the middle of setting up, which nothing else ends. */
  chargeOrThrow(operations: number): void {
    this.charge(operations);
    if (this.left < 0) throw new BudgetExhausted();
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
  override charge(operations: number): void {
    this.whole.charge(operations);
  }
  override chargeOrThrow(operations: number): void {
    this.whole.chargeOrThrow(operations);
  }
}
