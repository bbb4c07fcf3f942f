// slotwright burn: says what an owner's dumps are, lays out the memory device of a build, writes and verifies it.
// What a dump is and where a bank lies is decided in wiring; here files are opened, and the set of them is written as a whole.

import { existsSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { basename, join, resolve } from "node:path";
import { checkFolder, type FolderJob, replaceFolder } from "../../files/index.js";
import {
  type BurnDevice,
  type FileFormat,
  fileEnding,
  type Identification,
  identifyTogether,
  labelText,
  layOut,
  type NamedBytes,
  readMemoryFile,
  verify,
  writeMemoryFile,
} from "../../images/index.js";
import { itemAt } from "../../records/index.js";
import { type GlobalOptions, gathered, type Register } from "../command.js";
import { type BurnReport, type ReadBack, tellBurn } from "../printing/print-burn.js";
import type { Terminal } from "../printing/terminal.js";
import { fromFile } from "../reading/build-question.js";
import { type BurnRecipe, burnRecipe } from "../reading/burn-recipe.js";
import { tryCardRom } from "../reading/card-rom.js";
import { openClub, today } from "../reading/club.js";
import { shown } from "../reading/folders.js";
import { takeOnWord } from "../reading/on-word.js";
import { type EvenSo, evenSoOption, isSound } from "../reading/soundness.js";
import { type ExitCode, UsageError } from "../usage-error.js";

interface BurnOptions extends GlobalOptions, EvenSo {
  readonly dump?: readonly string[];
  readonly as?: readonly string[];
  readonly evenIfDifferent?: readonly string[];
  readonly cardRom?: readonly string[];
  readonly out?: string;
  readonly format: string;
  readonly fill: string;
  readonly highByteFirst?: boolean;
  readonly verify?: readonly string[];
  readonly combination?: string;
  readonly replace?: boolean;
}

const formats: readonly FileFormat[] = ["bin", "hex", "srec"];

export const registerBurn: Register = (program, { terminal, action }) => {
  program
    .command("burn")
    .argument("[build.yaml]", "a build file, or the id of one of the club's builds; left out: only say what the dumps are")
    .option(...evenSoOption)
    .option("--dump <file>", "a dump of a firmware device: binary, Intel HEX or S-records; may be repeated", gathered)
    .option("--as <version=file>", "take a file for a version on your word, where no checksum of it is recorded; may be repeated", gathered)
    .option(
      "--even-if-different <version>",
      "take the file named with --as for this version although it has not the recorded checksum; may be repeated",
      gathered,
    )
    .option("--card-rom <card=file>", "hold a dump of a card's own ROM against the card's record; may be repeated", gathered)
    .option("--out <folder>", "write one file a device, and its label, into this folder")
    .option("--format <format>", `format of the files written: ${formats.join(", ")}`, "bin")
    .option("--fill <byte>", "value of bytes no image fills, in hex", "FF")
    .option("--high-byte-first", "exchange the bytes of a 16-bit device, for programmers that want it so")
    .option("--verify <file>", "a file read back from a burned device, in the order of the sockets; may be repeated", gathered)
    .option("--combination <n>", "the combination to burn for, as slotwright plan numbers them (default: the one it says to build)")
    .option("--replace", "write over files that slotwright burn wrote, or into a folder that holds other files; those stay")
    .description("make and verify the burn image of a build from your own dumps; no firmware comes with this program")
    .addHelpText("after", "\nExit codes: 0 all known, written and verified, 1 a dump is not known or something differs, 2 wrong use.")
    .action(action<BurnOptions>(([name], options) => burn(name, options, terminal)));
};

export async function burn(name: string | undefined, options: BurnOptions, terminal: Terminal): Promise<ExitCode> {
  const format = formats.find((f) => f === options.format);
  if (!format) throw new UsageError(`--format ${options.format} is not a format.`, `Say one of: ${formats.join(", ")}.`);
  if (!/^[0-9A-Fa-f]{2}$/.test(options.fill))
    throw new UsageError(`--fill ${options.fill} is not one byte.`, "Say two hex digits, as in --fill FF.");
  if (name === undefined && (options.out ?? options.verify ?? options.as ?? options.evenIfDifferent) !== undefined)
    throw new UsageError(
      "Without a build there is nothing to write or verify.",
      "Name the build: slotwright burn <build.yaml> --dump <file> --out <folder>",
    );
  const device = (options.dump ?? options.as) !== undefined;
  if (!device && (options.cardRom === undefined || (options.out ?? options.verify) !== undefined))
    throw new UsageError("No dump was named.", "Name your own dumps: --dump <file>, once for each file.");

  const folder = options.out === undefined ? undefined : burnFolder(options.out, options, terminal);
  if (folder) checkFolder(folder);
  const club = openClub(options.data, terminal);
  if (!isSound(club, options, terminal)) return 1;
  const recipe = name === undefined ? undefined : burnRecipe(club, fromFile(name, club, terminal), options.combination);
  const problems: string[] = [];
  const open = (file: string) => openDump(file, terminal, problems);
  const cardRoms = (options.cardRom ?? []).flatMap((word) => tryCardRom(word, club.catalogue.cards, open));
  const dumps = (options.dump ?? []).flatMap(open);
  const identified = await identifyTogether(dumps, club.catalogue.firmware.values());
  const none: BurnReport = {
    identified,
    problems,
    pinWork: [],
    unchecked: [],
    different: [],
    devices: [],
    wrote: [],
    verified: [],
    cardRoms,
  };
  // Asked about cards alone, there is no device to lay out.
  if (recipe === undefined || !device) return tellBurn(none, options, terminal);

  const images = imagesFor(recipe, identified);
  const word = await takeOnWord(options, recipe, images, club, open);
  for (const warning of word.warnings) terminal.err(warning);
  if (word.refused.length > 0) {
    problems.push(...word.refused);
    return tellBurn(none, options, terminal);
  }
  if (options.highByteFirst && recipe.plan.device.width !== 16)
    throw new UsageError(
      `The ${recipe.plan.device.family} is read ${recipe.plan.device.width} bits at a time; it has no high byte to come first.`,
      "Leave --high-byte-first out.",
    );
  const layout = layOut(recipe.plan, images, { fill: Number.parseInt(options.fill, 16), highByteFirst: options.highByteFirst });
  if (layout.kind === "refused") {
    problems.push(...layout.problems.map((p) => p.says));
    return tellBurn(none, options, terminal);
  }
  const { devices } = layout;
  const stands = { device: recipe.device, pinWork: recipe.pinWork ?? [], unchecked: [...word.unchecked.keys()], different: word.different };
  const compared = compareAll(options.verify ?? [], devices, terminal, problems);
  const written = folder === undefined ? [] : await writeAll(folder, devices, recipe, word.unchecked, format, options, terminal);
  const again = written.flatMap((w) => (w.device ? [readBack(w.path, w.device, devices, terminal)] : []));
  const wrote = written.map((w) => shown(w.path, terminal.folder));
  return tellBurn({ ...none, ...stands, devices, wrote, verified: [...compared, ...again] }, options, terminal);
}

function bytesOf(file: string, terminal: Terminal): Uint8Array {
  const path = resolve(terminal.folder, file);
  if (!existsSync(path)) throw new UsageError(`There is no file ${file}.`, "Name a file that is there.");
  if (statSync(path).isDirectory()) throw new UsageError(`${file} is a folder.`, "Name the file in it.");
  return new Uint8Array(readFileSync(path));
}

/** Problems of a file in records name file and line, as everywhere. */
function openDump(file: string, terminal: Terminal, problems: string[]): NamedBytes[] {
  const read = readMemoryFile(bytesOf(file, terminal));
  if (read.kind === "read") {
    if (read.gaps.length > 0)
      terminal.err(`${file}: ${read.gaps.length} runs are not given, from ${itemAt(read.gaps, 0).from} on; they are taken as FF.`);
    return [{ name: file, bytes: read.bytes }];
  }
  for (const p of read.problems) problems.push(`${file}${p.line === 0 ? "" : `:${p.line}`}: ${p.says} Expected: ${p.expected}.`);
  return [];
}

/** The first proven image of each version; of several dumps of one version all proven ones are the same bytes. */
function imagesFor(recipe: BurnRecipe, identified: readonly Identification[]): Map<string, Uint8Array> {
  const images = new Map<string, Uint8Array>();
  for (const { matches } of identified)
    for (const match of matches)
      if (match.family === recipe.family.id && match.image && !images.has(match.version)) images.set(match.version, match.image);
  return images;
}

/** The folder of burn files: what was burned before for other sockets stays in it. */
function burnFolder(folder: string, { replace }: BurnOptions, terminal: Terminal): FolderJob {
  const maker = "slotwright burn";
  return {
    folder: resolve(terminal.folder, folder),
    shown: folder,
    list: ".slotwright-burn",
    maker,
    replace: replace === true,
    keep: true,
  };
}

async function writeAll(
  folder: FolderJob,
  devices: readonly BurnDevice[],
  recipe: BurnRecipe,
  unchecked: ReadonlyMap<string, string>,
  format: FileFormat,
  options: BurnOptions,
  terminal: Terminal,
): Promise<{ readonly path: string; readonly device?: BurnDevice | undefined }[]> {
  const family = recipe.plan.device.family;
  const facts = { family, firmware: recipe.family.name, date: today(), positions: recipe.positions, unchecked };
  const files = devices.flatMap((device) => {
    const stem = `${device.socket}-${family}`.replace(/[^A-Za-z0-9._-]/g, "_");
    return [
      { name: `${stem}.${fileEnding[format]}`, content: writeMemoryFile(device.bytes, format, device.socket), device },
      { name: `${stem}.label.txt`, content: labelText(device, facts), device: undefined },
    ];
  });
  const place = (name: string) => join(folder.folder, name);
  const there = files.map(({ name }) => place(name)).filter((path) => existsSync(path));
  if (there.length > 0 && !options.replace)
    throw new UsageError(
      `${there.map((path) => shown(path, terminal.folder)).join(", ")} ${there.length === 1 ? "is" : "are"} there already; nothing was written.`,
      "Say --replace to write over, or name another folder.",
    );
  // All or nothing: an image beside the label or the other half of another is worse than none.
  await replaceFolder(folder, (made) => {
    for (const { name, content } of files) writeFileSync(join(made, name), content);
  });
  return files.map(({ name, device }) => ({ path: place(name), device }));
}

function readBack(path: string, device: BurnDevice, devices: readonly BurnDevice[], terminal: Terminal): ReadBack {
  const file = shown(path, terminal.folder);
  const read = readMemoryFile(bytesOf(path, terminal));
  const bytes = read.kind === "read" ? read.bytes : new Uint8Array();
  return { ...verify(bytes, device, devices), file };
}

function compareAll(files: readonly string[], devices: readonly BurnDevice[], terminal: Terminal, problems: string[]): ReadBack[] {
  if (files.length > devices.length)
    throw new UsageError(
      `${files.length} files are to be verified and the build has ${devices.length} ${devices.length === 1 ? "device" : "devices"}.`,
      `Name one file a socket, in this order: ${devices.map((d) => d.socket).join(", ")}.`,
    );
  return files.flatMap((file, i) =>
    openDump(file, terminal, problems).map((dump) => ({ ...verify(dump.bytes, itemAt(devices, i), devices), file: basename(file) })),
  );
}
