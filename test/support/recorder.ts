// A terminal that writes down what a command prints, and a run of one command line against it.
import type { Terminal } from "../../src/cli/printing/terminal.js";
import { run } from "../../src/cli/program.js";

export { freshFolder } from "./fresh-folder.js";

export interface Run {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export interface RunOptions {
  readonly folder?: string;
  readonly colour?: boolean;
  /** What the person answers, question by question; nobody is there when left out. */
  readonly answers?: readonly string[];
}

export async function slotwright(args: readonly string[], options: RunOptions = {}): Promise<Run> {
  const out: string[] = [];
  const err: string[] = [];
  const answers = [...(options.answers ?? [])];
  const terminal: Terminal = {
    out: (line) => out.push(line),
    err: (line) => err.push(line),
    progress: () => {},
    ask: async () => answers.shift(),
    colour: options.colour ?? false,
    folder: options.folder ?? process.cwd(),
  };
  const code = await run(args, terminal);
  return { code, out: out.join("\n"), err: err.join("\n") };
}
