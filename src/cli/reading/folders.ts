// Where things lie: the package itself, a club's data folder, the files in it. Names of record files always use "/".
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, isAbsolute, join, relative, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { kinds } from "../../records/index.js";
import { UsageError } from "../usage-error.js";

/** The folder of this package, whether it runs compiled (dist/src/cli) or from its sources (src/cli). */
export function packageTop(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, "package.json"))) {
    const up = dirname(folder);
    if (up === folder) throw new Error("The package's own folder was not found.");
    folder = up;
  }
  return folder;
}

export interface DataFolder {
  readonly path: string;
  /** As people name it in messages. */
  readonly shown: string;
  /** The demo club that comes with the package, taken because no other was named. */
  readonly demo: boolean;
}

const recordFolders = Object.values(kinds).map((kind) => kind.folder as string);

function holdsRecords(folder: string): boolean {
  return recordFolders.some((name) => isFolder(join(folder, name)));
}

function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
}

/** The folder asked for; else data/ here when it holds records; else the demo club that comes with the package. */
export function findData(asked: string | undefined, from: string): DataFolder {
  if (asked !== undefined) {
    const path = resolve(from, asked);
    if (!existsSync(path))
      throw new UsageError(`There is no folder ${asked}.`, "Name a club's data folder, or make one: slotwright start-club <folder>.");
    if (!isFolder(path))
      throw new UsageError(`${asked} is a file; --data takes a folder.`, `Name the folder that holds ${recordFolders.join("/, ")}/.`);
    if (holdsRecords(path)) return { path, shown: shown(path, from), demo: false };
    if (holdsRecords(join(path, "data"))) return { path: join(path, "data"), shown: shown(join(path, "data"), from), demo: false };
    throw new UsageError(
      `${asked} holds no records.`,
      `A data folder holds one folder a kind: ${recordFolders.join("/, ")}/. Make one: slotwright start-club <folder>.`,
    );
  }
  const here = join(from, "data");
  const own = join(packageTop(), "data");
  if (holdsRecords(here)) return { path: here, shown: "data", demo: resolve(here) === resolve(own) };
  return { path: own, shown: "the demo club's data", demo: true };
}

/** A path as a person here would type it, always with "/". */
export function shown(path: string, from: string): string {
  const short = relative(from, path);
  const name = short === "" ? "." : short.startsWith("..") || isAbsolute(short) ? path : short;
  return name.split(sep).join("/");
}

export interface DataFile {
  /** Below the data folder, with "/": cards/tallow-bus-tracer.yaml */
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** Every YAML file of a data folder, in one fixed order on every system. */
export function readData(folder: string): readonly DataFile[] {
  const files: DataFile[] = [];
  const walk = (path: string, name: string) => {
    for (const entry of readdirSync(path, { withFileTypes: true })) {
      if (entry.name.startsWith(".") || entry.name === "node_modules") continue;
      const below = join(path, entry.name);
      const file = name === "" ? entry.name : `${name}/${entry.name}`;
      const info = entry.isSymbolicLink() ? statSync(below, { throwIfNoEntry: false }) : entry;
      // A link to a folder is not followed: it could lead in circles.
      if (entry.isDirectory()) walk(below, file);
      else if (info?.isFile() && /\.ya?ml$/i.test(entry.name)) files.push({ file, bytes: readWhole(below, file) });
    }
  };
  walk(folder, "");
  return files.sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : 0));
}

function readWhole(path: string, file: string): Uint8Array {
  try {
    return readFileSync(path);
  } catch (problem) {
    const code = (problem as NodeJS.ErrnoException).code ?? "unknown reason";
    throw new UsageError(`${file} cannot be read (${code}).`, "Give yourself the right to read it, or take it out of the data folder.");
  }
}
