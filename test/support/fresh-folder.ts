// Folders for tests to write into, gone after each test (each-file.ts).
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const made: string[] = [];

/** A folder of its own for one test. */
export function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "slotwright-"));
  made.push(folder);
  return folder;
}

export function removeFreshFolders(): void {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
}
