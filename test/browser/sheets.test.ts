// The build sheets of the demo club's switched machines in a real browser: every drawing clean at both widths,
// and the page on paper: page numbers, nothing wider than the sheet, the panel at its true size.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { link } from "../../src/catalogue/index.js";
import { readData } from "../../src/cli/reading/folders.js";
import { type Figure, type SheetPage, sheetOf } from "../../src/pages/index.js";
import { sheetFile } from "../../src/publish/index.js";
import { readRecords } from "../../src/records/index.js";
import { ensureChromium, launchArguments } from "../support/chromium.mjs";
import { complaints } from "../support/geometry.js";
import { freshFolder, slotwright } from "../support/recorder.js";
import { visit } from "./open.js";

const top = fileURLToPath(new URL("../..", import.meta.url));
const reading = readRecords(readData(join(top, "data")).map(({ file, bytes }) => ({ file, content: bytes })));
const { catalogue } = link(reading.records, { failed: reading.failed, today: "2026-01-01" });
const builds = ["saltmarsh-three-mode-skerry", "osk-three-mode-16t-c", "switched-skua-24-d1", "analyser-and-disk-switched"];

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await chromium.launch({ executablePath: ensureChromium(), args: [...launchArguments] });
  page = await browser.newPage();
});
afterAll(() => browser?.close());

function sheet(id: string): SheetPage {
  const result = sheetOf(catalogue, catalogue.builds.get(id)!);
  if (result.kind === "none") throw new Error(JSON.stringify(result.why));
  return result.page;
}

function figures(view: SheetPage): [string, Figure][] {
  const named = Object.entries(view).filter(([key, value]) => key.endsWith("Drawing") && value !== undefined) as [string, Figure][];
  return [...named, ...[...view.faces, ...view.pinDrawings].map((f): [string, Figure] => [f.title, f.figure])];
}

const style = ["tokens", "base", "frame", "pieces", "sheet", "print"]
  .map((name) => readFileSync(join(top, "templates", "style", `${name}.css`), "utf8"))
  .join("\n");

describe.each(builds)("the sheet of %s", (id) => {
  it("has no line through a label, no text on text, nothing over an edge", async () => {
    const found: string[] = [];
    const drawn = figures(sheet(id));
    expect(drawn.length).toBeGreaterThan(8);
    for (const [name, figure] of drawn)
      for (const svg of [figure.wide, figure.narrow]) {
        await page.setContent(`<!doctype html><meta charset="utf-8"><body style="margin:0">${svg}`);
        found.push(...(await complaints(page)).map((c) => `${name}: ${c}`));
      }
    expect(found).toEqual([]);
  });
});

describe("the headline sheet", () => {
  const html = () => sheetFile(sheet(builds[0]!), style);

  it("fits a phone and a sheet of A4 and Letter without running off to the right", async () => {
    await page.setContent(html());
    for (const [media, width] of [
      ["screen", 390],
      ["screen", 1200],
      ["print", 688],
      ["print", 710],
    ] as const) {
      await page.emulateMedia({ media });
      await page.setViewportSize({ width, height: 900 });
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth), `${media} ${width}`).toBeLessThanOrEqual(
        0,
      );
    }
    await page.emulateMedia({ media: "screen" });
  });

  it("prints the panel at full size and shows every box", async () => {
    await page.emulateMedia({ media: "print" });
    await page.setViewportSize({ width: 688, height: 900 });
    await page.setContent(html());
    const seen = await page.evaluate(() => {
      const panel = document.querySelector(".panel svg") as SVGSVGElement;
      const boxes = [...document.querySelectorAll(".box")].map((b) => b.getBoundingClientRect());
      return {
        mm: panel.getBoundingClientRect().width / (96 / 25.4),
        says: Number.parseFloat(panel.getAttribute("width") ?? ""),
        boxes: boxes.length,
        shown: boxes.filter((b) => b.width > 8 && b.height > 8).length,
      };
    });
    expect(seen.mm).toBeCloseTo(seen.says, 1);
    expect(seen.shown).toBe(seen.boxes);
    await page.emulateMedia({ media: "screen" });
  });

  it("has its type faces in it when it is written to a file, and asks for nothing", async () => {
    const folder = freshFolder();
    expect((await slotwright(["plan", builds[0]!, "--sheet", "sheet.html"], { folder })).err).toContain("Wrote sheet.html.");
    const { page: opened, context, wrong } = await visit(browser, pathToFileURL(folder).href, { viewport: { width: 1000, height: 800 } });
    await opened.goto(pathToFileURL(join(folder, "sheet.html")).href);
    const faces = await opened.evaluate(async () => {
      await document.fonts.ready;
      return [...document.fonts].filter((f) => f.status === "loaded" && f.family.includes("Bench")).map((f) => `${f.family} ${f.weight}`);
    });
    expect(faces.map((f) => f.replaceAll('"', "")).sort()).toEqual(["Bench Mono 400", "Bench Text 400", "Bench Text 600 700"]);
    expect(wrong).toEqual([]);
    await context.close();
  });

  it.each(["A4", "Letter"])("makes a bearable number of pages of %s", async (format) => {
    await page.emulateMedia({ media: "print" });
    await page.setContent(html());
    const pdf = await page.pdf({ format });
    const pages = pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
    expect(pages).toBeGreaterThan(5);
    expect(pages).toBeLessThan(10);
  });

  it("shows each drawing once on paper, and draws a face and its solder side once where they are the same picture", async () => {
    await page.emulateMedia({ media: "print" });
    await page.setViewportSize({ width: 688, height: 900 });
    await page.setContent(html());
    const shown = await page.$$eval(".drawing", (all) =>
      // What is looked up on a screen stays there.
      all
        .filter((d) => d.closest(".on-screen") === null)
        .map((d) => [...d.querySelectorAll("svg")].filter((s) => s.getBoundingClientRect().height > 0).length),
    );
    expect(new Set(shown)).toEqual(new Set([1]));
    const { faces } = sheet(builds[0]!);
    expect(faces.filter((f) => f.title.includes("solder side")).length).toBeGreaterThan(3);
    // No two faces of one half of one connector have their contacts in the same places.
    const pictures = faces.map(({ title, figure }) => {
      const half = /on the cable|on the board|in the panel/.exec(title)?.[0] ?? "";
      return `${title.slice(0, 2)} ${half} ${(figure.wide.match(/<text[^>]*>\d+</g) ?? []).join()}`;
    });
    expect(new Set(pictures).size).toBe(pictures.length);
    await page.emulateMedia({ media: "screen" });
  });
});
