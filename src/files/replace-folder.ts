// Replacing a folder: the new one is made beside it and takes its place in one step, with the list of what was written in it.
// Only what is on the old list goes; everything else is carried along. A run that was cut off is put right by the next, before it begins.
import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  realpathSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join, relative, resolve, sep } from "node:path";
import { exchange, identityOf } from "./exchange.js";
import { flushFile, flushFolder, flushParent, flushTree } from "./flush.js";
import { carryOver, entriesBelow, type Owns, takeDown } from "./foreign.js";
import { takeLock } from "./lock.js";
import { FileRefusal, leaveAsItWas } from "./refusal.js";

export interface FolderJob {
  /** The folder to make or replace; a link to a folder stays, and the folder it leads to is replaced. */
  readonly folder: string;
  /** As the person named it. */
  readonly shown: string;
  /** Name of the file in it that lists what was written; left out where the folder is the person's own from then on. */
  readonly list?: string;
  /** Who writes: "slotwright site". */
  readonly maker: string;
  /** Put it into a folder that holds other things as well. */
  readonly replace: boolean;
  /** What was written before and is not written again stays, and stays on the list. */
  readonly keep?: boolean;
}

/** Refuses what `replaceFolder` would refuse, so that it can be said before long work begins. */
export function checkFolder(job: FolderJob): void {
  const place = placeOf(job);
  if (!existsSync(place)) return;
  if (!statSync(place).isDirectory()) throw new FileRefusal(`${job.shown} is a file.`, "Name a folder.");
  if (standsIn(place))
    throw new FileRefusal(
      `${job.shown} is the folder you stand in, or one around it; it cannot be replaced in one step.`,
      "Name a folder inside it, or run the command from elsewhere.",
    );
  if (statSync(place).dev !== statSync(dirname(place)).dev)
    throw new FileRefusal(`A disk is mounted at ${job.shown}; it cannot be replaced in one step.`, "Name a folder inside it.");
  if (!job.replace && !listedIn(place, job) && readdirSync(place).length > 0)
    throw new FileRefusal(
      `${job.shown} holds files that ${job.maker} did not write.`,
      "Name another folder, or say --replace to write into this one; what is there stays.",
    );
}

/** Whether the process runs in this folder, or in one below it. */
export function standsIn(folder: string): boolean {
  const below = relative(realpathSync(folder), realpathSync(process.cwd()));
  return below === "" || !(below === ".." || below.startsWith(`..${sep}`) || resolve(below) === below);
}

/** Makes the folder anew. `make` fills an empty folder; nothing is seen of it at the place until it is whole. */
export async function replaceFolder<T>(job: FolderJob, make: (folder: string) => Promise<T> | T): Promise<T> {
  const place = placeOf(job);
  const lock = leaveAsItWas(job.shown, () => {
    mkdirSync(dirname(place), { recursive: true });
    return takeLock(beside(place, "lock"), job.maker, job.shown);
  });
  try {
    const work = beside(place, "work");
    putRight(place, work, job);
    checkFolder(job);
    try {
      const made = join(work, "new");
      leaveAsItWas(job.shown, () => mkdirSync(made, { recursive: true }));
      const result = await make(made);
      leaveAsItWas(job.shown, () => finish(made, place, work, job));
      return result;
    } finally {
      putRight(place, work, job);
    }
  } finally {
    lock.release();
  }
}

/** Where the folder really lies: links followed. */
function placeOf({ folder, shown }: FolderJob): string {
  if (!lstatSync(folder, { throwIfNoEntry: false })?.isSymbolicLink()) return folder;
  if (existsSync(folder)) return realpathSync(folder);
  throw new FileRefusal(
    `${shown} is a link that leads nowhere (${readlinkSync(folder)}).`,
    "Mend or remove the link, or name another folder.",
  );
}

function beside(place: string, ending: string): string {
  return join(dirname(place), `.${basename(place)}.slotwright-${ending}`);
}

