// slotwright result: tells what a bench test of a build showed, and writes it down as a tested build of the club.

import { existsSync } from "node:fs";
import { join, resolve } from "node:path";
import { writeFile } from "../../files/index.js";
import { fillBuild } from "../../machine/index.js";
import { kinds, type Result, readOne, writeRecord } from "../../records/index.js";
import { type GlobalOptions, gathered, json, type Register } from "../command.js";
import type { Terminal } from "../printing/terminal.js";
import { holesOf, overall, testedBuild } from "../reading/bench-result.js";
import { type AskedBuild, fromFile } from "../reading/build-question.js";
import { type Club, counted, findingText, openClub, today } from "../reading/club.js";
import { shown } from "../reading/folders.js";
import { checkId, clubsOwn } from "../reading/own-record.js";
import { answerFor } from "../reading/planner.js";
import { UsageError } from "../usage-error.js";
import { allFindings } from "./check.js";

type Outcome = Result["outcome"];
const outcomes: readonly Outcome[] = ["worked", "failed", "partly"];

interface ResultOptions extends GlobalOptions {
  readonly by?: string;
  readonly date?: string;
  readonly outcome?: string;
  readonly hours?: string;
  readonly mode?: readonly string[];
  readonly symptom?: readonly string[];
  readonly fault?: readonly string[];
  readonly remedy?: readonly string[];
  readonly question?: string;
  readonly combination?: string;
  readonly id?: string;
  readonly name?: string;
  readonly out?: string;
  readonly replace?: boolean;
}

export const registerResult: Register = (program, { terminal, action }) => {
  program
    .command("result")
    .argument("<build.yaml>", "the build that stood on the bench")
    .option("--by <name>", "who tested it (asked for when left out)")
    .option("--outcome <outcome>", `as a whole: ${outcomes.join(", ")} (asked for when left out)`)
    .option("--date <date>", "when: YYYY, YYYY-MM or YYYY-MM-DD (default: today)")
    .option("--hours <n>", "how many hours it ran")
    .option("--mode <mode=outcome>", "what came of one mode; may be repeated", gathered)
    .option("--symptom <text>", "what was seen; may be repeated", gathered)
    .option("--fault <text>", "a fault left open; may be repeated", gathered)
    .option("--remedy <text>", "what was done to make it work; may be repeated", gathered)
    .option("--question <text>", "why result and rules disagree, as far as anyone knows")
    .option("--combination <n>", "the combination that was built, as slotwright plan numbers them; fills what the build leaves open")
    .option("--id <id>", "id of the tested build (default: the build's id and the date)")
    .option("--name <name>", "name of the tested build (default: the build's name and the date)")
    .option("--out <file>", "where to write it (default: builds/ of the club's folder)")
    .option("--replace", "write over a file that is there")
    .description("turn a build into a tested build: what was seen on the bench")
    .action(
      action<ResultOptions>(async ([name = ""], options) => {
        const club = openClub(options.data, terminal);
        const asked = fromFile(name, club, terminal);
        const build = whatStood(asked, options, club);
        const result = await resultFrom(options, build.modes?.map((mode) => mode.id) ?? [], terminal);
        const id = options.id ?? `${asked.build.id}-${result.date}`;
        checkId(id);
        const record = testedBuild(build, club.catalogue.boards.get(build.board), id, options.name, result);
        const text = writeRecord("build", record);
        const { findings } = readOne("build", text, `${kinds.build.folder}/${id}.yaml`);
        const wrong = findings.filter((finding) => finding.level === "error");
        if (wrong.length > 0)
          throw new UsageError(
            "This would not be a tested build.",
            "Mend what is named above and say it again.",
            wrong.map((f) => findingText(f, terminal)),
          );
        const path =
          options.out === undefined
            ? join(clubsOwn(club.data).path, kinds.build.folder, `${id}.yaml`)
            : resolve(terminal.folder, options.out);
        writeFile(path, text, options.replace === true, shown(path, terminal.folder));
        return told(path, options, terminal);
      }),
    );
};

