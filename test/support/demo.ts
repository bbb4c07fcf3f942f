// The demo club's records, read and linked once for the tests that ask real questions of them.
import { readdirSync, readFileSync } from "node:fs";
import { join, posix } from "node:path";
import { fileURLToPath } from "node:url";
import { type Catalogue, link } from "../../src/catalogue/index.js";
import { kinds, readRecords } from "../../src/records/index.js";

export const dataFolder = fileURLToPath(new URL("../../data", import.meta.url));

export function demoFiles(): { file: string; content: Uint8Array }[] {
  const walk = (folder: string): string[] =>
    readdirSync(join(dataFolder, folder), { withFileTypes: true }).flatMap((e) =>
      e.isDirectory() ? walk(posix.join(folder, e.name)) : e.name.endsWith(".yaml") ? [posix.join(folder, e.name)] : [],
    );
  return Object.values(kinds).flatMap(({ folder }) =>
    walk(folder).map((file) => ({ file, content: readFileSync(join(dataFolder, file)) })),
  );
}

let kept: Catalogue | undefined;

export function demo(): Catalogue {
  kept ??= link(readRecords(demoFiles()).records).catalogue;
  return kept;
}
