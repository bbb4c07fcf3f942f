// Foreign entries: what stands in a folder of ours and is not on the list of what we wrote there. They are carried along, never lost.
import {
  copyFileSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  renameSync,
  rmdirSync,
  rmSync,
  symlinkSync,
  unlinkSync,
  utimesSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { FileRefusal, hasCode, noLinks } from "./refusal.js";

/** A path below the folder, with "/". */
type Below = string;

/** Every entry that is no folder, and every empty folder (with "/" at its end), below a folder. */
export function entriesBelow(folder: string): readonly Below[] {
  const device = lstatSync(folder).dev;
  const walk = (below: Below): Below[] => {
    const path = join(folder, below);
    if (lstatSync(path).dev !== device)
      throw new FileRefusal(`Another disk is mounted at ${path}.`, "Take it out of the folder, or name another folder.");
    const entries = readdirSync(path, { withFileTypes: true });
    if (entries.length === 0 && below !== "") return [below];
    return entries.flatMap((entry) => (entry.isDirectory() ? walk(`${below}${entry.name}/`) : [`${below}${entry.name}`]));
  };
  return walk("");
}

/** Gives every foreign entry of one folder a second name in the other. What stands there already stops it. */
export function carryOver(from: string, to: string, foreign: readonly Below[], shown: string): void {
  const inTheWay = foreign.filter((below) => standsInTheWay(to, below));
  if (inTheWay.length > 0) {
    const named = inTheWay.slice(0, 3).map((below) => `${shown}/${below}`);
    const more = inTheWay.length > 3 ? ` and ${inTheWay.length - 3} more` : "";
    throw new FileRefusal(
      `${named.join(", ")}${more} would be written over, and slotwright did not make ${inTheWay.length === 1 ? "it" : "them"}.`,
      "Move what is yours away, or name another folder; nothing was changed.",
    );
  }
  for (const below of foreign) copyEntry(from, to, below);
}

/** On the way to an entry there may be folders alone, and nothing at its end. */
function standsInTheWay(to: string, below: Below): boolean {
  const steps = below.replace(/\/$/, "").split("/");
  const foundAt = (count: number) => lstatSync(join(to, ...steps.slice(0, count)), { throwIfNoEntry: false });
  for (let count = 1; count <= steps.length; count += 1) {
    const found = foundAt(count);
    if (!found) return false;
    if (!found.isDirectory()) return true;
  }
  return !below.endsWith("/");
}

function copyEntry(from: string, to: string, below: Below): void {
  const [source, target] = [join(from, below), join(to, below)];
  makeFolders(from, to, below.endsWith("/") ? below : dirname(below));
  if (below.endsWith("/")) return;
  const info = lstatSync(source);
  if (info.isSymbolicLink()) {
    symlinkSync(readlinkSync(source), target);
    return;
  }
  try {
    linkSync(source, target);
  } catch (problem) {
    // Some disks know no second names.
    if (!info.isFile() || !hasCode(problem, ...noLinks)) throw problem;
    copyFileSync(source, target);
    utimesSync(target, info.atime, info.mtime);
  }
}

/** The folders that lead to an entry, each with the rights it has there. */
function makeFolders(from: string, to: string, below: Below): void {
  if (below === "." || lstatSync(join(to, below), { throwIfNoEntry: false })) return;
  makeFolders(from, to, dirname(below));
  mkdirSync(join(to, below), { mode: lstatSync(join(from, below)).mode & 0o7777 });
}

/** Whose an entry is. */
export type Owns = (below: Below) => boolean;

/**
 * Takes an old folder down: what is ours is removed, and what is foreign too once it stands in the new folder as well;
 * what came or changed since it was carried over is moved there. The list goes last: until then another run can go on
 * with it. Gives what had to be left standing.
 */
export function takeDown(old: string, current: string, list: string | undefined, isOurs: Owns, isCurrent: Owns): readonly Below[] {
  const left: Below[] = [];
  for (const below of entriesBelow(old)) {
    const path = join(old, below);
    if (below === list) continue;
    if (below.endsWith("/")) rmdirSync(path);
    else if (isOurs(below) || isSame(path, join(current, below))) unlinkSync(path);
    else if (isCurrent(below) || !moveOver(old, current, below)) left.push(below);
  }
  if (left.length === 0 && list !== undefined) rmSync(join(old, list), { force: true });
  removeEmptyFolders(old);
  return left;
}

function moveOver(old: string, current: string, below: Below): boolean {
  const target = join(current, below);
  try {
    makeFolders(old, current, dirname(below));
    if (lstatSync(target, { throwIfNoEntry: false })?.isDirectory()) return false;
    renameSync(join(old, below), target);
    return true;
  } catch (problem) {
    if (hasCode(problem, "ENOTDIR", "EEXIST", "EISDIR")) return false;
    throw problem;
  }
}

function isSame(a: string, b: string): boolean {
  const [one, other] = [lstatSync(a), lstatSync(b, { throwIfNoEntry: false })];
  if (!other) return false;
  if (one.ino === other.ino && one.dev === other.dev) return true;
  if (one.isSymbolicLink()) return other.isSymbolicLink() && readlinkSync(a) === readlinkSync(b);
  return one.isFile() && other.isFile() && one.size === other.size && readFileSync(a).equals(readFileSync(b));
}

function removeEmptyFolders(folder: string): void {
  for (const entry of readdirSync(folder, { withFileTypes: true })) if (entry.isDirectory()) removeEmptyFolders(join(folder, entry.name));
  if (readdirSync(folder).length === 0) rmdirSync(folder);
}
