// The demo club's records, read and linked once for the tests that ask real questions of them.
import { fileURLToPath } from "node:url";
import { type Catalogue, link } from "../../src/catalogue/index.js";
import { readData } from "../../src/cli/reading/folders.js";
import { readRecords } from "../../src/records/index.js";

/** The demo club with some of its files written anew. */
export function demoWith(changes: Readonly<Record<string, (text: string) => string>>): Catalogue {
  const files = demoFiles().map(({ file, content }) => {
    const change = changes[file];
    return { file, content: change ? change(new TextDecoder().decode(content)) : content };
  });
  const missing = Object.keys(changes).filter((name) => !files.some(({ file }) => file === name));
  if (missing.length > 0) throw new Error(`The demo club has no ${missing.join(", ")}.`);
  const reading = readRecords(files);
  return link(reading.records, { failed: reading.failed, findings: reading.findings }).catalogue;
}

let kept: Catalogue | undefined;

/** Every file of the demo club as it stands on disk. */
export function demoFiles(): { file: string; content: Uint8Array }[] {
  return readData(fileURLToPath(new URL("../../data", import.meta.url))).map(({ file, bytes }) => ({ file, content: bytes }));
}

export function demo(): Catalogue {
  if (kept) return kept;
  const reading = readRecords(demoFiles());
  kept = link(reading.records, { failed: reading.failed }).catalogue;
  return kept;
}
