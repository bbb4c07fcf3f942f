// slotwright new: a blank record in its place, with the questions to answer as comments.

import { existsSync } from "node:fs";
import { join } from "node:path";
import { writeFile } from "../../files/index.js";
import { type Kind, kinds, nearest } from "../../records/index.js";
import { type GlobalOptions, json, type Register } from "../command.js";
import { findData, shown } from "../reading/folders.js";
import { checkId, clubsOwn } from "../reading/own-record.js";
import { recordForm, typesOf } from "../reading/record-form.js";
import { writeSchemas } from "../reading/schemas.js";
import { UsageError } from "../usage-error.js";
import { writeConflictDraft } from "./conflict-draft.js";

interface NewOptions extends GlobalOptions {
  readonly type?: string;
  readonly fromBuild?: string;
}

export const registerNew: Register = (program, { terminal, action }) => {
  program
    .command("new")
    .argument("<kind>", Object.keys(kinds).join(", "))
    .argument("[id]", "lower-case words and digits joined by hyphens; also the file's name")
    .option("--from-build <build>", "for a conflict: draft it from a tested build that failed; the id may then be left out")
    .option("--type <type>", `for a part: ${typesOf("part").join(", ")}`)
    .description("begin a record: a file in its place with the questions to answer")
    .action(
      action<NewOptions>(([word = "", id], options) => {
        const kind = kindOf(word);
        if (options.fromBuild !== undefined) {
          if (kind !== "conflict")
            throw new UsageError(`A ${kind} is not drafted from a build.`, "Say: new conflict --from-build <build>.");
          return writeConflictDraft(id, options.fromBuild, options, terminal);
        }
        if (id === undefined) throw new UsageError(`The new ${kind} needs an id.`, `Say: slotwright new ${kind} <id>.`);
        checkId(id);
        const type = typeOf(kind, options.type);
        const data = clubsOwn(findData(options.data, terminal.folder));
        const path = join(data.path, kinds[kind].folder, `${id}.yaml`);
        if (existsSync(path))
          throw new UsageError(`${shown(path, terminal.folder)} is there already.`, "Choose another id, or edit that file.");
        writeFile(path, recordForm(kind, id, type), false);
        writeSchemas(data.path);
        const file = shown(path, terminal.folder);
        if (options.json) terminal.out(json({ wrote: file, kind, id }));
        else terminal.out(`Wrote ${file}. Answer the questions in it, then run: slotwright check`);
        return 0;
      }),
    );
};

function kindOf(word: string): Kind {
  if (word in kinds) return word as Kind;
  const all = Object.keys(kinds);
  const near = nearest(word, all);
  throw new UsageError(`There is no kind of record called ${word}.`, near ? `Did you mean ${near}?` : `Kinds: ${all.join(", ")}.`);
}

function typeOf(kind: Kind, type: string | undefined): string | undefined {
  const types = typesOf(kind);
  if (types.length === 0 && type === undefined) return undefined;
  if (type !== undefined && types.includes(type)) return type;
  if (types.length === 0) throw new UsageError(`A ${kind} has no types.`, "Leave --type out.");
  throw new UsageError(
    type === undefined ? `A ${kind} needs its type.` : `There is no ${kind} of type ${type}.`,
    `Say --type with one of: ${types.join(", ")}.`,
  );
}
