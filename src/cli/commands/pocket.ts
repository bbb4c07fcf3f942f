// slotwright pocket: the whole club in one HTML file that opens from a disk: records, search, planner, sheets.

import { resolve } from "node:path";
import { checkFile, writeFile } from "../../files/index.js";
import { type GlobalOptions, json, type Register } from "../command.js";
import { counted, openClub, today } from "../reading/club.js";
import { shown } from "../reading/folders.js";
import { type EvenSo, evenSoOption, isSound } from "../reading/soundness.js";
import type { ExitCode } from "../usage-error.js";

interface PocketOptions extends GlobalOptions, EvenSo {
  readonly out?: string;
  readonly replace?: boolean;
}

export const registerPocket: Register = (program, { terminal, action }) => {
  program
    .command("pocket")
    .option("--out <file>", "where to write it (default: slotwright-pocket.html here)")
    .option(...evenSoOption)
    .option("--replace", "write over a file that is there")
    .description("make the single file: records, search and planner in one HTML that opens from a disk or a memory stick")
    .action(
      action<PocketOptions>(async (_, options): Promise<ExitCode> => {
        const path = resolve(terminal.folder, options.out ?? "slotwright-pocket.html");
        // Said before the work, which takes a while.
        const out = shown(path, terminal.folder);
        checkFile(path, options.replace === true, out);
        const club = openClub(options.data, terminal);
        if (!isSound(club, options, terminal)) return 1;
        // Only now: the other commands need neither Eleventy nor Preact, and start without them.
        const { makePocket } = await import("../../publish/index.js");
        const { catalogue, records } = club;
        const pocket = await makePocket({ catalogue, records, made: today(), say: (line) => terminal.progress(line) });
        terminal.progress("");
        writeFile(path, pocket.html, options.replace === true, out);
        const bytes = Buffer.byteLength(pocket.html);
        if (options.json) terminal.out(json({ out, pages: pocket.pages, bytes }));
        else
          terminal.out(
            `Wrote ${counted(pocket.pages, "page")}, search and planner into ${out} (${(bytes / 1e6).toFixed(2)} MB). Open it with any browser; it needs no network.`,
          );
        return 0;
      }),
    );
};
