// Wrong use: the person asked for something that cannot be done as asked. Exit code 2; never a stack trace.

/** Exit codes of every command: 0 it holds, 1 there are findings, 2 wrong use. */
export type ExitCode = 0 | 1 | 2;

export class UsageError extends Error {
  /** What to do instead. */
  readonly next: string;
  /** Further lines to show between the message and the advice: findings with their places. */
  readonly details: readonly string[];

  constructor(says: string, next: string, details: readonly string[] = []) {
    super(says);
    this.name = "WrongUse";
    this.next = next;
    this.details = details;
  }
}
