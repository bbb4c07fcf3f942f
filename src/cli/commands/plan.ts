// slotwright plan: answers one build. Asked with a file, with the id of one of the club's builds, or with options alone.

import { waysOutCosts } from "../../pages/index.js";
import type { Ref } from "../../planning/index.js";
import { noticeText } from "../../words/index.js";
import { type GlobalOptions, gathered, json, type Register } from "../command.js";
import { answerText } from "../printing/print-answer.js";
import { namesOf, waysText } from "../printing/print-ways.js";
import { builtJson, builtText, deviceText } from "../printing/print-wiring.js";
import { para, styled } from "../printing/terminal.js";
import { askedBuild, type QuestionOptions } from "../reading/build-question.js";
import { openClub, placeText } from "../reading/club.js";
import { answerFor, waysFor } from "../reading/planner.js";
import { type EvenSo, evenSoOption, isSound } from "../reading/soundness.js";
import { bestOfDivisions, builtOf, namedDevice } from "../reading/wiring-for.js";
import { type ExitCode, UsageError } from "../usage-error.js";
import { tellBuying, tellFitting } from "./buying.js";

interface PlanOptions extends GlobalOptions, EvenSo, QuestionOptions {
  readonly full?: boolean;
  readonly buy?: string;
  readonly fits?: string | true;
  readonly sheet?: string;
  readonly files?: string;
  readonly replace?: boolean;
}

export const registerPlan: Register = (program, { terminal, action }) => {
  program
    .command("plan")
    .argument("[build.yaml]", "a build file, or the id of one of the club's builds")
    .option("--board <id>", "ask without a file: the board")
    .option("--revision <revision>", "its revision; may be repeated for one of several", gathered)
    .option("--memory <size>", "main memory fitted (512K)")
    .option("--card <card>", "a card: <id>, <id>@<slot>, <id>@<slot>,<setting>=<position>; may be repeated", gathered)
    .option("--firmware <version>", "the firmware version")
    .option("--family <id>", "the firmware family (default: the board's first)")
    .option(
      "--mode <mode>",
      "a mode: <name>@<version>:<card>,<card>; version and cards may be left out (nothing after the colon: no card on), and <card>? may be on or off; may be repeated",
      gathered,
    )
    .option(
      "--together <cards>",
      "cards wanted on at the same time, joined by commas, under a version if one is named (@R6); may be repeated",
      gathered,
    )
    .option("--under <version>", "a way under this firmware version is wanted; may be repeated", gathered)
    .option("--always <cards>", "cards wanted on in every way, joined by commas", gathered)
    .option("--alone <cards>", "cards only ever needed by themselves, joined by commas", gathered)
    .option("--ways [most]", "find the fewest ways to run it that grant what is wanted, and say so when it takes more than this")
    .option("--have <versions>", "firmware versions at hand, joined by commas", gathered)
    .option("--buy <card>", "before you buy: would this card work in that machine, and what would you have to change and to get")
    .option("--fits [changes]", "the other way round: every card that would work in that machine, with at most so many changes (2)")
    .option("--full", "every combination in full, not only by what differs from the first")
    .option(
      "--sheet <file.html>",
      "write the build sheet of the combination that is built: parts, wires, burn recipe, bench test; or the card for the lid, where no switch is",
    )
    .option(
      "--files <folder>",
      "write the files for the bench of the switched machine: wires, parts, continuity list and faults as CSV, labels for wires and panel to print",
    )
    .option(...evenSoOption)
    .option("--replace", "write over a sheet or files that are there")
    .description("answer a build: does it work, how, and if not, why not and what would help")
    .addHelpText(
      "after",
      "\nExit codes: 0 it works (or works under a named condition), 1 it does not, that is not known, or it needs a switch or a memory device that cannot be had as asked, 2 wrong use.",
    )
    .action(
      action<PlanOptions>(async ([name], options): Promise<ExitCode> => {
        const club = openClub(options.data, terminal);
        if (!isSound(club, options, terminal)) return 1;
        const asked = askedBuild(name, options, club, terminal);
        if (options.buy !== undefined && options.fits !== undefined)
          throw new UsageError("--buy and --fits were both given.", "Ask one of them: --buy <card>, or --fits for every card.");
        if (options.buy !== undefined) return tellBuying(club, asked, options.buy, options.json === true, terminal);
        if (options.fits !== undefined) return tellFitting(club, asked, options.fits, options.json === true, terminal);
        terminal.progress("planning");
        const ways = asked.build.wishes && waysFor(club, asked);
        const tables = options.json === true || options.files !== undefined;
        const ofDivisions = ways && bestOfDivisions(club, ways, tables);
        const division = ways?.divisions[ofDivisions?.kind === "best" ? ofDivisions.of : 0];
        // With wishes, the question is the machine with the ways that were found for them.
        const question = division ? { ...asked, build: division.build } : asked;
        const made = builtOf(club, question, answerFor(club, question), { given: ofDivisions, tables });
        const { answer, built } = made;
        const device = namedDevice(club, question, made);
        terminal.progress("");
        const sheet = options.sheet && (await sheetWriter())(club, question, answer, options.sheet, options.replace === true, terminal);
        const files = options.files && (await filesWriter())(club, question, built, options.files, options.replace === true, terminal);
        const costs = waysOutCosts(club.catalogue, answer);
        if (options.json)
          terminal.out(
            json({
              ...answer,
              ...(ways ? { ways } : {}),
              ...builtJson(built),
              ...(device ? { device } : {}),
              ...(costs.length > 0 ? { costs } : {}),
              errors: club.catalogue.errors,
            }),
          );
        else {
          if (club.data.demo && club.data.shown !== "data")
            terminal.err(`Records: ${club.data.shown}; name your own with --data <folder>.`);
          const notice = noticeText(club.catalogue);
          if (notice !== undefined) terminal.out(`${para("", notice)}\n`);
          const placeOf = (ref: Ref) => placeText(club, ref);
          if (ways) terminal.out(`${waysText(ways, { catalogue: club.catalogue, build: asked.build, placeOf, terminal })}\n`);
          terminal.out(answerText(answer, { catalogue: club.catalogue, placeOf, terminal, full: options.full, costs }));
          const nameOf = namesOf(club.catalogue, asked.build);
          const title = (text: string) => styled(terminal, "bold", text);
          if (built) for (const line of ["", ...builtText(built, nameOf, title)]) terminal.out(line);
          for (const line of deviceText(device, title)) terminal.out(line);
        }
        if (sheet) terminal.err(sheet);
        if (files) terminal.err(files);
        if (ways?.tooMany || ways?.outcome === "none") return 1;
        // The rules allow it, but nobody can build it as asked.
        if (built?.kind === "refused" || device?.kind === "refused") return 1;
        return answer.verdict === "workable" || answer.verdict === "conditional" ? 0 : 1;
      }),
    );
};

/** Pages are set by the site's room, which the other questions need not wait for. */
async function sheetWriter() {
  return (await import("../printing/sheet.js")).writeSheet;
}

async function filesWriter() {
  return (await import("../printing/sheet.js")).writeFiles;
}
