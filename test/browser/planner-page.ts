// A browser on the planner of the built site, for the tests of one file.
import { builtSite, type VisitOptions } from "./built-site.js";
import type { Opened } from "./open.js";

export const tracerAndDisk = "#b=skerry-16t&c=tallow-bus-tracer&c=gannet-fixed-disk-controller";

/** To be called once, at the top of a test file. */
export function plannerPages() {
  const { address, visitor } = builtSite();
  const planner = (hash = "") => `${address()}/planner.html${hash}`;
  return {
    planner,
    visitor,
    /** A fresh visitor on the planner, with a build in the address. */
    open: async (hash = "", options: VisitOptions = {}): Promise<Opened> => {
      const opened = await visitor(options);
      await opened.page.goto(planner(hash));
      await opened.page.waitForSelector("#machine");
      return opened;
    },
  };
}
