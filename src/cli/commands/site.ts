// slotwright site: builds the club's pages into a folder; here only what was asked is judged.
import { resolve } from "node:path";
import { checkFolder } from "../../files/index.js";
import type { BuiltSite } from "../../publish/index.js";
import { type GlobalOptions, json, type Register } from "../command.js";
import type { Terminal } from "../printing/terminal.js";
import { type Club, counted, openClub } from "../reading/club.js";
import { shown } from "../reading/folders.js";
import { pictureFiles } from "../reading/pictures.js";
import { type EvenSo, evenSoOption, isSound } from "../reading/soundness.js";
import { type ExitCode, UsageError } from "../usage-error.js";

interface SiteOptions extends GlobalOptions, EvenSo {
  readonly out?: string;
  readonly replace?: boolean;
  readonly address?: string;
}

export const registerSite: Register = (program, { terminal, action }) => {
  program
    .command("site")
    .option("--out <folder>", "where to build it (default: _site here)")
    .option("--address <url>", "where it will be published; the feed needs it for full links")
    .option(...replaceFolderOption)
    .option(...evenSoOption)
    .description("build the club's pages: a folder that any web server, or none, can show")
    .action(
      action<SiteOptions>(async (_, options): Promise<ExitCode> => {
        const club = openClub(options.data, terminal);
        if (!isSound(club, options, terminal)) return 1;
        const from = Date.now();
        const built = await siteOf(club, options, terminal, options.address);
        const out = shown(built.out, terminal.folder);
        const seconds = ((Date.now() - from) / 1000).toFixed(1);
        if (options.json) terminal.out(json({ out, pages: built.pages, files: built.files }));
        else
          terminal.out(
            `Built ${counted(built.pages, "page")} into ${out} in ${seconds} s. Open them with: slotwright start, or any web server.`,
          );
        return 0;
      }),
    );
};

export const replaceFolderOption = ["--replace", "write into a folder that holds other files too; those stay"] as const;

export interface SiteTarget {
  readonly out?: string;
  readonly replace?: boolean;
}

/** Builds the site of an opened club; a record that could not be read is left out of it. */
export async function siteOf(club: Club, { out = "_site", replace }: SiteTarget, terminal: Terminal, address?: string): Promise<BuiltSite> {
  // Only now: the other commands need neither Eleventy nor Preact, and start without them.
  const { buildSite, siteJob } = await import("../../publish/index.js");
  const target = { out: resolve(terminal.folder, out), shown: out, replace: replace === true };
  checkFolder(siteJob(target));
  if (address !== undefined && !/^https?:\/\//.test(address))
    throw new UsageError(`${address} is not an address.`, "Write it with its scheme: https://example.org/machines/");
  try {
    const { catalogue, records } = club;
    return await buildSite({
      ...target,
      catalogue,
      records,
      pictures: pictureFiles(club),
      address,
      say: (line) => terminal.progress(line),
    });
  } finally {
    terminal.progress("");
  }
}
