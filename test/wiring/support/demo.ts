// The demo club's records, read from data/ and linked.
import { readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { type Catalogue, link } from "../../../src/catalogue/index.js";
import { readRecords } from "../../../src/records/index.js";

export function demo(): Catalogue {
  const folder = fileURLToPath(new URL("../../../data", import.meta.url));
  const files = readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".yaml"))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => ({ file: relative(folder, path).split(sep).join("/"), content: readFileSync(path) }));
  return link(readRecords(files).records).catalogue;
}
