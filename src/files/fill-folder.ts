// Filling the folder one stands in: it cannot change places with another without taking the ground away, so its entries are moved in.
// Each comes whole, in the order of their names; after a cut the last one is missing, and the same command goes on from there.
import { mkdirSync, readdirSync, renameSync, rmSync } from "node:fs";
import { join } from "node:path";
import { flushFolder, flushTree } from "./flush.js";
import { takeLock } from "./lock.js";
import { leaveAsItWas } from "./refusal.js";

/** `make` fills an empty folder; the caller has made sure that nothing of the same names stands in the place but its own. */
export function fillFolder(folder: string, shown: string, maker: string, make: (folder: string) => void): void {
  const lock = leaveAsItWas(shown, () => takeLock(join(folder, ".slotwright-lock"), maker, shown));
  const work = join(folder, ".slotwright-work");
  try {
    rmSync(work, { recursive: true, force: true });
    leaveAsItWas(shown, () => {
      mkdirSync(work);
      make(work);
      flushTree(work);
    });
    for (const name of readdirSync(work).sort()) renameSync(join(work, name), join(folder, name));
    flushFolder(folder);
  } finally {
    rmSync(work, { recursive: true, force: true });
    lock.release();
  }
}
