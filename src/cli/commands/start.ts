// slotwright start: checks the records, builds the site, serves it on this machine and prints the address. Stays until Ctrl-C.

import { type GlobalOptions, json, type Register } from "../command.js";
import { openClub } from "../reading/club.js";
import { type EvenSo, evenSoOption, isSound } from "../reading/soundness.js";
import { type ExitCode, UsageError } from "../usage-error.js";
import { allFindings, holds, tellCheck } from "./check.js";
import { serve } from "./serve.js";
import { replaceFolderOption, siteOf } from "./site.js";

interface StartOptions extends GlobalOptions, EvenSo {
  readonly out?: string;
  readonly replace?: boolean;
  readonly port?: string;
}

export const registerStart: Register = (program, { terminal, action, until }) => {
  program
    .command("start")
    .option("--out <folder>", "where to build the site (default: _site here)")
    .option("--port <port>", "the port to serve on (default: any free one)")
    .option(...replaceFolderOption)
    .option(...evenSoOption)
    .description("check the records, build the site, serve it on this machine and print the address")
    .action(
      action<StartOptions>(async (_, options): Promise<ExitCode> => {
        const port = portOf(options.port);
        const club = openClub(options.data, terminal);
        const findings = allFindings(club, terminal, true);
        if (!options.json) tellCheck(club, findings, false, terminal);
        if (!isSound(club, options, terminal)) return 1;
        const built = await siteOf(club, options, terminal);
        const served = await serve(built.out, port).catch((problem: NodeJS.ErrnoException) => {
          throw new UsageError(`Port ${port} cannot be used (${problem.code}).`, "Leave --port out to take any free one.");
        });
        if (options.json) terminal.out(json({ address: served.address, pages: built.pages, holds: holds(findings) }));
        else terminal.out(`Built ${built.pages} pages.\nServing them at ${served.address} (stop with Ctrl-C)`);
        await until();
        await served.close();
        return 0;
      }),
    );
};

function portOf(text: string | undefined): number {
  if (text === undefined) return 0;
  const port = Number(text);
  if (Number.isInteger(port) && port >= 0 && port <= 65535) return port;
  throw new UsageError(`--port ${text} is not a port.`, "Name a whole number up to 65535, or leave it out.");
}