/**
 * After a run, whole or cut off: the place holds the old folder or the new one, and nothing is left beside it. The work
 * folder holds `new` while it is made, `old` while it makes way, and `swap`, written just before the swap: the identity of
 * what is to stand at the place.
 */
function putRight(place: string, work: string, job: FolderJob): void {
  if (!existsSync(work)) return;
  const [made, old, swap] = [join(work, "new"), join(work, "old"), join(work, "swap")];
  if (!existsSync(place) && existsSync(old)) {
    renameSync(old, place);
    flushParent(place);
  }
  const swapped = existsSync(swap) && readFileSync(swap, "utf8") === identityOf(place);
  if (!swapped) {
    if (existsSync(old))
      throw new FileRefusal(
        `${job.shown} as it was stands in ${old}: another run was cut off.`,
        `Move ${job.shown} away; the next run puts the old one back.`,
      );
    // What is in it is ours alone, or has its first name at the place.
    rmSync(made, { recursive: true, force: true });
  }
  // The old folder is in one of the two, by how the swap was done.
  const current = ownership(place, job);
  const left = [made, old]
    .filter((path) => existsSync(path))
    .flatMap((path) => takeDown(path, place, job.list, ownership(path, job, current), current));
  if (left.length > 0)
    throw new FileRefusal(
      `${job.shown} is made, but these files of yours could not be put into it: ${left.join(", ")}.`,
      `They stand in ${work}; move them where they belong.`,
    );
  rmSync(swap, { force: true });
  rmdirSync(work);
}

function finish(made: string, place: string, work: string, job: FolderJob): void {
  const files = entriesBelow(made).filter((below) => !below.endsWith("/"));
  const before = existsSync(place) ? entriesBelow(place) : [];
  const anew = new Set(files);
  const isOurs = ownership(place, job, (below) => anew.has(below));
  const goes = (below: string) => isOurs(below) && (!job.keep || below === job.list || anew.has(below));
  const stays = before.filter((below) => !goes(below));
  if (job.list !== undefined) writeFileSync(join(made, job.list), listText(job, [...files, ...stays.filter(isOurs)]));
  if (existsSync(place)) {
    carryOver(place, made, stays, job.shown);
    chmodSync(made, statSync(place).mode & 0o7777);
  }
  flushTree(made);
  const swap = join(work, "swap");
  writeFileSync(swap, identityOf(made) ?? "");
  flushFile(swap);
  flushFolder(work);
  swapIn(made, place, join(work, "old"));
  flushParent(place);
}

function swapIn(made: string, place: string, old: string): void {
  if (existsSync(place)) {
    if (exchange(made, place)) return;
    renameSync(place, old);
  }
  renameSync(made, place);
}

interface List {
  readonly files: readonly string[];
}

function listText(job: FolderJob, files: readonly string[]): string {
  const list = {
    note: `Written by ${job.maker}. Only the files named here are replaced or removed when it is run again; everything else stays.`,
    files: [...files].sort(),
  };
  return `${JSON.stringify(list, null, 1)}\n`;
}

/** Which entries of a folder are ours. Where it was written before there were lists, what is written now counts as ours. */
function ownership(folder: string, job: FolderJob, now: Owns = () => false): Owns {
  const text = listedIn(folder, job);
  if (text === undefined) return () => false;
  const list = readList(text);
  const files = new Set(list?.files);
  return (below) => below === job.list || (list ? files.has(below) : now(below));
}

/** The text of the list in a folder. */
function listedIn(folder: string, { list }: FolderJob): string | undefined {
  const path = list === undefined ? undefined : join(folder, list);
  return path !== undefined && existsSync(path) ? readFileSync(path, "utf8") : undefined;
}

function readList(text: string): List | undefined {
  try {
    const { files } = JSON.parse(text) as { files?: unknown };
    return Array.isArray(files) && files.every((file) => typeof file === "string") ? { files } : undefined;
  } catch {
    return undefined;
  }
}
