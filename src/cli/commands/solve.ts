// npm run solve: puts the problem of a file to the engine and prints the answer as JSON.
// Exit codes: 0 there is an answer, 1 there is none (or the steps ran out; which of the two is said beside it), 2 wrong use or a bad file.

import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { Command, CommanderError, InvalidArgumentError, Option } from "commander";
import { itemAt } from "../../records/index.js";
import {
  type Budget,
  cheapest,
  count,
  decide,
  estimateCount,
  explain,
  list,
  type Problem,
  possible,
  reasons,
  repairs,
  type Solution,
} from "../../solver/index.js";
import { fromUnits } from "../reading/decimal.js";
import { named, type ProblemFile, readProblemFile } from "../reading/problem-file.js";

export const solveTasks = ["decide", "count", "list", "possible", "cheapest", "reasons", "repairs", "explain"] as const;
export type SolveTask = (typeof solveTasks)[number];

export interface SolveOptions {
  readonly limit?: number;
  readonly steps?: number;
}

/** The answer to print, and whether there is one. */
export function solveFile(file: ProblemFile, task: SolveTask, options: SolveOptions = {}): { answer: object; holds: boolean } {
  const { choices } = file;
  // Choices are rules like any others, except for the tasks that ask which of them to give up.
  const whole = { variables: file.problem.variables, rules: [...file.problem.rules, ...choices.flatMap((c) => c.rules)] };
  const budget: Budget = options.steps === undefined ? {} : { steps: options.steps };
  const project = file.project ? { project: file.project } : {};
  const words = (solution: Solution) => named(file, solution);
  switch (task) {
    case "decide": {
      const found = decide(whole, budget);
      return {
        answer: found.kind === "found" ? { task, kind: found.kind, solution: words(found.solution) } : { task, ...found },
        holds: found.kind === "found",
      };
    }
    case "count": {
      const counted = count(whole, project, budget);
      // Dives tell whole solutions apart, not those of a projection.
      const about = counted.exact || file.project ? {} : estimated(whole, budget, counted.count);
      return {
        answer: { task, count: counted.count.toString(), exact: counted.exact, ...about },
        holds: counted.exact && counted.count > 0n,
      };
    }
    case "list": {
      const listed = list(whole, { limit: options.limit ?? 100, ...project }, budget);
      return { answer: { task, solutions: listed.solutions.map(words), complete: listed.complete }, holds: listed.solutions.length > 0 };
    }
    case "possible": {
      const found = possible(whole, budget);
      const values = Object.fromEntries(
        file.problem.variables.map((v, i) => [v.name, itemAt(file.values, i).filter((_, value) => itemAt(found.values, i).has(value))]),
      );
      return { answer: { task, values, exact: found.exact }, holds: found.exact && found.values.every((set) => set.size > 0) };
    }
    case "cheapest": {
      const ranked = cheapest(whole, file.costs, { k: options.limit ?? 1, ...project }, budget);
      const solutions = ranked.solutions.map(({ solution, cost }) => ({
        cost: cost.map((sum, i) => fromUnits(sum, itemAt(file.places, i))),
        solution: words(solution),
      }));
      return { answer: { task, solutions, proven: ranked.proven }, holds: ranked.proven && solutions.length > 0 };
    }
    case "reasons":
    case "repairs": {
      const found = (task === "reasons" ? reasons : repairs)(file.problem, choices, budget);
      return { answer: { task, sets: found.sets, complete: found.complete }, holds: found.complete && found.sets.length > 0 };
    }
    case "explain": {
      const found = explain(file.problem, choices, budget);
      return { answer: { task, ...found }, holds: found.kind === "found" };
    }
  }
}

/** An estimate beside "at least"; nothing where no dive met a solution, or the estimate is below what is certain. */
function estimated(problem: Problem, budget: Budget, atLeast: bigint): object {
  const { mean, spread, dives } = estimateCount(problem, {}, budget);
  if (spread === undefined || mean === 0 || !Number.isFinite(mean) || !Number.isFinite(spread)) return {};
  const spelt = (number: number) => BigInt(Math.round(Number(number.toPrecision(3))));
  if (spelt(mean) < atLeast) return {};
  return { estimate: { about: spelt(mean).toString(), standardError: spelt(spread).toString(), dives } };
}

/** The tasks that print a list whose length can be chosen. */
const limited: readonly SolveTask[] = ["list", "cheapest"];

/** Why the exit code is 1, where the answer alone may leave that open. */
function whyNot(task: SolveTask, answer: object): string {
  const cut = ["complete", "exact", "proven"].some((field) => (answer as Record<string, unknown>)[field] === false);
  const kind = (answer as { kind?: string }).kind;
  if (cut || kind === "stopped") return "The steps ran out before the answer was proven. Give more with --steps.";
  if (task === "reasons" || task === "explain") return "There is a solution with all choices, so there is no reason to give.";
  if (task === "repairs") return "There is no solution even without the choices. --task explain names the rules that clash.";
  return "There is no solution. --task reasons or --task explain says why.";
}

function wholeNumber(least: number): (text: string) => number {
  return (text) => {
    const number = /^\d+$/.test(text) ? Number(text) : Number.NaN;
    if (!Number.isSafeInteger(number) || number < least) throw new InvalidArgumentError(`Give a whole number from ${least} on.`);
    return number;
  };
}

/** Runs the command line; gives the exit code. */
export function runSolve(args: readonly string[], out: (text: string) => void, err: (text: string) => void): number {
  let code = 0;
  const program = new Command("solve")
    .description("Answers one question about a finite-domain problem given as a JSON file.")
    .argument("<file>", "the problem file (its form: src/solver/README.md)")
    .addOption(new Option("--task <task>", "what to ask").choices([...solveTasks]).default("decide"))
    .option("--limit <n>", "most solutions of list (100 when left out) or cheapest (1)", wholeNumber(1))
    .option(
      "--steps <n>",
      "most search steps, and as many again for the estimate beside a count cut short; no end when left out",
      wholeNumber(0),
    )
    .exitOverride()
    .configureOutput({ writeOut: (text) => out(text.trimEnd()), writeErr: (text) => err(text.trimEnd()) })
    .action((path: string, options: SolveOptions & { task: SolveTask }) => {
      if (options.limit !== undefined && !limited.includes(options.task)) {
        err(`--limit means nothing for --task ${options.task}. Leave it out, or ask for ${limited.join(" or ")}.`);
        code = 2;
        return;
      }
      let text: string;
      try {
        text = readFileSync(path, "utf8");
      } catch {
        err(`${path}: cannot be read. Give the path of a problem file.`);
        code = 2;
        return;
      }
      const read = readProblemFile(text);
      if (read.kind === "bad") {
        for (const mistake of read.mistakes) err(`${path}:${mistake.replace(" ", ": ")}`);
        code = 2;
        return;
      }
      const { answer, holds } = solveFile(read.file, options.task, options);
      out(JSON.stringify(answer, null, 2));
      code = holds ? 0 : 1;
      if (!holds) err(whyNot(options.task, answer));
    });
  try {
    program.parse([...args], { from: "user" });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? 0 : 2;
  }
  return code;
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  process.exitCode = runSolve(
    process.argv.slice(2),
    (text) => console.log(text),
    (text) => console.error(text),
  );
}
