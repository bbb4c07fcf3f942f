// Builds the demo club's site into a folder, from the compiled project: node test/publish/make.mjs <folder> [data folder]
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const top = fileURLToPath(new URL("../..", import.meta.url));
const { buildSite } = await import(new URL("../../dist/src/publish/index.js", import.meta.url).href);
const { readRecords } = await import(new URL("../../dist/src/records/index.js", import.meta.url).href);
const { link } = await import(new URL("../../dist/src/catalogue/index.js", import.meta.url).href);

const [out = "_site", data = join(top, "data")] = process.argv.slice(2);
const files = readdirSync(data, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && entry.name.endsWith(".yaml"))
  .map((entry) => join(entry.parentPath, entry.name))
  .map((path) => ({ file: path.slice(data.length + 1).replaceAll("\\", "/"), content: readFileSync(path) }));
const { records } = readRecords(files);
const { catalogue } = link(records, {});
const started = Date.now();
const built = await buildSite({ catalogue, records, out, say: (line) => console.log(line) });
console.log(`${built.pages} pages, ${built.files} files in ${((Date.now() - started) / 1000).toFixed(1)} s`);
