// Writes data/schema/<kind>.json from the compiled record schemas, so that editors can check records while they are typed.
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const top = join(dirname(fileURLToPath(import.meta.url)), "..");
const { jsonSchemas } = await import(new URL("../dist/src/records/index.js", import.meta.url).href);
mkdirSync(join(top, "data", "schema"), { recursive: true });
for (const [kind, schema] of Object.entries(jsonSchemas())) {
  writeFileSync(join(top, "data", "schema", `${kind}.json`), `${JSON.stringify(schema, null, 2)}\n`);
}