/** The build as it stood, without a hole. */
function whatStood(asked: AskedBuild, options: ResultOptions, club: Club) {
  if (asked.build.result && !options.replace) {
    throw new UsageError(
      `${asked.file ?? asked.build.id} has a result already.`,
      "Tell a second test of it from a copy without the result, or say --replace.",
    );
  }
  const settingsOf = (card: string) => (club.catalogue.cards.get(card)?.settings ?? []).map((setting) => setting.id);
  const holes = holesOf(asked.build, club.catalogue.boards.get(asked.build.board), settingsOf);
  if (options.combination === undefined) {
    if (holes.length === 0) return asked.build;
    const next = "Fill them in, or say which combination was built: --combination <n>, as slotwright plan numbers them.";
    throw new UsageError(`A tested build says exactly what stood on the bench. Left open: ${holes.join("; ")}.`, next);
  }
  const number = Number(options.combination);
  const { combinations } = answerFor(club, asked);
  const combination = Number.isInteger(number) ? combinations[number - 1] : undefined;
  if (!combination)
    throw new UsageError(
      `There is no combination ${options.combination}; the planner names ${combinations.length}.`,
      `See them with: slotwright plan ${asked.file ?? asked.build.id}`,
    );
  return fillBuild(asked.build, combination);
}

async function resultFrom(options: ResultOptions, modes: readonly string[], terminal: Terminal): Promise<Result> {
  const told = (options.mode ?? []).map((text) => modeResult(text, modes));
  const by = options.by ?? (await terminal.ask("Who tested it?"));
  const whole =
    options.outcome ?? overall(told.map((mode) => mode.outcome)) ?? (await terminal.ask(`What came of it (${outcomes.join(", ")})?`));
  if (!by) throw new UsageError("Who tested it was not told.", "Say --by <name>.");
  if (!whole) throw new UsageError("What came of it was not told.", `Say --outcome with one of: ${outcomes.join(", ")}.`);
  if (!isOutcome(whole)) throw new UsageError(`"${whole}" is not an outcome.`, `Say one of: ${outcomes.join(", ")}.`);
  const hours = options.hours === undefined ? undefined : Number(options.hours);
  if (hours !== undefined && !(Number.isInteger(hours) && hours >= 0))
    throw new UsageError(`--hours ${options.hours} is not a whole number.`, "Say the hours it ran as a whole number.");
  const result: Record<string, unknown> = {
    by,
    date: options.date ?? today(),
    outcome: whole,
    hours,
    modes: told.length > 0 ? told : undefined,
    symptoms: options.symptom,
    faults_open: options.fault,
    remedies: options.remedy,
    open_question: options.question,
  };
  return Object.fromEntries(Object.entries(result).filter(([, value]) => value !== undefined)) as Result;
}

function isOutcome(word: string): word is Outcome {
  return (outcomes as readonly string[]).includes(word);
}

function modeResult(text: string, modes: readonly string[]): { mode: string; outcome: Outcome } {
  const [mode = "", outcome = ""] = text.split("=", 2);
  if (!isOutcome(outcome))
    throw new UsageError(`--mode ${text} cannot be read.`, `Write --mode <mode>=<outcome>, the outcome one of: ${outcomes.join(", ")}.`);
  if (!modes.includes(mode))
    throw new UsageError(
      `The build has no mode called ${mode}.`,
      modes.length > 0 ? `Its modes: ${modes.join(", ")}.` : "It has one mode only; say --outcome.",
    );
  return { mode, outcome };
}

/** Checks the club again with the new record in it, and tells what concerns it. */
function told(path: string, options: ResultOptions, terminal: Terminal): 0 | 1 {
  const file = shown(path, terminal.folder);
  const again = options.out === undefined && existsSync(path) ? openClub(options.data, terminal) : undefined;
  const about = again
    ? allFindings(again, terminal, true).filter((finding) => finding.at.file === file || finding.related?.some((r) => r.at.file === file))
    : [];
  if (options.json) terminal.out(json({ wrote: file, findings: about }));
  else {
    for (const finding of about) terminal.out(`${findingText(finding, terminal)}\n`);
    terminal.out(`Wrote ${file}${about.length > 0 ? `; ${counted(about.length, "finding")} to look at` : ""}.`);
  }
  return about.some((finding) => finding.level !== "note") ? 1 : 0;
}
