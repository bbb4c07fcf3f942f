// slotwright start-club: a folder of a club's own, with one small example of every kind that a first plan needs.

import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { basename, join, resolve } from "node:path";
import { fillFolder, replaceFolder, standsIn } from "../../files/index.js";
import { itemAt, kinds } from "../../records/index.js";
import { type GlobalOptions, json, type Register } from "../command.js";
import { exampleFiles } from "../reading/example-club.js";
import { packageTop, shown } from "../reading/folders.js";
import { writeSchemas } from "../reading/schemas.js";
import { type ExitCode, UsageError } from "../usage-error.js";

interface StartClubOptions extends GlobalOptions {
  readonly name?: string;
  readonly parts?: boolean;
}

export const registerStartClub: Register = (program, { terminal, action }) => {
  program
    .command("start-club")
    .argument("<folder>", "a new or empty folder")
    .option("--name <name>", "the club's name")
    .option("--no-parts", "leave out the generic parts (memory devices, switches, connectors)")
    .description("begin a club's own folder: club record, an example machine, generic parts, schemas")
    .action(
      action<StartClubOptions>(async ([name = ""], options): Promise<ExitCode> => {
        const folder = resolve(terminal.folder, name);
        const files = exampleFiles(options.name ?? titled(basename(folder)));
        refuseFilled(folder, name, files);
        const fill = (made: string) => fillClub(made, files, options.parts !== false);
        const maker = "slotwright start-club";
        if (existsSync(folder) && standsIn(folder)) fillFolder(folder, name, maker, fill);
        else await replaceFolder({ folder, shown: name, maker, replace: true }, fill);
        const here = shown(folder, terminal.folder);
        const data = shown(join(folder, "data"), terminal.folder);
        if (options.json) terminal.out(json({ wrote: here, data, files: Object.keys(files) }));
        else terminal.out(startText(here));
        return 0;
      }),
    );
};

/** Files by their names below the club's folder, with "/". */
type Files = Readonly<Record<string, string>>;

/** Entries whose names begin with a dot (.git) may be there, and what a run that was cut off has left. */
function refuseFilled(folder: string, name: string, files: Files): void {
  if (!existsSync(folder)) return;
  if (!statSync(folder).isDirectory()) throw new UsageError(`${name} is a file.`, "Name a new or empty folder.");
  const isOurs = (entry: string) => Object.hasOwn(files, entry) && readFileSync(join(folder, entry), "utf8") === files[entry];
  if (readdirSync(folder).some((entry) => !entry.startsWith(".") && !isOurs(entry)))
    throw new UsageError(`${name} is not empty.`, "Name a new or empty folder; nothing is written over.");
}

function fillClub(folder: string, files: Files, withParts: boolean): void {
  const data = join(folder, "data");
  for (const { folder: kindFolder } of Object.values(kinds)) mkdirSync(join(data, kindFolder), { recursive: true });
  for (const [file, text] of Object.entries(files)) writeFileSync(join(folder, ...file.split("/")), text);
  if (withParts) {
    cpSync(join(packageTop(), "data", "parts"), join(data, "parts"), { recursive: true });
    cpSync(join(packageTop(), "data", "LICENSE.md"), join(data, "parts", "LICENSE.md"));
  }
  writeSchemas(data);
}

function titled(name: string): string {
  const words = name.split(/[^\p{L}\p{N}]+/u).filter((word) => word !== "");
  return words.length === 0 ? "Our club" : words.map((word) => itemAt(word, 0).toUpperCase() + word.slice(1)).join(" ");
}

function startText(folder: string): string {
  return [
    `Wrote ${folder}: one example machine, to be replaced by yours.`,
    "Next:",
    `  slotwright check --data ${folder}`,
    `  slotwright plan example-machine --data ${folder}`,
    `  slotwright new card <id> --data ${folder}`,
  ].join("\n");
}
