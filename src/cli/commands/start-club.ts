// slotwright start-club: a folder of a club's own, with one small example of every kind that a first plan needs.

import { cpSync, existsSync, mkdirSync, readdirSync, statSync } from "node:fs";
import { basename, join, resolve } from "node:path";
import { writeFile } from "../../files/index.js";
import { kinds } from "../../records/index.js";
import { type Everywhere, json, type Register } from "../command.js";
import { exampleFiles } from "../reading/example-club.js";
import { packageTop, shown } from "../reading/folders.js";
import { writeSchemas } from "../reading/schemas.js";
import { WrongUse } from "../wrong-use.js";

interface StartClubOptions extends Everywhere {
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
      action<StartClubOptions>(([name = ""], options) => {
        const folder = resolve(terminal.folder, name);
        if (existsSync(folder) && !statSync(folder).isDirectory()) throw new WrongUse(`${name} is a file.`, "Name a new or empty folder.");
        if (existsSync(folder) && readdirSync(folder).some((entry) => !entry.startsWith("."))) {
          throw new WrongUse(`${name} is not empty.`, "Name a new or empty folder; nothing is written over.");
        }
        const data = join(folder, "data");
        const clubName = options.name ?? titled(basename(folder));
        for (const { folder: kindFolder } of Object.values(kinds)) mkdirSync(join(data, kindFolder), { recursive: true });
        const files = exampleFiles(clubName);
        for (const [file, text] of Object.entries(files)) writeFile(join(folder, ...file.split("/")), text, false);
        if (options.parts !== false) {
          cpSync(join(packageTop(), "data", "parts"), join(data, "parts"), { recursive: true });
          cpSync(join(packageTop(), "data", "LICENSE.md"), join(data, "parts", "LICENSE.md"));
        }
        writeSchemas(data);
        const here = shown(folder, terminal.folder);
        if (options.json) terminal.out(json({ wrote: here, data: shown(data, terminal.folder), files: Object.keys(files) }));
        else terminal.out(startText(here));
        return 0;
      }),
    );
};

function titled(name: string): string {
  const words = name.split(/[^\p{L}\p{N}]+/u).filter((word) => word !== "");
  return words.length === 0 ? "Our club" : words.map((word) => word[0]!.toUpperCase() + word.slice(1)).join(" ");
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
