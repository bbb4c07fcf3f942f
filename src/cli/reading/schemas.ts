// The JSON Schemas beside a club's records: line 1 of every record names one, so that editors check and complete.

import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { writeFile } from "../../files/index.js";
import { jsonSchemas } from "../../records/index.js";

/** Writes those that are missing or differ from what this version reads; says how many. */
export function writeSchemas(dataFolder: string): number {
  let written = 0;
  for (const [kind, schema] of Object.entries(jsonSchemas())) {
    const path = join(dataFolder, "schema", `${kind}.json`);
    const text = `${JSON.stringify(schema, null, 2)}\n`;
    if (existsSync(path) && readFileSync(path, "utf8") === text) continue;
    writeFile(path, text, true);
    written += 1;
  }
  return written;
}
