// What every command shares: the options that stand everywhere, and how an action's outcome becomes an exit code.
import type { Command } from "commander";
import type { Terminal } from "./printing/terminal.js";
import type { ExitCode } from "./usage-error.js";

/** Options every command takes. */
export interface GlobalOptions {
  readonly data?: string;
  readonly json?: boolean;
}

export interface CommandContext {
  readonly terminal: Terminal;
  /** Resolves when the person wants a lasting command to end: Ctrl-C, or the system's wish. */
  readonly until: () => Promise<void>;
  /**
   * Makes an action for commander: arguments and options (those that stand everywhere among them) go in, an exit code
   * comes out. Wrong use is thrown as WrongUse and told by `run`.
   */
  action<O extends GlobalOptions>(
    does: (args: readonly string[], options: O) => Promise<ExitCode> | ExitCode,
  ): (...given: unknown[]) => Promise<void>;
}

/** A command's file exports one of these. */
export type Register = (program: Command, setting: CommandContext) => void;

/** For options that may be given several times. */
export function gathered(value: string, before: readonly string[] | undefined): readonly string[] {
  return [...(before ?? []), value];
}

/** JSON as every command prints it: two spaces, big numbers as digits. */
export function json(value: unknown): string {
  return JSON.stringify(value, (_, v) => (typeof v === "bigint" ? v.toString() : v), 2);
}
