// The build sheets of the demo club's switched machines in a real browser: every drawing clean at both widths,
// and the page on paper: page numbers, nothing wider than the sheet, the panel at its true size.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { link } from "../../src/catalogue/index.js";
import { readData } from "../../src/cli/folders.js";
import { readRecords } from "../../src/records/index.js";
import { type Figure, type SheetPage, sheetFile, sheetOf } from "../../src/site/index.js";
import { ensureChromium, launchArguments } from "../support/chromium.mjs";
import { complaints } from "../support/geometry.js";

const top = fileURLToPath(new URL("../..", import.meta.url));
const reading = readRecords(readData(join(top, "data")).map(({ file, bytes }) => ({ file, content: bytes })));
const { catalogue } = link(reading.records, { failed: reading.failed, today: "2026-01-01" });
const builds = ["saltmarsh-three-mode-skerry", "osk-three-mode-16t-c", "switched-skua-24-d1"];

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

  it("makes a PDF of a bearable number of pages", async () => {
    await page.emulateMedia({ media: "print" });
    await page.setContent(html());
    const pdf = await page.pdf({ format: "A4", preferCSSPageSize: true });
    const pages = pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
    expect(pages).toBeGreaterThan(5);
    expect(pages).toBeLessThan(30);
  });
});
