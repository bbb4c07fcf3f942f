// slotwright burn: says what an owner's dumps are, lays out the memory device of a build, writes and verifies it.
// What a dump is and where a bank lies is decided in wiring; here files are opened, written beside their place and renamed.

import { existsSync, readFileSync, statSync } from "node:fs";
import { basename, join, resolve } from "node:path";
import { writeFile } from "../../files/index.js";
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
  type Verification,
  verify,
  writeMemoryFile,
} from "../../wiring/index.js";
import { type Everywhere, gathered, json, type Register } from "../command.js";
import type { Terminal } from "../printing/terminal.js";
import { fromFile } from "../reading/build-question.js";
import { type BurnRecipe, burnRecipe } from "../reading/burn-recipe.js";
import { type TriedRom, tryCardRom } from "../reading/card-rom.js";
import { openClub, today } from "../reading/club.js";
import { shown } from "../reading/folders.js";
import { type EvenSo, evenSoOption, isSound } from "../reading/soundness.js";
import { type ExitCode, WrongUse } from "../wrong-use.js";

interface BurnOptions extends Everywhere, EvenSo {
  readonly dump?: readonly string[];
  readonly as?: readonly string[];
  readonly cardRom?: readonly string[];
  readonly out?: string;
  readonly format: string;
  readonly fill: string;
  readonly highByteFirst?: boolean;
  readonly verify?: readonly string[];
  readonly combination: string;
  readonly replace?: boolean;
}

const formats: readonly FileFormat[] = ["bin", "hex", "srec"];

export const registerBurn: Register = (program, { terminal, action }) => {
  program
    .command("burn")
    .argument("[build.yaml]", "a build file, or the id of one of the club's builds; left out: only say what the dumps are")
    .option(...evenSoOption)
    .option("--dump <file>", "a dump of a firmware device: binary, Intel HEX or S-records; may be repeated", gathered)
    .option("--as <version=file>", "take a file for a version on your word, unchecked; may be repeated", gathered)
    .option("--card-rom <card=file>", "hold a dump of a card's own ROM against the card's record; may be repeated", gathered)
    .option("--out <folder>", "write one file a device, and its label, into this folder")
    .option("--format <format>", `format of the files written: ${formats.join(", ")}`, "bin")
    .option("--fill <byte>", "value of bytes no image fills, in hex", "FF")
    .option("--high-byte-first", "exchange the bytes of a 16-bit device, for programmers that want it so")
    .option("--verify <file>", "a file read back from a burned device, in the order of the sockets; may be repeated", gathered)
    .option("--combination <n>", "the combination to burn for, as slotwright plan numbers them", "1")
    .option("--replace", "write over files that are there")
    .description("make and verify the burn image of a build from your own dumps; no firmware comes with this program")
    .addHelpText("after", "\nExit codes: 0 all known, written and verified, 1 a dump is not known or something differs, 2 wrong use.")
    .action(action<BurnOptions>(([name], options) => burn(name, options, terminal)));
};

interface Told {
  readonly identified: readonly Identification[];
  readonly problems: readonly string[];
  readonly devices: readonly BurnDevice[];
  readonly wrote: readonly string[];
  readonly verified: readonly (Verification & { readonly file: string })[];
  readonly cardRoms: readonly TriedRom[];
}

