// slotwright find: records by name, number, marking or symptom, in the order of the site's search.

import { entriesOfRecords, type RecordEntry } from "../../pages/index.js";
import { kinds } from "../../records/index.js";
import { finder, type Hit } from "../../search/index.js";
import { noticeText } from "../../words/index.js";
import { type GlobalOptions, json, type Register } from "../command.js";
import { para, styled, type Terminal } from "../printing/terminal.js";
import { type Club, fileFromHere, openClub } from "../reading/club.js";
import { type ExitCode, UsageError } from "../usage-error.js";

interface FindOptions extends GlobalOptions {
  readonly most?: string;
}

/** Records told when no other number is asked for. */
const usual = 8;

/** Where fewer hold all that was asked, so many are told together with those that come near. */
const fewNear = 4;

export const registerFind: Register = (program, { terminal, action }) => {
  program
    .command("find")
    .argument("<words...>", "a name, a number or marking, or what is seen: no picture, three beeps")
    .description("find boards, cards, firmware, parts, known problems and tested builds")
    .option("--most <number>", `show at most so many (default: ${usual})`)
    .action(action<FindOptions>((words, options) => find(words.join(" "), options, terminal)));
};

function find(asked: string, options: FindOptions, terminal: Terminal): ExitCode {
  const most = options.most === undefined ? usual : Number(options.most);
  if (!Number.isInteger(most) || most < 1)
    throw new UsageError(`--most ${options.most} is no number of records.`, "Write a whole number from 1.");
  const club = openClub(options.data, terminal);
  const hits = finder(entriesOfRecords(club.catalogue)).find(asked);
  // What only comes near is told as such, and not counted.
  const holding = hits.filter((hit) => hit.how !== "near");
  const near = hits.filter((hit) => hit.how === "near").slice(0, Math.max(0, Math.min(most, fewNear) - holding.length));
  const shown = holding.slice(0, most);
  const data = (found: readonly Hit<RecordEntry>[]) => found.map((hit) => asData(club, hit));
  if (options.json) terminal.out(json({ asked, found: data(shown), near: data(near), more: holding.length - shown.length }));
  else for (const line of lines(club, asked, { shown, near, all: holding.length }, terminal)) terminal.out(line);
  return hits.length > 0 ? 0 : 1;
}

function asData(club: Club, { entry, how, symptom }: Hit<RecordEntry>) {
  return { ...entry.of, name: entry.title, file: fileOf(club, entry), how, ...(symptom ? { symptom } : {}) };
}

function fileOf(club: Club, { of: { kind, id } }: RecordEntry): string {
  const file = club.records.find((r) => r.kind === kind && r.record.id === id)?.file;
  return fileFromHere(file ?? `${kinds[kind].folder}/${id}.yaml`, club.data);
}

interface Finds {
  readonly shown: readonly Hit<RecordEntry>[];
  readonly near: readonly Hit<RecordEntry>[];
  /** How many hold all that was asked. */
  readonly all: number;
}

function* lines(club: Club, asked: string, { shown, near, all }: Finds, terminal: Terminal): Generator<string> {
  const notice = noticeText(club.catalogue);
  if (notice !== undefined) yield `${para("", notice)}\n`;
  if (shown.length === 0 && near.length === 0) {
    yield `Nothing in the records speaks of "${asked}".`;
    yield "Try fewer words, or a name or number as it is printed on the thing.";
    return;
  }
  for (const hit of shown) yield* hitLines(club, hit, terminal);
  if (all > shown.length) yield `\n${all - shown.length} more; --most ${all} shows them.`;
  if (near.length === 0) return;
  yield shown.length > 0 ? "\nThese only come near:" : `Nothing holds all of "${asked}"; these come near:`;
  for (const hit of near) yield* hitLines(club, hit, terminal);
}

function* hitLines(club: Club, { entry, symptom }: Hit<RecordEntry>, terminal: Terminal): Generator<string> {
  yield `${styled(terminal, "bold", entry.title)} (${entry.kind})`;
  const says = symptom ?? entry.answer;
  if (says !== "") yield para("  ", says);
  yield `  ${fileOf(club, entry)}`;
}
