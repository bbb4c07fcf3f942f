#!/usr/bin/env node
// The slotwright command: hands the process to the program and takes its exit code.
import { processTerminal } from "./printing/terminal.js";
import { run } from "./program.js";

// A reader that closes the pipe early (head) is no fault.
process.stdout.on("error", (problem: NodeJS.ErrnoException) => {
  if (problem.code === "EPIPE") process.exit(0);
  throw problem;
});

const until = () =>
  new Promise<void>((done) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => done());
  });

try {
  process.exitCode = await run(process.argv.slice(2), processTerminal(), until);
} catch (problem) {
  const told = problem instanceof Error ? (problem.stack ?? problem.message) : String(problem);
  process.stderr.write(`A fault in slotwright itself, not in your records. Please report this with the command you ran:\n${told}\n`);
  process.exitCode = 70;
}
