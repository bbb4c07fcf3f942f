// Five people with five errands, each from the page they would come in by to the end of their errand, in a real browser.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readOne } from "../../src/records/index.js";
import { siteFolder } from "../pages/site-folder.js";
import { slotwright } from "../support/recorder.js";
import { addCard, answered, startBrowser, visit } from "./open.js";
import { serveFolder } from "./serve.mjs";

let browser: Browser;
let site: Awaited<ReturnType<typeof serveFolder>>;
const scratch = mkdtempSync(join(tmpdir(), "slotwright-journey-"));
beforeAll(async () => {
  site = await serveFolder(siteFolder);
  browser = await startBrowser();
});
afterAll(async () => {
  await browser?.close();
  site?.close();
  rmSync(scratch, { recursive: true, force: true });
});

describe("a visit", () => {
  it("of a buyer: from the card's page to the verdict for my board in three taps", async () => {
    const { page, wrong, context } = await visit(browser, site.address);
    await page.goto(`${site.address}/cards/gannet-fixed-disk-controller.html`);
    let taps = 0;
    const tap = async (what: ReturnType<typeof page.locator>) => {
      await what.click();
      taps += 1;
    };
    await tap(page.locator('a[href*="planner.html?card="]').first());
    await page.waitForSelector("#machine");
    await tap(page.getByLabel("Skerry 16T"));
    await answered(page);
    await tap(page.getByLabel(/^D1\b/));
    await answered(page);
    expect(taps).toBe(3);
    // On a phone the verdict is in sight at the foot without scrolling.
    const strip = page.locator(".strip");
    expect(await strip.isVisible()).toBe(true);
    expect(await strip.textContent()).toMatch(/works.*combinations work/);
    const box = (await strip.boundingBox())!;
    expect(box.y + box.height).toBeLessThanOrEqual(741);
    expect(await page.locator("#answer .says").textContent()).toMatch(/^Yes, it works/);
    // And what else to get is one tap further.
    await page.getByRole("button", { name: "Before you buy" }).click();
    await page.getByText(/^By firmware:/).waitFor();
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("of an owner: five cards, impossible, the reason, a repair taken, the sheet printed", async () => {
    const { page, wrong, context } = await visit(browser, site.address, { viewport: { width: 1280, height: 900 } });
    await page.goto(`${site.address}/planner.html?board=skerry-16t`);
    await answered(page);
    for (const card of ["tallow", "gannet", "samphire", "avocet", "sandglass"]) await addCard(page, card);
    expect(await page.locator("#cards .card").count()).toBe(5);
    expect(await page.locator("#answer .says").textContent()).toMatch(/^No\./);
    expect(await page.locator(".reasons-list").textContent()).toMatch(/Tallow bus tracer needs Skerry Monitor up to R4A/);
    const drop = page.getByRole("button", { name: "Leave out Tallow bus tracer." });
    await drop.click();
    await answered(page);
    expect(await page.locator("#answer .says").textContent()).toMatch(/^Yes/);
    expect(await page.locator("#cards .card").count()).toBe(4);
    await page
      .getByRole("button", { name: /^Build sheet/ })
      .first()
      .click();
    await page.waitForSelector(".sheet-page .cautions");
    await page.emulateMedia({ media: "print" });
    // biome-ignore lint/performance/useDomNodeTextContent: what is hidden on paper does not count.
    const printed = await page.evaluate(() => document.body.innerText);
    expect(printed).toContain("Mains inside the supply");
    for (const name of ["Gannet fixed-disk controller", "Samphire network card", "Avocet printer port", "Sandglass"])
      expect(printed).toContain(name);
    expect(printed).not.toContain("Add a card");
    expect(printed).not.toContain("Print this sheet");
    const pdf = await page.pdf({ format: "A4" });
    expect(pdf.subarray(0, 5).toString()).toBe("%PDF-");
    const pages = pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    expect(pages).toBeGreaterThan(1);
    expect(pages).toBeLessThan(9);
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("of a tinkerer: tracer and disk in one machine, run in two ways, the switch, the fault table", async () => {
    const { page, wrong, context } = await visit(browser, site.address);
    await page.goto(`${site.address}/planner.html?board=skerry-16t`);
    await answered(page);
    await addCard(page, "tallow");
    await addCard(page, "gannet");
    await page
      .getByRole("button", { name: /^Two ways and one switch/ })
      .first()
      .click();
    await answered(page);
    expect(await page.getByRole("tab").count()).toBe(2);
    await page
      .getByRole("button", { name: /^Plan the switch/ })
      .first()
      .click();
    await page.waitForSelector("#faults");
    const sheet = await page.locator("#sheet").textContent();
    expect(sheet).toContain("R4A");
    expect(await page.locator("#faults tbody tr").count()).toBeGreaterThan(5);
    expect(await page.locator("#switch svg").count()).toBeGreaterThan(0);
    expect(await page.locator("#wires tbody tr").count()).toBeGreaterThan(3);
    expect(await page.locator("#bench .steps > li").count()).toBeGreaterThan(3);
    await page.getByRole("button", { name: "Back to the combinations" }).click();
    await page.waitForFunction(() => document.activeElement?.id === "answer-title");
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("of somebody with a symptom: typed in their own words, the problem found, the remedy on its page", async () => {
    const { page, wrong, context } = await visit(browser, site.address);
    await page.goto(`${site.address}/index.html`);
    await page.keyboard.press("/");
    await page.keyboard.type("disk hangs after sign-on");
    await page.keyboard.press("Enter");
    await page.waitForSelector("#found li");
    await page.locator("#found a", { hasText: "Gannet revision A hangs under R6" }).click();
    await page.waitForSelector("#remedies");
    expect(await page.locator("#remedies").textContent()).toMatch(/ROM/);
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("of a keeper: a build downloaded, checked with the club's data, made a tested build", async () => {
    const { page, wrong, context } = await visit(browser, site.address, { acceptDownloads: true });
    await page.goto(`${site.address}/planner.html#b=skerry-16t&r=D1&c=gannet-fixed-disk-controller;v=B&c=samphire-network-card;v=B`);
    await answered(page);
    await page.getByLabel("Name of this build").fill("Workshop machine");
    await page.getByLabel("Name of this build").blur();
    await page
      .getByRole("button", { name: /^Take this combination/ })
      .first()
      .click();
    await answered(page);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Download the build file" }).click(),
    ]);
    const builds = join(scratch, "builds");
    mkdirSync(builds);
    const file = join(builds, download.suggestedFilename());
    expect(download.suggestedFilename()).toBe("workshop-machine.yaml");
    writeFileSync(file, readFileSync(await download.path()));
    await context.close();
    expect(wrong).toEqual([]);
    const checked = await slotwright(["check", file], { folder: scratch });
    expect(checked.code, checked.out + checked.err).toBe(0);
    const out = join(builds, "workshop-machine-2026-03-01.yaml");
    const words = [
      "result",
      file,
      "--outcome",
      "worked",
      "--mode",
      "always=worked",
      "--by",
      "Wenna Tamblyn",
      "--date",
      "2026-03-01",
      "--out",
      out,
    ];
    const told = await slotwright(words, { folder: scratch });
    expect(told.code, told.out + told.err).toBe(0);
    const { record, findings } = readOne("build", readFileSync(out, "utf8"));
    expect(findings).toEqual([]);
    expect(record).toMatchObject({
      board: "skerry-16t",
      revision: "D1",
      result: { outcome: "worked", by: "Wenna Tamblyn", date: "2026-03-01" },
    });
  });
});