export async function burn(name: string | undefined, options: BurnOptions, terminal: Terminal): Promise<ExitCode> {
  const format = formats.find((f) => f === options.format);
  if (!format) throw new WrongUse(`--format ${options.format} is not a format.`, `Say one of: ${formats.join(", ")}.`);
  if (!/^[0-9A-Fa-f]{2}$/.test(options.fill))
    throw new WrongUse(`--fill ${options.fill} is not one byte.`, "Say two hex digits, as in --fill FF.");
  if (name === undefined && (options.out ?? options.verify ?? options.as) !== undefined)
    throw new WrongUse(
      "Without a build there is nothing to write or verify.",
      "Name the build: slotwright burn <build.yaml> --dump <file> --out <folder>",
    );
  const device = (options.dump ?? options.as) !== undefined;
  if (!device && (options.cardRom === undefined || (options.out ?? options.verify) !== undefined))
    throw new WrongUse("No dump was named.", "Name your own dumps: --dump <file>, once for each file.");

  const club = openClub(options.data, terminal);
  if (!isSound(club, options, terminal)) return 1;
  const recipe = name === undefined ? undefined : burnRecipe(club, fromFile(name, club, terminal), options.combination);
  const problems: string[] = [];
  const open = (file: string) => openDump(file, terminal, problems);
  const cardRoms = (options.cardRom ?? []).flatMap((word) => tryCardRom(word, club.catalogue.cards, open));
  const dumps = (options.dump ?? []).flatMap(open);
  const identified = await identifyTogether(dumps, club.catalogue.firmware.values());
  const none = { identified, problems, devices: [], wrote: [], verified: [], cardRoms };
  // Asked about cards alone, there is no device to lay out.
  if (recipe === undefined || !device) return tell(none, options, terminal);

  const images = imagesFor(recipe, identified);
  for (const word of options.as ?? []) takeOnWord(word, recipe, images, terminal, problems);
  const layout = layOut(recipe.plan, images, { fill: Number.parseInt(options.fill, 16), highByteFirst: options.highByteFirst });
  if (layout.kind === "refused") {
    problems.push(...layout.problems.map((p) => p.says));
    return tell(none, options, terminal);
  }
  const { devices } = layout;
  const compared = compareAll(options.verify ?? [], devices, terminal, problems);
  const written = options.out === undefined ? [] : writeAll(options.out, devices, recipe, format, options, terminal);
  const again = written.filter((w) => w.device).map((w) => readBack(w.path, w.device!, devices, terminal));
  const wrote = written.map((w) => shown(w.path, terminal.folder));
  return tell({ identified, problems, devices, wrote, verified: [...compared, ...again], cardRoms }, options, terminal);
}

function bytesOf(file: string, terminal: Terminal): Uint8Array {
  const path = resolve(terminal.folder, file);
  if (!existsSync(path)) throw new WrongUse(`There is no file ${file}.`, "Name a file that is there.");
  if (statSync(path).isDirectory()) throw new WrongUse(`${file} is a folder.`, "Name the file in it.");
  return new Uint8Array(readFileSync(path));
}

