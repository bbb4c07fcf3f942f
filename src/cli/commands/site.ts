// slotwright site: builds the club's pages into a folder. The site room writes beside and swaps; here only what was asked is judged.
import { existsSync, readdirSync, statSync } from "node:fs";
import { join, resolve } from "node:path";
import type { BuiltSite } from "../../publish/index.js";
import { type Everywhere, json, type Register } from "../command.js";
import type { Terminal } from "../printing/terminal.js";
import { type Club, counted, openClub } from "../reading/club.js";
import { shown } from "../reading/folders.js";
import { pictureFiles } from "../reading/pictures.js";
import { type EvenSo, evenSoOption, isSound } from "../reading/soundness.js";
import { type ExitCode, WrongUse } from "../wrong-use.js";

interface SiteOptions extends Everywhere, EvenSo {
  readonly out?: string;
  readonly address?: string;
}

export const registerSite: Register = (program, { terminal, action }) => {
  program
    .command("site")
    .option("--out <folder>", "where to build it (default: _site here)")
    .option("--address <url>", "where it will be published; the feed needs it for full links")
    .option(...evenSoOption)
    .description("build the club's pages: a folder that any web server, or none, can show")
    .action(
      action<SiteOptions>(async (_, options): Promise<ExitCode> => {
        const club = openClub(options.data, terminal);
        if (!isSound(club, options, terminal)) return 1;
        const from = Date.now();
        const built = await siteOf(club, options.out ?? "_site", terminal, options.address);
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

/** Builds the site of an opened club; a record that could not be read is left out of it. */
export async function siteOf(club: Club, asked: string, terminal: Terminal, address?: string): Promise<BuiltSite> {
  const out = resolve(terminal.folder, asked);
  refuseOthers(out, asked);
  if (address !== undefined && !/^https?:\/\//.test(address))
    throw new WrongUse(`${address} is not an address.`, "Write it with its scheme: https://example.org/machines/");
  // Only now: the other commands need neither Eleventy nor Preact, and start without them.
  const { buildSite } = await import("../../publish/index.js");
  try {
    const { catalogue, records } = club;
    return await buildSite({ catalogue, records, pictures: pictureFiles(club), out, address, say: (line) => terminal.progress(line) });
  } finally {
    terminal.progress("");
  }
}

/** A folder that holds something else than a site of ours is not ours to replace. */
function refuseOthers(out: string, asked: string): void {
  if (!existsSync(out)) return;
  const next = "Name a new folder with --out, or one that slotwright built before.";
  if (!statSync(out).isDirectory()) throw new WrongUse(`${asked} is a file.`, next);
  if (existsSync(join(out, ".slotwright-site")) || readdirSync(out).length === 0) return;
  throw new WrongUse(`${asked} holds files that slotwright did not build.`, next);
}
