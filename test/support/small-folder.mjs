// Replaces the folder `out` here by three small files, as a site or a set to burn is replaced: node small-folder.mjs <what stands in them>
// From the compiled project, so that it starts in a moment and can be cut off at every one of its calls.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const { explainSystemError, replaceFolder } = await import(new URL("../../dist/src/files/index.js", import.meta.url).href);
const [text] = process.argv.slice(2);
const job = { folder: join(process.cwd(), "out"), shown: "out", list: ".list", maker: "the test", replace: false };
try {
  await replaceFolder(job, (folder) => {
    mkdirSync(join(folder, "below"));
    for (const name of ["a.txt", `only-${text}.txt`, join("below", "b.txt")]) writeFileSync(join(folder, name), `${text}\n`);
  });
} catch (problem) {
  process.stderr.write(`${explainSystemError(problem)?.message ?? problem.message}\n`);
  process.exitCode = 2;
}
