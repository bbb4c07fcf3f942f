// The build sheet on paper, in a real browser: how many pages of A4 it takes, what stands on the first, one scale and readable letters in
// all drawings, nothing wider than the paper, nothing to do that stands only at the end.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type SheetPage, sheetOf } from "../../src/pages/index.js";
import { sheetFile } from "../../src/publish/index.js";
import type { Build } from "../../src/records/index.js";
import { ensureChromium, launchArguments } from "../support/chromium.mjs";
import { demo } from "../support/demo.js";

const top = fileURLToPath(new URL("../..", import.meta.url));
const style = ["tokens", "base", "frame", "pieces", "sheet", "print"]
  .map((name) => readFileSync(join(top, "templates", "style", `${name}.css`), "utf8"))
  .join("\n");
const headline = demo().builds.get("saltmarsh-three-mode-skerry")!;
const cards = headline.cards!.map((c) => c.card!);

/** The headline's machine run in six ways. */
const sixModes: Build = {
  ...headline,
  id: "six-modes",
  name: "Six modes",
  modes: [
    ...headline.modes!,
    { id: "bare", name: "Nothing but the machine", firmware: "R6", cards: [] },
    { id: "old", name: "Nothing on the old firmware", firmware: "R4A", cards: [] },
    { id: "read", name: "Tapes alone", firmware: "R5.1", cards: [cards[2]!] },
  ],
};

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await chromium.launch({ executablePath: ensureChromium(), args: [...launchArguments] });
  page = await browser.newPage();
});
afterAll(() => browser?.close());

function sheet(build: Build): SheetPage {
  const result = sheetOf(demo(), build);
  if (result.kind === "none") throw new Error(JSON.stringify(result.why));
  return result.page;
}

async function onPaper(build: Build): Promise<SheetPage> {
  const view = sheet(build);
  await page.emulateMedia({ media: "print" });
  await page.setViewportSize({ width: 688, height: 1000 });
  await page.setContent(sheetFile(view, style));
  return view;
}

async function pages(format: string): Promise<number> {
  const pdf = await page.pdf({ format });
  return pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}

describe.each([
  [headline, 8],
  [sixModes, 14],
] as const)("the sheet on paper", (build, most) => {
  it(`of ${build.modes!.length} modes takes at most ${most} pages of A4, none of them made smaller to fit`, async () => {
    await onPaper(build);
    // A browser shrinks a page whose content is too wide; then what is counted is not what is read.
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(688);
    const taken = await pages("A4");
    expect(taken).toBeGreaterThan(4);
    expect(taken).toBeLessThanOrEqual(most);
  });

  it("draws everything but the panel in one scale, with small letters of more than 2 mm", async () => {
    await onPaper(build);
    const drawn = await page.evaluate(() =>
      [...document.querySelectorAll<SVGSVGElement>(".drawing svg")]
        .filter((svg) => svg.getBoundingClientRect().height > 0)
        .map((svg) => ({
          scale: svg.getBoundingClientRect().width / svg.viewBox.baseVal.width,
          least: Math.min(...[...svg.querySelectorAll("text")].map((t) => Number(t.getAttribute("font-size")))),
        })),
    );
    expect(drawn.length).toBeGreaterThan(5);
    for (const { scale, least } of drawn) {
      expect(scale).toBeCloseTo(drawn[0]!.scale, 2);
      // Capitals stand 0.72 of the size of their type high.
      expect((scale * least * 0.72 * 25.4) / 96).toBeGreaterThan(2);
    }
  });
});

describe("the first page", () => {
  it("is the machine: solder side, positions, banks with the device's checksum, order of work, three cautions", async () => {
    const view = await onPaper(headline);
    // A page of A4 without its margins, in CSS pixels.
    const high = ((297 - 24) * 96) / 25.4;
    const ends = await page.evaluate(() =>
      Object.fromEntries(
        ["switch", "burn", "order", "cautions", "parts"].map((id) => [id, document.getElementById(id)!.getBoundingClientRect().bottom]),
      ),
    );
    for (const id of ["switch", "burn", "order", "cautions"]) expect(ends[id], id).toBeLessThan(high);
    expect(view.sheet.order.length).toBeGreaterThan(8);
    expect(view.sheet.order.length).toBeLessThan(13);
    expect(view.sheet.today).toHaveLength(3);
    expect(view.sheet.burn!.checksum).toMatch(/^[0-9a-f]{8}$/);
    const words = await page.textContent(".dw-back desc");
    for (const wire of view.sheet.wires)
      for (const end of [wire.from, wire.to]) {
        const terminal = /^switch (.*)/.exec(end)?.[1];
        if (terminal !== undefined)
          expect(words).toMatch(new RegExp(`${terminal.replace(".", "[.]")}(?: \\(common\\))?: wire [\\d, ]*\\b${wire.number}\\b`));
      }
  });

  it("has every caution, there or at the end, and nothing to do under what it rests on", async () => {
    const view = await onPaper(headline);
    const shown = await page.$$eval(".caution strong", (all) =>
      all.filter((e) => e.getBoundingClientRect().height > 0).map((e) => e.textContent),
    );
    expect(shown).toHaveLength(view.sheet.cautions.length);
    const rests = await page.textContent("#evidence");
    expect(rests).not.toMatch(/Set the stop|plug pulled|Use single wires/);
    expect(await page.textContent("#order")).toContain("With the plug pulled");
  });

  it("leaves the whole table of faults to the screen, and has some fifteen rows of where to look", async () => {
    const view = await onPaper(headline);
    expect(await page.$eval("#faults", (e) => e.getBoundingClientRect().height)).toBe(0);
    const rows = await page.$$eval("#finding tbody tr", (all) => all.filter((e) => e.getBoundingClientRect().height > 0).length);
    expect(rows).toBe(view.sheet.finding!.meter.length + view.sheet.finding!.firmware.length);
    expect(rows).toBeGreaterThan(10);
    expect(rows).toBeLessThan(19);
  });
});
