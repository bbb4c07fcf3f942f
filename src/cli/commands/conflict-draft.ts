// slotwright new conflict --from-build: a failure on the bench as a conflict record to finish, written beside the others.

import { existsSync } from "node:fs";
import { join } from "node:path";
import { writeFile } from "../../files/index.js";
import { draftConflict } from "../../planning/index.js";
import { kinds, nearest, readOne, writeRecord } from "../../records/index.js";
import { type GlobalOptions, json } from "../command.js";
import type { Terminal } from "../printing/terminal.js";
import { openClub } from "../reading/club.js";
import { shown } from "../reading/folders.js";
import { checkId, clubsOwn } from "../reading/own-record.js";
import { writeSchemas } from "../reading/schemas.js";
import { type ExitCode, UsageError } from "../usage-error.js";

export function writeConflictDraft(id: string | undefined, from: string, options: GlobalOptions, terminal: Terminal): ExitCode {
  const club = openClub(options.data, terminal);
  const build = club.catalogue.builds.get(from);
  if (!build) {
    const near = nearest(from, [...club.catalogue.builds.keys()]);
    throw new UsageError(`No build is called ${from}.`, near ? `Did you mean ${near}?` : "Name a tested build of the club by its id.");
  }
  if (!build.result || build.result.outcome === "worked")
    throw new UsageError(
      build.result ? `${from} worked on the bench: it shows no conflict.` : `${from} has not been tested.`,
      "Name a tested build that failed, or worked only in part.",
    );
  const draft = draftConflict(club.catalogue, build);
  const named = id ?? draft.id;
  checkId(named);
  const text = writeRecord("conflict", { ...draft, id: named });
  const wrong = readOne("conflict", text, `${kinds.conflict.folder}/${named}.yaml`).findings.filter((f) => f.level === "error");
  if (wrong.length > 0) throw new Error(`the draft of ${named} is no conflict record: ${wrong.map((f) => f.says).join(" ")}`);
  const data = clubsOwn(club.data);
  const path = join(data.path, kinds.conflict.folder, `${named}.yaml`);
  const file = shown(path, terminal.folder);
  if (existsSync(path)) throw new UsageError(`${file} is there already.`, "Choose another id, or edit that file.");
  writeFile(path, text, false);
  writeSchemas(data.path);
  if (options.json) terminal.out(json({ wrote: file, kind: "conflict", id: named, from }));
  else {
    terminal.out(`Wrote ${file}: suspected, with every condition of ${from}.`);
    terminal.out("Take out conditions that do not matter, say cause and class, then run: slotwright check");
  }
  return 0;
}
