// What a command may print to and read from. Tests hand in a recorder; main.ts hands in the process.
import { createInterface } from "node:readline/promises";

export interface Terminal {
  /** A line of the answer. */
  out(line: string): void;
  /** A line about the work: progress, notes, mistakes. */
  err(line: string): void;
  /** Shows how far long work is, on one line that is overwritten; shows nothing when nobody watches. */
  progress(says: string): void;
  /** Asks the person; undefined when nobody is there to answer. */
  ask(question: string): Promise<string | undefined>;
  readonly colour: boolean;
  readonly folder: string;
}

/** NO_COLOR (any value) and a pipe both mean no colour; FORCE_COLOR overrules the pipe, never NO_COLOR. */
export function mayColour(isTerminal: boolean, env: NodeJS.ProcessEnv): boolean {
  if (env.NO_COLOR) return false;
  if (env.TERM === "dumb") return false;
  return isTerminal || (env.FORCE_COLOR !== undefined && env.FORCE_COLOR !== "0");
}

export function processTerminal(): Terminal {
  const watched = process.stderr.isTTY === true;
  let shown = false;
  const clear = () => {
    if (shown) process.stderr.write("\r\x1b[K");
    shown = false;
  };
  return {
    out(line) {
      clear();
      process.stdout.write(`${line}\n`);
    },
    err(line) {
      clear();
      process.stderr.write(`${line}\n`);
    },
    progress(says) {
      if (!watched) return;
      clear();
      if (says === "") return;
      process.stderr.write(says.slice(0, (process.stderr.columns ?? 80) - 1));
      shown = true;
    },
    async ask(question) {
      if (!process.stdin.isTTY || !watched) return undefined;
      clear();
      const reader = createInterface({ input: process.stdin, output: process.stderr });
      try {
        return (await reader.question(`${question} `)).trim();
      } finally {
        reader.close();
      }
    },
    colour: mayColour(process.stdout.isTTY === true, process.env),
    folder: process.cwd(),
  };
}

const codes = { bold: [1, 22], dim: [2, 22], warm: [33, 39], cool: [36, 39], underline: [4, 24] } as const;
export type Look = keyof typeof codes;

/** Colour only repeats what the words say. */
export function styled(terminal: Pick<Terminal, "colour">, look: Look, text: string): string {
  if (!terminal.colour || text === "") return text;
  const [on, off] = codes[look];
  return `\x1b[${on}m${text}\x1b[${off}m`;
}

/** Breaks a sentence into lines of at most `width`, each after the first set in by `indent`. */
export function wrapped(text: string, width: number, indent: string): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines.join(`\n${indent}`);
}

/** A paragraph set in, its further lines a little further. */
export function para(indent: string, text: string): string {
  return indent + wrapped(text, 100 - indent.length, `${indent}  `);
}
