// The built site as the tests see it: the folder SITE_DIR names, or _site at the top. A missing build fails; it is never skipped.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, relative, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";

const top = fileURLToPath(new URL("../..", import.meta.url));

export const siteFolder = resolve(process.env.SITE_DIR ?? join(top, "_site"));

if (!existsSync(join(siteFolder, ".slotwright-site"))) {
  throw new Error(`No built site in ${siteFolder}. Build it first: npm run build && node dist/src/cli/main.js site --out _site`);
}

/** Every file of the site, named from its top with "/". */
export const files: readonly string[] = readdirSync(siteFolder, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) => relative(siteFolder, join(entry.parentPath, entry.name)).split(sep).join("/"));

export const read = (name: string) => readFileSync(join(siteFolder, name), "utf8");
