// The built site served and a browser on its planner, for the tests of one file; both end with them.
import type { Browser } from "playwright-core";
import { afterAll, beforeAll } from "vitest";
import { siteFolder } from "../pages/site-folder.js";
import { type Opened, startBrowser, visit } from "./open.js";
import { serveFolder } from "./serve.mjs";

export const tracerAndDisk = "#b=skerry-16t&c=tallow-bus-tracer&c=gannet-fixed-disk-controller";

type Options = Parameters<typeof visit>[2];

/** To be called once, at the top of a test file. */
export function plannerPages() {
  let browser: Browser;
  let site: Awaited<ReturnType<typeof serveFolder>>;
  beforeAll(async () => {
    site = await serveFolder(siteFolder);
    browser = await startBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    site?.close();
  });
  const planner = (hash = "") => `${site.address}/planner.html${hash}`;
  /** A fresh visitor who has not gone anywhere yet. */
  const visitor = (options: Options = {}): Promise<Opened> => visit(browser, site.address, options);
  return {
    planner,
    visitor,
    /** A fresh visitor on the planner, with a build in the address. */
    open: async (hash = "", options: Options = {}): Promise<Opened> => {
      const opened = await visitor(options);
      await opened.page.goto(planner(hash));
      await opened.page.waitForSelector("#machine");
      return opened;
    },
  };
}
