// The built site served and a browser to visit it with, for the tests of one file; both end with them.
import type { Browser } from "playwright-core";
import { afterAll, beforeAll } from "vitest";
import { siteFolder } from "../pages/site-folder.js";
import { type Opened, startBrowser, visit } from "./open.js";
import { serveFolder } from "./serve.mjs";

export type VisitOptions = Parameters<typeof visit>[2];

/** To be called once, at the top of a test file. */
export function builtSite() {
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
  return {
    address: () => site.address,
    /** A fresh visitor who has not gone anywhere yet. */
    visitor: (options: VisitOptions = {}): Promise<Opened> => visit(browser, site.address, options),
  };
}
