// slotwright new: a blank record in its place, with the questions to answer as comments.
import { existsSync } from "node:fs";
import { join } from "node:path";
import { type Kind, kinds, nearest } from "../records/index.js";
import { type Everywhere, json, type Register } from "./command.js";
import { type DataFolder, findData, shown } from "./folders.js";
import { recordForm, typesOf } from "./record-form.js";
import { writeSchemas } from "./schemas.js";
import { writeBeside } from "./write-file.js";
import { WrongUse } from "./wrong-use.js";

interface NewOptions extends Everywhere {
  readonly type?: string;
}

export const registerNew: Register = (program, { terminal, action }) => {
  program
    .command("new")
    .argument("<kind>", Object.keys(kinds).join(", "))
    .argument("<id>", "lower-case words and digits joined by hyphens; also the file's name")
    .option("--type <type>", `for a part: ${typesOf("part").join(", ")}`)
    .description("begin a record: a file in its place with the questions to answer")
    .action(
      action<NewOptions>(([word = "", id = ""], options) => {
        const kind = kindOf(word);
        checkId(id);
        const type = typeOf(kind, options.type);
        const data = clubsOwn(findData(options.data, terminal.folder));
        const path = join(data.path, kinds[kind].folder, `${id}.yaml`);
        if (existsSync(path))
          throw new WrongUse(`${shown(path, terminal.folder)} is there already.`, "Choose another id, or edit that file.");
        writeBeside(path, recordForm(kind, id, type), false);
        writeSchemas(data.path);
        const file = shown(path, terminal.folder);
        if (options.json) terminal.out(json({ wrote: file, kind, id }));
        else terminal.out(`Wrote ${file}. Answer the questions in it, then run: slotwright check`);
        return 0;
      }),
    );
};

/** Records are not written into the demo club of an installed package: an update would take them away. */
export function clubsOwn(data: DataFolder): DataFolder {
  if (!data.demo || data.shown === "data") return data;
  throw new WrongUse(
    "No club's folder was named, and there is no data folder here.",
    "Name it with --data <folder>, or make one: slotwright start-club <folder>.",
  );
}

export function checkId(id: string): void {
  if (/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id)) return;
  const better = id
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
  throw new WrongUse(`"${id}" cannot be an id.`, `Ids are lower-case words and digits joined by hyphens${better ? `: ${better}` : "."}`);
}

function kindOf(word: string): Kind {
  if (word in kinds) return word as Kind;
  const all = Object.keys(kinds);
  const near = nearest(word, all);
  throw new WrongUse(`There is no kind of record called ${word}.`, near ? `Did you mean ${near}?` : `Kinds: ${all.join(", ")}.`);
}

function typeOf(kind: Kind, type: string | undefined): string | undefined {
  const types = typesOf(kind);
  if (types.length === 0 && type === undefined) return undefined;
  if (type !== undefined && types.includes(type)) return type;
  if (types.length === 0) throw new WrongUse(`A ${kind} has no types.`, "Leave --type out.");
  throw new WrongUse(
    type === undefined ? `A ${kind} needs its type.` : `There is no ${kind} of type ${type}.`,
    `Say --type with one of: ${types.join(", ")}.`,
  );
}
