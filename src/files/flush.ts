// Flushing: what was written stands on the disk, not only in the system's memory, before a rename makes it count.
import { closeSync, fsyncSync, openSync, readdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { hasCode } from "./refusal.js";

/** Systems and disks that cannot flush a folder say so with one of these. */
const cannot = ["EISDIR", "EPERM", "EACCES", "EINVAL", "ENOTSUP", "ENOSYS", "EBADF"];

/** Windows flushes only what is open for writing. */
const mode = process.platform === "win32" ? "r+" : "r";

export function flushFile(path: string): void {
  const file = openSync(path, mode);
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** Flushes the names in a folder: after a rename, the new name stands. */
export function flushFolder(path: string): void {
  try {
    flushFile(path);
  } catch (problem) {
    if (!hasCode(problem, ...cannot)) throw problem;
  }
}

export function flushParent(path: string): void {
  flushFolder(dirname(path));
}

/** Every file below a folder, then every folder; a file that may not be opened was not written by us. */
export function flushTree(folder: string): void {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) flushTree(path);
    else if (entry.isFile()) flushIfAllowed(path);
  }
  flushFolder(folder);
}

function flushIfAllowed(path: string): void {
  try {
    flushFile(path);
  } catch (problem) {
    if (!hasCode(problem, "EACCES", "EPERM")) throw problem;
  }
}
