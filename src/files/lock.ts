// A lock: a file that names the one run that may write a place. A lock whose run has ended is taken over; two that find it so cannot both win.
import { linkSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { describeSelf, type Holder, hasEnded, parseHolder } from "./holder.js";
import { FileRefusal, hasCode, noLinks } from "./refusal.js";

export interface Lock {
  release(): void;
}

/** Takes the lock, or throws a refusal that names who holds it. `place` is what the lock is for, as the person named it. */
export function takeLock(path: string, what: string, place: string): Lock {
  const self = describeSelf(what);
  const lock = take(path, self, place);
  sweep(path, self);
  return lock;
}

/**
 * Who finds a lock of an ended run must not simply replace it: another run may have done so a moment ago. The right to
 * replace one certain ended lock is a lock itself, named after it; who has the right looks once more before using it.
 */
function take(path: string, self: Holder, place: string): Lock {
  const release = () => {
    if (readHolder(path)?.nonce === self.nonce) rmSync(path, { force: true });
  };
  for (;;) {
    if (claim(path, self)) return { release };
    const found = readText(path);
    if (found === undefined) continue;
    const holder = parseHolder(found);
    if (holder === undefined)
      throw new FileRefusal(`${path} stands where the lock of ${place} belongs, and is none.`, "Move it away, then run the command again.");
    if (!hasEnded(holder)) throw held(path, holder, place);
    const right = take(`${path}.${holder.nonce}`, self, place);
    try {
      if (readText(path) !== found) continue;
      const own = writeOwn(path, self);
      renameSync(own, path);
      return { release };
    } finally {
      right.release();
    }
  }
}

function held(path: string, { what, pid, host, since }: Holder, place: string): FileRefusal {
  return new FileRefusal(
    `${place} is being written by another run: ${what}, process ${pid} on ${host}, since ${since}.`,
    `Wait until it has ended, then run the command again. If no such run exists, delete ${path}.`,
  );
}

/** True when the lock was free: a link is made only where nothing stands. */
function claim(path: string, self: Holder): boolean {
  const own = writeOwn(path, self);
  try {
    linkSync(own, path);
    return true;
  } catch (problem) {
    if (hasCode(problem, "EEXIST")) return false;
    if (!hasCode(problem, ...noLinks)) throw problem;
    return claimWithoutLinks(path, self);
  } finally {
    rmSync(own, { force: true });
  }
}

function claimWithoutLinks(path: string, self: Holder): boolean {
  try {
    writeFileSync(path, JSON.stringify(self), { flag: "wx" });
    return true;
  } catch (problem) {
    if (hasCode(problem, "EEXIST")) return false;
    throw problem;
  }
}

function writeOwn(path: string, self: Holder): string {
  const own = `${path}.${self.nonce}.own`;
  writeFileSync(own, JSON.stringify(self));
  return own;
}

/** Removes what ended runs left of their attempts to take this lock. */
function sweep(path: string, self: Holder): void {
  const folder = dirname(path);
  for (const name of readdirSync(folder)) {
    if (!name.startsWith(`${basename(path)}.`)) continue;
    const holder = readHolder(join(folder, name));
    if (holder && (holder.nonce === self.nonce || hasEnded(holder))) rmSync(join(folder, name), { force: true });
  }
}

function readHolder(path: string): Holder | undefined {
  const text = readText(path);
  return text === undefined ? undefined : parseHolder(text);
}

function readText(path: string): string | undefined {
  try {
    return readFileSync(path, "utf8");
  } catch (problem) {
    if (hasCode(problem, "ENOENT")) return undefined;
    throw problem;
  }
}
