// Writes the pack of a built site into its folder, beside the service worker that knows the pack's edition. Uses Node.
import { createHash } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { gzipSync } from "node:zlib";
import { type PackFile, packOf } from "../scripts/index.js";

/** The edition changes with any byte of the site, and only then. */
function editionOf(files: readonly PackFile[]): string {
  const hash = createHash("sha256");
  for (const { name, bytes } of files) hash.update(name).update("\0").update(bytes);
  return hash.digest("hex").slice(0, 16);
}

/** `folder` holds the finished site, with the service worker's script among the assets. Gives the number of files written. */
export function writePack(folder: string): number {
  const script = join(folder, "assets", "offline.js");
  const worker = readFileSync(script, "utf8");
  rmSync(script);
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => ({ name: relative(folder, path).split(sep).join("/"), bytes: readFileSync(path) }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
  const { table, bytes } = packOf(files, editionOf(files));
  mkdirSync(join(folder, "offline"), { recursive: true });
  writeFileSync(join(folder, "offline", "table.json"), JSON.stringify(table));
  writeFileSync(join(folder, "offline", "site.pack"), gzipSync(bytes, { level: 9 }));
  writeFileSync(join(folder, "offline.js"), `const edition=${JSON.stringify(table.edition)};\n${worker}`);
  return 3;
}
