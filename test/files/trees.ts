// Small trees of files for the tests: written from and read into one plain object.
import { lstatSync, mkdirSync, readdirSync, readFileSync, readlinkSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";

/** Files by their names below a folder. */
export type Tree = Readonly<Record<string, string>>;

export function writeTree(folder: string, files: Tree): void {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
}

/** Every file, link ("-> where") and empty folder ("/" at its end) below a folder, in order of their names. */
export function filesBelow(folder: string, below = ""): Record<string, string> {
  const found: Record<string, string> = {};
  const entries = readdirSync(join(folder, below), { withFileTypes: true });
  if (entries.length === 0 && below !== "") found[below] = "";
  for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
    const name = `${below}${entry.name}`;
    const path = join(folder, name);
    if (entry.isDirectory()) Object.assign(found, filesBelow(folder, `${name}/`));
    else found[name] = lstatSync(path).isSymbolicLink() ? `-> ${readlinkSync(path)}` : readFileSync(path, "utf8");
  }
  return found;
}
