// Writing one file: beside its place first, flushed, then given its name in one step, so that no reader ever sees half of it.
// Never over something unasked: not even over what another program put there a moment ago.
import {
  chmodSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from "node:fs";
import { hostname } from "node:os";
import { basename, dirname, join } from "node:path";
import { flushFile, flushParent } from "./flush.js";
import { FileRefusal, hasCode, leaveAsItWas, noLinks } from "./refusal.js";

/** Refuses what `writeFile` would refuse, so that it can be said before long work begins. */
export function checkFile(path: string, replace: boolean, shown = path): void {
  const found = lstatSync(path, { throwIfNoEntry: false });
  if (!found) return;
  const info = found.isSymbolicLink() ? statSync(path, { throwIfNoEntry: false }) : found;
  if (!info) throw new FileRefusal(`${shown} is a link that leads nowhere.`, "Mend or remove the link, or name another file.");
  if (info.isDirectory()) throw new FileRefusal(`${shown} is a folder.`, "Name a file.");
  if (!info.isFile()) throw new FileRefusal(`${shown} is no plain file.`, "Name a file on a disk.");
  if (!replace) throw alreadyThere(shown);
}

/** Writes the file; through a link it writes what the link leads to. */
export function writeFile(path: string, content: string | Uint8Array, replace: boolean, shown = path): void {
  checkFile(path, replace, shown);
  leaveAsItWas(shown, () => writeBeside(path, content, shown));
}

function writeBeside(path: string, content: string | Uint8Array, shown: string): void {
  const old = statSync(path, { throwIfNoEntry: false });
  const place = old ? realpathSync(path) : path;
  mkdirSync(dirname(place), { recursive: true });
  sweepParts(place);
  const part = join(dirname(place), partName(place, process.pid));
  try {
    writeFileSync(part, content, { flag: "wx" });
    if (old) chmodSync(part, old.mode & 0o7777);
    flushFile(part);
    giveName(part, place, old, shown);
    flushParent(place);
  } finally {
    rmSync(part, { force: true });
  }
}

function giveName(part: string, place: string, old: Stats | undefined, shown: string): void {
  if (old) {
    renameSync(part, place);
    return;
  }
  try {
    linkSync(part, place);
  } catch (problem) {
    if (hasCode(problem, "EEXIST")) throw alreadyThere(shown);
    // Some disks know no links.
    if (!hasCode(problem, ...noLinks)) throw problem;
    if (lstatSync(place, { throwIfNoEntry: false })) throw alreadyThere(shown);
    renameSync(part, place);
  }
}

function alreadyThere(shown: string): FileRefusal {
  return new FileRefusal(`${shown} is there already.`, "Say --replace to write over it, or name another file.");
}

const partEnding = ".slotwright-part";

function partName(place: string, pid: number): string {
  return `${partBeginning(place)}${pid}${partEnding}`;
}

function partBeginning(place: string): string {
  return `.${basename(place)}.${hostname()}.`;
}

/** Parts of runs on this machine that were cut off; the name says whose they are. */
function sweepParts(place: string): void {
  const beginning = partBeginning(place);
  for (const name of readdirSync(dirname(place))) {
    if (!name.startsWith(beginning) || !name.endsWith(partEnding)) continue;
    const pid = name.slice(beginning.length, -partEnding.length);
    if (/^\d+$/.test(pid) && (Number(pid) === process.pid || !isRunning(Number(pid)))) rmSync(join(dirname(place), name), { force: true });
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (problem) {
    return !hasCode(problem, "ESRCH");
  }
}
