// Reading without a network, three ways in a real browser: the served site after the network and the server are gone, the folder on a disk,
// and the single file. Planner and search included.
import { cpSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { writePack } from "../../src/publish/write-pack.js";
import { packBudget } from "../../src/scripts/offline/pack.js";
import { siteFolder } from "../pages/site-folder.js";
import { slotwright } from "../support/recorder.js";
import { addCard, answered, startBrowser, visit } from "./open.js";
import { serveFolder } from "./serve.mjs";

let browser: Browser;
const scratch = mkdtempSync(join(tmpdir(), "slotwright-offline-"));
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(async () => {
  await browser?.close();
  rmSync(scratch, { recursive: true, force: true });
});

type Visit = Awaited<ReturnType<typeof visit>>;

/** Asks the page again and again until the answer is yes; the page's own promises are waited for. */
async function until(page: Visit["page"], asks: (arg: string) => Promise<boolean>, arg = ""): Promise<void> {
  const end = Date.now() + 600_000;
  while (!(await page.evaluate(asks, arg))) {
    if (Date.now() > end) throw new Error("It did not come to that within ten minutes.");
    await page.waitForTimeout(100);
  }
}

/** Takes the offer at the foot of the page; then the service worker has everything and is in charge of the page. */
async function kept({ page }: Visit): Promise<void> {
  await page.locator("footer").scrollIntoViewIfNeeded();
  await page.getByRole("button", { name: /^Keep a copy of this site/ }).click();
  await page.getByRole("button", { name: "Drop the copy" }).waitFor();
  await until(page, async () => {
    const registration = await navigator.serviceWorker.ready;
    return registration.active?.state === "activated" && navigator.serviceWorker.controller !== null;
  });
}

describe("the served site", () => {
  it("is kept with two requests, within its budget", () => {
    const packed = statSync(join(siteFolder, "offline", "site.pack")).size + statSync(join(siteFolder, "offline", "table.json")).size;
    expect(packed).toBeLessThan(packBudget);
    const table = JSON.parse(readFileSync(join(siteFolder, "offline", "table.json"), "utf8")) as {
      files: Record<string, [number, number]>;
    };
    for (const name of [
      "index.html",
      "planner.html",
      "search.html",
      "data/planner.pack",
      "assets/planner-solve.js",
      "assets/planner-bench.js",
      "pagefind/pagefind.js",
    ])
      expect(table.files[name], name).toBeDefined();
  });

  it("opens every kind of page, search and planner with the network off and the server stopped", async () => {
    const server = await serveFolder(siteFolder);
    const opened = await visit(browser, server.address, { serviceWorkers: "allow" });
    const { page, context } = opened;
    await page.goto(`${server.address}/index.html`);
    await kept(opened);
    server.close();
    await context.setOffline(true);
    for (const path of [
      "",
      "cards/gannet-fixed-disk-controller.html",
      "boards/skerry-16t.html",
      "conflicts/index.html",
      "builds/everyday-office.html",
      "cautions.html",
    ]) {
      await page.goto(`${server.address}/${path}`);
      expect(await page.locator("h1").count(), path).toBe(1);
    }
    await page.goto(`${server.address}/search.html?q=gannet`);
    await page.waitForSelector("#found li");
    await page.waitForFunction(() => /page/.test(document.getElementById("said")?.textContent ?? ""));
    await page.goto(`${server.address}/planner.html?card=gannet-fixed-disk-controller`);
    await page.waitForSelector("#machine");
    await page.getByLabel("Skerry 16T").check();
    await answered(page);
    await page
      .getByRole("button", { name: /^Build sheet/ })
      .first()
      .click();
    await page.waitForSelector(".sheet-page .cautions");
    await page.goto(`${server.address}/no/such/page.html`);
    expect(await page.locator("h1").textContent()).toBe("Not here");
    await context.close();
  });

  it("is loaded by nobody who was not asked, with its size; says so where it cannot be kept", async () => {
    const server = await serveFolder(siteFolder);
    const { page, context } = await visit(browser, server.address, { javaScriptEnabled: false });
    await page.goto(`${server.address}/cautions.html`, { waitUntil: "networkidle" });
    expect(await page.locator("#kept").isVisible()).toBe(false);
    await context.close();
    const blocked = await visit(browser, server.address, { serviceWorkers: "block" });
    const loaded: string[] = [];
    blocked.context.on("request", (r) => loaded.push(`${r.method()} ${new URL(r.url()).pathname}`));
    await blocked.page.goto(`${server.address}/cautions.html`, { waitUntil: "networkidle" });
    await blocked.page.locator("footer").scrollIntoViewIfNeeded();
    const offer = blocked.page.getByRole("button", { name: /^Keep a copy of this site/ });
    const size = (statSync(join(siteFolder, "offline", "site.pack")).size / 1_000_000).toFixed(1).replace(/\.0$/, "");
    expect(await offer.textContent()).toBe(`Keep a copy of this site (${size}\u2009MB)`);
    expect(loaded.filter((r) => r.includes("offline"))).toEqual(["HEAD /offline/site.pack"]);
    await offer.click();
    await blocked.page.getByText("The copy was not kept").waitFor();
    await blocked.context.close();
    server.close();
  });

  it("says at the foot of a page that it is kept and how much room it takes, and is dropped by a tap", async () => {
    const server = await serveFolder(siteFolder);
    const line = "#kept";
    const opened = await visit(browser, server.address, { serviceWorkers: "allow" });
    const { page, context } = opened;
    await page.goto(`${server.address}/matrix/skerry-16t--d1.html`);
    await kept(opened);
    const [, said] = /it takes ([\d.]+)\u2009MB/.exec((await page.textContent(line))!)!;
    const table = JSON.parse(readFileSync(join(siteFolder, "offline", "table.json"), "utf8")) as {
      files: Record<string, [number, number]>;
    };
    const bytes = Object.values(table.files).reduce((sum, [, length]) => sum + length, 0);
    expect(Number(said)).toBeCloseTo(bytes / 1_000_000, 1);
    // Thrown away by the browser: the next page offers it again, and the worker that is there fetches it again.
    await page.evaluate(async () => Promise.all((await caches.keys()).map((name) => caches.delete(name))));
    await page.goto(`${server.address}/cautions.html`, { waitUntil: "networkidle" });
    await kept(opened);
    await page.getByRole("button", { name: "Drop the copy" }).click();
    await page.getByText("The copy is gone.").waitFor();
    expect(await page.evaluate(() => caches.keys())).toEqual([]);
    expect(await page.evaluate(() => navigator.serviceWorker.getRegistration().then((r) => r?.scope ?? "none"))).toBe("none");
    await context.close();
    server.close();
  });

  it("takes a new edition without losing the page being read, and has it the next time", async () => {
    const folder = join(scratch, "site");
    cpSync(siteFolder, folder, { recursive: true });
    const server = await serveFolder(folder);
    const opened = await visit(browser, server.address, { serviceWorkers: "allow" });
    const { page, context } = opened;
    await page.goto(`${server.address}/planner.html`);
    await kept(opened);
    await page.getByLabel("Skerry 16T").check();
    await answered(page);
    const address = page.url();
    await page.evaluate(() => Object.assign(window, { stillHere: true }));
    const start = join(folder, "cautions.html");
    writeFileSync(start, readFileSync(start, "utf8").replace("<h1>Cautions</h1>", "<h1>Cautions, new edition</h1>"));
    cpSync(join(folder, "offline.js"), join(folder, "assets", "offline.js"));
    const script = readFileSync(join(folder, "assets", "offline.js"), "utf8");
    writeFileSync(join(folder, "assets", "offline.js"), script.slice(script.indexOf("\n") + 1));
    writePack(folder);
    const edition = (JSON.parse(readFileSync(join(folder, "offline", "table.json"), "utf8")) as { edition: string }).edition;
    await page.evaluate(() => navigator.serviceWorker.getRegistration().then((r) => r?.update()));
    await until(
      page,
      async (e) => {
        const registration = await navigator.serviceWorker.getRegistration();
        return (
          registration?.active?.state === "activated" && !registration.installing && (await caches.keys()).join() === `slotwright / ${e}`
        );
      },
      edition,
    );
    expect(await page.evaluate(() => "stillHere" in window)).toBe(true);
    expect(page.url()).toBe(address);
    await addCard(page, "gannet");
    server.close();
    await context.setOffline(true);
    await page.goto(`${server.address}/cautions.html`);
    expect(await page.locator("h1").textContent()).toBe("Cautions, new edition");
    await page.goBack();
    await answered(page);
    expect(await page.locator("#cards .card").count()).toBe(1);
    await context.close();
  });
});

describe("the folder on a disk", () => {
  it("reads without a server: pages, links, search; the planner says where it can be had", async () => {
    const home = pathToFileURL(siteFolder).href;
    const { page, wrong, context } = await visit(browser, home);
    await page.goto(`${home}/index.html`);
    await page.getByRole("link", { name: "Cards", exact: true }).first().click();
    await page.getByRole("link", { name: "Gannet fixed-disk controller" }).first().click();
    expect(await page.locator("h1").textContent()).toContain("Gannet");
    await page.goto(`${home}/search.html?q=gannet`);
    await page.waitForSelector("#found li");
    await page.goto(`${home}/planner.html`);
    expect(await page.locator("[data-file]").textContent()).toMatch(/slotwright pocket/);
    expect(await page.locator("[data-file]").isVisible()).toBe(true);
    expect(wrong).toEqual([]);
    await context.close();
  });
});

describe("the single file", () => {
  const file = join(scratch, "pocket.html");
  const home = pathToFileURL(file).href;
  beforeAll(async () => {
    expect((await slotwright(["pocket", "--out", file], { folder: scratch })).code).toBe(0);
  });

  it("weighs under 1.6 MB and names no other host to load from", () => {
    const html = readFileSync(file, "utf8");
    expect(Buffer.byteLength(html)).toBeLessThan(1_600_000);
    expect(html).toContain("default-src 'none'");
    expect(/<(?:script|img|link|iframe)[^>]+(?:src|href)="(?!data:|#)/.exec(html)?.[0]).toBeUndefined();
  });

  it("is not written over without being told", async () => {
    const { code, err } = await slotwright(["pocket", "--out", file], { folder: scratch });
    expect(code).toBe(2);
    expect(err).toContain("--replace");
  });

  it("finds as soon as it is opened, from a disk", async () => {
    const { page, wrong, context } = await visit(browser, home);
    await page.goto(`${home}#search.html?q=gannet`);
    await page.waitForSelector(".found li");
    expect(await page.locator(".found a").first().textContent()).toContain("Gannet");
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("puts the card first when its exact model number is asked for, and nothing beside it that only shares a part", async () => {
    const { page, context } = await visit(browser, home);
    await page.goto(`${home}#search.html?q=FS-200`);
    await page.waitForSelector(".found li");
    expect(await page.locator(".found a").first().getAttribute("href")).toBe("#cards/gannet-fixed-disk-controller.html");
    const rest = await page.locator(".found li").count();
    expect(rest).toBeLessThan(10);
    await page.goto(`${home}#search.html?q=FS-299`);
    await page.waitForFunction(() => !/^\d+ pages\.$/.test(document.querySelector("main [role=status]")?.textContent ?? "0 pages."));
    await context.close();
  });

  it("leads from page to page, back and forth, and to a place on a page", async () => {
    const { page, wrong, context } = await visit(browser, home);
    await page.goto(home);
    expect(await page.locator("h1").count()).toBe(1);
    await page.getByRole("link", { name: "Cards", exact: true }).first().click();
    await page.waitForSelector("main[data-page='cards/index.html']");
    await page.getByRole("link", { name: "Gannet fixed-disk controller" }).first().click();
    await page.waitForSelector("main[data-page='cards/gannet-fixed-disk-controller.html']");
    await page.goBack();
    await page.waitForSelector("main[data-page='cards/index.html']");
    await page.goto(`${home}#cards/gannet-fixed-disk-controller.html#settings`);
    await page.waitForFunction(() => (document.getElementById("settings")?.getBoundingClientRect().top ?? 1e9) < 400);
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("leads to the line of a record, and to the sheet of a tested machine, as the site does", async () => {
    const { page, wrong, context } = await visit(browser, home);
    await page.goto(`${home}#cards/gannet-fixed-disk-controller.html`);
    await page.locator("#where .reasons-of > summary").first().click();
    await page.locator("#where .run summary").first().click();
    await page.locator("#where .run details[open] a.line").first().click();
    await page.waitForSelector("main[data-page^='source/'] li.at");
    const [name, line] = /#(source\/[^#]+)#L(\d+)$/.exec(page.url())!.slice(1) as [string, string];
    const site = readFileSync(join(siteFolder, name), "utf8");
    const same = await page.evaluate((html) => {
      const there = new DOMParser().parseFromString(html, "text/html");
      const lines = (of: Document) => [...of.querySelectorAll(".source li")].map((li) => li.textContent);
      return { same: JSON.stringify(lines(document)) === JSON.stringify(lines(there)), count: lines(document).length };
    }, site);
    expect(same.same).toBe(true);
    expect(same.count).toBeGreaterThan(Number(line));
    expect(await page.locator("li.at").getAttribute("id")).toBe(`L${line}`);
    await page.locator("main p a").first().click();
    await page.waitForFunction(() =>
      /^(?:cards|conflicts|firmware|boards|builds)\//.test(document.getElementById("content")!.dataset.page ?? ""),
    );
    await page.goto(`${home}#builds/saltmarsh-three-mode-skerry.html`);
    await page.getByRole("link", { name: /Build sheet/ }).click();
    await page.waitForSelector("main[data-page='builds/saltmarsh-three-mode-skerry-sheet.html'] .sheet .cautions");
    expect(await page.locator(".sheet #wires tbody tr").count()).toBe(
      [...readFileSync(join(siteFolder, "builds", "saltmarsh-three-mode-skerry-sheet.html"), "utf8").matchAll(/data-label="Wire"/g)].length,
    );
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("plans in a worker, draws sheets, keeps the build in its address", async () => {
    const { page, wrong, context } = await visit(browser, home);
    await page.goto(`${home}#planner.html?board=skerry-16t&card=tallow-bus-tracer&card=gannet-fixed-disk-controller`);
    await answered(page);
    expect(await page.locator("#answer .says").textContent()).toMatch(/^No\./);
    await page
      .getByRole("button", { name: /^Two ways and one switch/ })
      .first()
      .click();
    await answered(page);
    expect(page.url()).toContain("#planner.html?b=skerry-16t&");
    await page
      .getByRole("button", { name: /^Plan the switch/ })
      .first()
      .click();
    await page.waitForSelector("#faults");
    const address = page.url();
    await page.goto("about:blank");
    await page.goto(address);
    await answered(page);
    expect(await page.locator("#modes [role=tab]").count()).toBe(2);
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("plans in the page itself where the browser allows no worker", async () => {
    const { page, wrong, context } = await visit(browser, home);
    await page.addInitScript(() => {
      Object.defineProperty(window, "Worker", {
        value: class {
          constructor() {
            throw new DOMException("no workers here", "SecurityError");
          }
        },
      });
    });
    await page.goto(`${home}#planner.html?board=skerry-16t&card=gannet-fixed-disk-controller`);
    await answered(page);
    expect(await page.locator("#answer .says").textContent()).toMatch(/^Yes/);
    await page
      .getByRole("button", { name: /^Build sheet/ })
      .first()
      .click();
    await page.waitForSelector(".sheet-page .cautions");
    expect(wrong).toEqual([]);
    await context.close();
  });
});