/** Problems of a file in records name file and line, as everywhere. */
function openDump(file: string, terminal: Terminal, problems: string[]): NamedBytes[] {
  const read = readMemoryFile(bytesOf(file, terminal));
  if (read.kind === "read") {
    if (read.gaps.length > 0)
      terminal.err(`${file}: ${read.gaps.length} runs are not given, from ${read.gaps[0]!.from} on; they are taken as FF.`);
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

function takeOnWord(word: string, recipe: BurnRecipe, images: Map<string, Uint8Array>, terminal: Terminal, problems: string[]): void {
  const at = word.indexOf("=");
  const [version, file] = [word.slice(0, at), word.slice(at + 1)];
  if (at < 1 || file === "") throw new WrongUse(`--as ${word} cannot be read.`, "Write --as <version>=<file>.");
  if (!recipe.family.versions.some((v) => v.id === version))
    throw new WrongUse(
      `${recipe.family.name} has no version ${version}.`,
      `It has: ${recipe.family.versions.map((v) => v.id).join(", ")}.`,
    );
  for (const dump of openDump(file, terminal, problems)) {
    images.set(version, dump.bytes);
    terminal.err(`${file} is taken for ${version} on your word; nothing was checked.`);
  }
}

function writeAll(
  folder: string,
  devices: readonly BurnDevice[],
  recipe: BurnRecipe,
  format: FileFormat,
  options: BurnOptions,
  terminal: Terminal,
): { readonly path: string; readonly device?: BurnDevice }[] {
  const family = recipe.plan.device.family;
  const facts = { family, firmware: recipe.family.name, date: today(), positions: recipe.positions };
  const files = devices.flatMap((device) => {
    const stem = join(resolve(terminal.folder, folder), `${device.socket}-${family}`.replace(/[^A-Za-z0-9._-]/g, "_"));
    return [
      { path: `${stem}.${fileEnding[format]}`, content: writeMemoryFile(device.bytes, format, device.socket), device },
      { path: `${stem}.label.txt`, content: labelText(device, facts), device: undefined },
    ];
  });
  // All or nothing: looked at before the first is written.
  const there = files.filter(({ path }) => existsSync(path));
  if (there.length > 0 && !options.replace)
    throw new WrongUse(
      `${there.map(({ path }) => shown(path, terminal.folder)).join(", ")} ${there.length === 1 ? "is" : "are"} there already; nothing was written.`,
      "Say --replace to write over, or name another folder.",
    );
  for (const { path, content } of files) writeFile(path, content, options.replace === true);
  return files;
}

function readBack(path: string, device: BurnDevice, devices: readonly BurnDevice[], terminal: Terminal): Told["verified"][number] {
  const file = shown(path, terminal.folder);
  const read = readMemoryFile(bytesOf(path, terminal));
  const bytes = read.kind === "read" ? read.bytes : new Uint8Array();
  return { ...verify(bytes, device, devices), file };
}

function compareAll(
  files: readonly string[],
  devices: readonly BurnDevice[],
  terminal: Terminal,
  problems: string[],
): Told["verified"][number][] {
  if (files.length > devices.length)
    throw new WrongUse(
      `${files.length} files are to be verified and the build has ${devices.length} ${devices.length === 1 ? "device" : "devices"}.`,
      `Name one file a socket, in this order: ${devices.map((d) => d.socket).join(", ")}.`,
    );
  return files.flatMap((file, i) =>
    openDump(file, terminal, problems).map((dump) => ({ ...verify(dump.bytes, devices[i]!, devices), file: basename(file) })),
  );
}

function tell(told: Told, options: BurnOptions, terminal: Terminal): ExitCode {
  const unknown = told.identified.filter((one) => one.matches.length === 0);
  const differ = told.verified.filter((one) => !one.same);
  const bad = told.cardRoms.filter((one) => !one.holds);
  const holds = bad.length === 0 && unknown.length === 0 && told.problems.length === 0 && differ.length === 0;
  if (options.json) {
    terminal.out(
      json({
        identified: told.identified.map(({ matches, ...one }) => ({
          ...one,
          matches: matches.map(({ image, ...m }) => ({ ...m, bytes: image?.length })),
        })),
        problems: told.problems,
        devices: told.devices.map(({ bytes, ...device }) => ({ ...device, size: bytes.length })),
        wrote: told.wrote,
        verified: told.verified,
        cardRoms: told.cardRoms,
      }),
    );
    return holds ? 0 : 1;
  }
  for (const one of told.identified) terminal.out(`${one.name}: ${one.says}`);
  for (const one of told.cardRoms) terminal.out(`${one.file}: ${one.says}`);
  for (const problem of told.problems) terminal.out(problem);
  for (const { socket, lane, crc32, bytes, regions } of told.devices) {
    terminal.out(`Socket ${socket}${lane === "whole" ? "" : ` (${lane} bytes)`}: ${bytes.length} bytes, CRC-32 ${crc32}.`);
    for (const r of regions)
      terminal.out(
        `  bank ${r.bank} at 0x${r.offset.toString(16).toUpperCase().padStart(5, "0")}: ${r.version}${r.repeats > 1 ? `, ${r.repeats} times over` : ""}`,
      );
  }
  for (const file of told.wrote) terminal.out(`Wrote ${file}.`);
  for (const one of told.verified) terminal.out(`${one.file}: ${one.says}`);
  if (told.problems.length > 0 && told.devices.length === 0) terminal.err("Nothing was written.");
  return holds ? 0 : 1;
}
