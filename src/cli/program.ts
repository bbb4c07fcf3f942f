// Wires the commands to commander, and turns every outcome into an exit code: 0 it holds, 1 findings, 2 wrong use.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Command, CommanderError } from "commander";
import { explainSystemError, FileRefusal } from "../files/index.js";
import { type CommandContext, type GlobalOptions, json, type Register } from "./command.js";
import { registerBurn } from "./commands/burn.js";
import { registerCheck } from "./commands/check.js";
import { registerFind } from "./commands/find.js";
import { registerNew } from "./commands/new.js";
import { registerPlan } from "./commands/plan.js";
import { registerPocket } from "./commands/pocket.js";
import { registerResult } from "./commands/result.js";
import { registerSite } from "./commands/site.js";
import { registerStart } from "./commands/start.js";
import { registerStartClub } from "./commands/start-club.js";
import type { Terminal } from "./printing/terminal.js";
import { packageTop } from "./reading/folders.js";
import { type ExitCode, UsageError } from "./usage-error.js";

const commands: readonly Register[] = [
  registerCheck,
  registerPlan,
  registerFind,
  registerBurn,
  registerSite,
  registerPocket,
  registerStart,
  registerNew,
  registerStartClub,
  registerResult,
];

const help = "Run slotwright --help for the commands, slotwright <command> --help for one of them.";

/** Runs one command line (without the program's own name). Throws only for our own bugs. */
export async function run(args: readonly string[], terminal: Terminal, until: () => Promise<void> = async () => {}): Promise<ExitCode> {
  let code: ExitCode = 0;
  const program = new Command("slotwright");
  const setting: CommandContext = {
    terminal,
    until,
    action:
      (does) =>
      async (...given) => {
        const command = given.at(-1) as Command;
        const words = given
          .slice(0, -2)
          .flat()
          .filter((word): word is string => typeof word === "string");
        code = await does(words, command.optsWithGlobals());
      },
  };
  program
    .description("Which board, firmware, cards, slots and jumpers of an old computer work together, and why not.")
    .version(version(), "-V, --version", "print the version")
    .option("--data <folder>", "the club's records (default: data/ here when it holds records, else the demo club)")
    .option("--json", "print JSON, for other programs")
    .helpOption("-h, --help", "print this help")
    .configureHelp({ showGlobalOptions: true })
    .configureOutput({
      writeOut: (text) => terminal.out(text.trimEnd()),
      writeErr: (text) => terminal.err(text.trimEnd()),
      getOutHasColors: () => terminal.colour,
    })
    .showSuggestionAfterError()
    .addHelpText("after", "\nExit codes: 0 it holds, 1 there are findings (or the build does not work), 2 wrong use.")
    .exitOverride();
  for (const register of commands) register(program, setting);
  for (const command of program.commands) command.copyInheritedSettings(program).helpOption("-h, --help", "print this help");
  try {
    if (args.length === 0) {
      program.outputHelp();
      return 2;
    }
    await program.parseAsync([...args], { from: "user" });
    return code;
  } catch (problem) {
    if (problem instanceof CommanderError) {
      if (problem.exitCode === 0) return 0;
      if (args.includes("--json"))
        terminal.out(json({ error: { says: problem.message.replace(/^error: /, ""), next: help, details: [] } }));
      terminal.err(help);
      return 2;
    }
    const wrong = asWrongUse(problem);
    if (wrong) return tell(wrong, program.opts<GlobalOptions>().json === true || args.includes("--json"), terminal);
    throw problem;
  }
}

/** What the person, not the program, has to mend: wrong use, a place that cannot be written, a disk without room. */
function asWrongUse(problem: unknown): UsageError | undefined {
  if (problem instanceof UsageError) return problem;
  const explained = problem instanceof FileRefusal ? problem : explainSystemError(problem);
  return explained && new UsageError(explained.message, explained.next);
}

function tell(problem: UsageError, asJson: boolean, terminal: Terminal): ExitCode {
  if (asJson) terminal.out(json({ error: { says: problem.message, next: problem.next, details: problem.details } }));
  else {
    terminal.err(problem.message);
    for (const line of problem.details) terminal.err(line);
    terminal.err(problem.next);
  }
  return 2;
}

function version(): string {
  return (JSON.parse(readFileSync(join(packageTop(), "package.json"), "utf8")) as { version: string }).version;
}
