// The matrix of a club that has grown: 40 cards under 20 versions, read on a desk, on a phone and on paper.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { siteFolder } from "../pages/site-folder.js";
import { type Opened, startBrowser, visit } from "./open.js";
import { serveFolder } from "./serve.mjs";

const top = fileURLToPath(new URL("../..", import.meta.url));
const path = "matrix/board-1--a.html";
let folder: string;
let site: string;
let server: { address: string; close: () => void };
let browser: Browser;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "slotwright-large-"));
  site = join(folder, "site");
  execFileSync(process.execPath, [join(top, "test", "publish", "make-large.mjs"), site], { stdio: "pipe" });
  server = await serveFolder(site);
  browser = await startBrowser();
});
afterAll(async () => {
  await browser?.close();
  server?.close();
  rmSync(folder, { recursive: true, force: true });
});

async function open(width: number, height: number): Promise<Opened> {
  const opened = await visit(browser, server.address, { viewport: { width, height } });
  await opened.page.goto(`${server.address}/${path}`, { waitUntil: "load" });
  await opened.page.evaluate(() => document.fonts.ready);
  return opened;
}

/** Each pair of these that lie on each other. */
function overlaps(page: Page, what: string): Promise<string[]> {
  return page.evaluate((selector) => {
    const boxes = [...document.querySelectorAll(selector)].map((e) => ({ e, b: e.getBoundingClientRect() })).filter(({ b }) => b.width > 0);
    return boxes.flatMap((one, i) =>
      boxes
        .slice(i + 1)
        .filter(
          ({ b }) => b.left < one.b.right - 0.5 && one.b.left < b.right - 0.5 && b.top < one.b.bottom - 0.5 && one.b.top < b.bottom - 0.5,
        )
        .map((other) => `${one.e.textContent} on ${other.e.textContent}`),
    );
  }, what);
}

it("weighs less than 60 KB with its style, and has all 800 cells", async () => {
  const weight = [path, "assets/site.css"].reduce((sum, name) => sum + gzipSync(readFileSync(join(site, name)), { level: 9 }).length, 0);
  expect(weight).toBeLessThan(60_000);
  const { page, context } = await open(1280, 800);
  expect(await page.locator(".matrix td[data-verdict]").count()).toBe(800);
  await context.close();
});

describe.each([
  [1280, 800],
  [768, 900],
])("on a page %i px wide", (width, height) => {
  it("keeps heads and legend in sight while the page is moved, with no box that moves by itself", async () => {
    const { page, context, wrong } = await open(width, height);
    for (const part of [0.3, 0.6, 0.9]) {
      const seen = await page.evaluate((part) => {
        const table = document.querySelector(".matrix")!.getBoundingClientRect();
        scrollTo(0, table.top + scrollY + table.height * part - innerHeight / 2);
        const onTop = (e: Element) => {
          const b = e.getBoundingClientRect();
          return e.contains(document.elementFromPoint(b.left + b.width / 2, b.top + b.height / 2));
        };
        const inside = (e: Element) => {
          const b = e.getBoundingClientRect();
          return b.left >= 0 && b.right <= innerWidth && b.top >= 0 && b.bottom <= innerHeight;
        };
        const heads = [...document.querySelectorAll(".matrix thead a")];
        const legend = [...document.querySelectorAll(".ink-legend li")];
        return {
          heads: heads.length,
          hidden: [...heads, ...legend].filter((e) => !inside(e) || !onTop(e)).map((e) => e.textContent),
          boxes: [...document.querySelectorAll("main *")].filter((e) => /auto|scroll/.test(getComputedStyle(e).overflowY)).length,
          page: document.documentElement.scrollWidth - innerWidth,
        };
      }, part);
      expect(seen).toEqual({ heads: 20, hidden: [], boxes: 0, page: 0 });
    }
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("has bars and heads large enough to read and to hit, none on another", async () => {
    const { page, context } = await open(width, height);
    const small = await page.evaluate(() => {
      const at = (e: Element) => e.getBoundingClientRect();
      const says = (e: Element) => `${e.tagName} ${e.textContent?.trim()} ${at(e).width} x ${at(e).height}`;
      return [
        ...[...document.querySelectorAll(".matrix td .ink")].filter((e) => at(e).height < 14),
        // A row is 24 px with the line under it.
        ...[...document.querySelectorAll(".matrix tr.card")].filter((e) => at(e).height < 23),
        ...[...document.querySelectorAll(".matrix td a, .matrix thead a")].filter((e) => at(e).height < 23 || at(e).width < 20),
        ...[...document.querySelectorAll(".matrix tbody th a")].filter((e) => Number.parseFloat(getComputedStyle(e).fontSize) < 15),
        ...[...document.querySelectorAll(".matrix thead code")].filter((e) => Number.parseFloat(getComputedStyle(e).fontSize) < 14),
      ].map(says);
    });
    expect(small).toEqual([]);
    expect(await overlaps(page, ".matrix thead code")).toEqual([]);
    expect(await overlaps(page, ".matrix tr.card:nth-child(-n+6) td > a")).toEqual([]);
    await context.close();
  });
});

it("shows all 20 versions side by side on a page of 1280 px", async () => {
  const { page, context } = await open(1280, 800);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
  const heads = await page.$$eval(".matrix thead code", (all) => all.map((e) => e.getBoundingClientRect().top));
  expect(heads).toHaveLength(20);
  expect(new Set(heads).size).toBe(1);
  await context.close();
});

it.each([
  [360, 740],
  [1280, 800],
])(
  "is narrowed, at %i px, to cards with one cell that has all that is asked for, for little more than the table is laid out for",
  async (width, height) => {
    const { page, context, wrong } = await open(width, height);
    const slow = await context.newCDPSession(page);
    await slow.send("Emulation.setCPUThrottlingRate", { rate: 4 });
    const answers = await page.evaluate(async () => {
      const form = document.querySelector<HTMLFormElement>("form.filters")!;
      const rows = [...document.querySelectorAll<HTMLElement>(".matrix tr.card")];
      const words = (name: string) => [...form.querySelectorAll<HTMLOptionElement>(`select[name=${name}] option`)].map((o) => o.value);
      const set = (name: string, value: string) => {
        form.querySelector<HTMLSelectElement | HTMLInputElement>(`[name=${name}]`)!.value = value;
      };
      const out: { asked: string; wrong: number; shown: number; said: string; times: number }[] = [];
      let known = 0;
      for (const verdict of words("verdict"))
        for (const evidence of words("evidence"))
          for (const named of ["", "1"]) {
            set("verdict", verdict);
            set("evidence", evidence);
            set("name", named);
            // A known piece of work beside it, at the same speed: every row taken away and put back, each time laid out.
            const before = performance.now();
            for (const hidden of [true, false]) {
              for (const row of rows) row.hidden = hidden;
              known += document.body.offsetHeight;
            }
            const layouts = performance.now() - before;
            const from = performance.now();
            form.dispatchEvent(new Event("input", { bubbles: true }));
            const height = document.body.offsetHeight;
            const ms = height > 0 ? performance.now() - from : 0;
            // Once more from what is drawn: the words of each cell.
            const word = (select: string, value: string) =>
              value === "" ? "" : form.querySelector(`select[name=${select}] option[value="${value}"]`)!.textContent!;
            const expected = (row: HTMLElement) =>
              [...row.querySelectorAll("td[data-verdict] .words")].some((cell) => {
                const [v, e = ""] = cell
                  .lastChild!.textContent!.trim()
                  .replace(/; note [a-z]$/, "")
                  .split(", ");
                return (verdict === "" || v === word("verdict", verdict)) && (evidence === "" || e === word("evidence", evidence));
              }) &&
              (named === "" || /1/.test(row.querySelector("th a")!.textContent!));
            out.push({
              asked: `${verdict} ${evidence} ${named}`,
              wrong: rows.filter((row) => expected(row) === row.hidden).length,
              shown: rows.filter((row) => !row.hidden).length,
              said: form.querySelector("output")!.textContent!,
              times: ms / Math.max(0.1, layouts),
            });
          }
      return known > 0 ? out : [];
    });
    expect(answers.filter((a) => a.wrong > 0)).toEqual([]);
    expect(new Set(answers.map((a) => a.shown)).size).toBeGreaterThan(5);
    for (const { shown, said } of answers) expect(said).toBe(shown === 40 ? "All 40 cards" : `${shown} of 40 cards`);
    // The middle one costs at most three times what taking every row away and putting it back does, on any machine and under any load.
    const times = answers.map((a) => a.times).sort((a, b) => a - b);
    expect(times[Math.floor(times.length / 2)]).toBeLessThan(3);
    expect(wrong).toEqual([]);
    await context.close();
  },
);

it("is a list by card on a phone: words beside the name, the bar as wide as the page, the whole row its link", async () => {
  const { page, context } = await open(360, 740);
  const found = await page.$$eval(".matrix tr.card", (rows) =>
    rows.map((row) => {
      const box = row.getBoundingClientRect();
      row.scrollIntoView({ block: "center" });
      const at = row.getBoundingClientRect();
      const hit = document.elementFromPoint(at.left + at.width * 0.7, at.bottom - 12);
      const ink = [...row.querySelectorAll(".ink")].map((e) => e.getBoundingClientRect());
      return {
        tall: box.height,
        bar: ink.at(-1)!.right - ink[0]!.left,
        lines: new Set(ink.filter((b) => b.height > 5).map((b) => b.top)).size,
        link: row.querySelector("th")!.contains(hit),
        said: row.querySelector(".said")!.textContent,
        releases: [...row.querySelectorAll("td .words code")].map((c) => c.textContent),
      };
    }),
  );
  expect(found).toHaveLength(40);
  const order = await page.$$eval(".matrix thead code", (c) => c.map((e) => e.textContent!));
  expect(order).toHaveLength(20);
  for (const row of found) {
    expect(row).toMatchObject({ lines: 1, link: true, releases: order });
    expect(row.tall).toBeGreaterThanOrEqual(44);
    expect(row.bar).toBeGreaterThan(300);
    expect(row.said).toMatch(/\S/);
  }
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
  await context.close();
});

it("prints turned, with nothing cut on A4 or Letter, heads on every page, and says what it was narrowed to", async () => {
  const { page, context } = await open(1280, 800);
  const pdf = await page.pdf({ preferCSSPageSize: true });
  const [, wide, tall] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf.toString("latin1")) ?? [];
  expect(Number(wide)).toBeGreaterThan(Number(tall));
  await page.click(".filters summary");
  await page.selectOption("select[name=verdict]", "works");
  await page.emulateMedia({ media: "print" });
  // Millimetres of the turned sheet between its margins of 10 mm.
  for (const mm of [297 - 20, 279.4 - 20]) {
    await page.setViewportSize({ width: Math.floor((mm / 25.4) * 96), height: 700 });
    const seen = await page.evaluate(() => ({
      over: document.documentElement.scrollWidth - innerWidth,
      table: document.querySelector(".matrix")!.getBoundingClientRect().right - innerWidth,
      head: getComputedStyle(document.querySelector(".matrix thead")!).display,
      said: getComputedStyle(document.querySelector("section.sides")!, "::before").content,
      small: [...document.querySelectorAll(".matrix tr.card:not([hidden]) .ink")].filter((e) => e.getBoundingClientRect().height < 11)
        .length,
    }));
    expect(seen).toMatchObject({ over: 0, head: "table-header-group", small: 0 });
    expect(seen.table).toBeLessThanOrEqual(0);
    expect(seen.said).toMatch(/^"Only: works\. \d+ of 40 cards\."$/);
    expect(await overlaps(page, ".matrix thead code")).toEqual([]);
    expect(await overlaps(page, ".matrix tr.card:nth-child(-n+6) .ink")).toEqual([]);
  }
  await context.close();
});

describe("of the demo club, 50 cards", () => {
  it("has 40 rows in sight on a page of 1280 x 800, and stands on one sheet of paper", async () => {
    const demo = await serveFolder(siteFolder);
    const { page, context } = await visit(browser, demo.address, { viewport: { width: 1280, height: 800 } });
    await page.goto(`${demo.address}/matrix/skerry-16t--d1.html`, { waitUntil: "load" });
    await page.evaluate(() => document.fonts.ready);
    const seen = await page.evaluate(() => {
      scrollTo(0, document.querySelector(".ink-legend")!.getBoundingClientRect().top + scrollY);
      const free = document.querySelector(".matrix thead")!.getBoundingClientRect().bottom;
      const all = [...document.querySelectorAll("tr.card")].map((e) => e.getBoundingClientRect());
      return { all: all.length, rows: all.filter((b) => b.top >= free - 1 && b.bottom <= innerHeight).length };
    });
    expect(seen.all).toBe(50);
    expect(seen.rows).toBeGreaterThanOrEqual(40);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    expect(pdf.toString("latin1").match(/\/Type \/Page\b/g)).toHaveLength(1);
    await context.close();
    demo.close();
  });

  it("is under 3,500 px on a phone, keeps the scale in sight, and finds a card by a word of it", async () => {
    const demo = await serveFolder(siteFolder);
    const { page, context } = await visit(browser, demo.address, { viewport: { width: 360, height: 740 } });
    await page.goto(`${demo.address}/matrix/skerry-16t--d1.html`, { waitUntil: "load" });
    await page.evaluate(() => document.fonts.ready);
    expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThan(3500);
    const scale = await page.evaluate(() => {
      scrollTo(0, 1400);
      return [...document.querySelectorAll(".matrix thead")].map((e) => e.getBoundingClientRect()).filter((b) => b.top >= 0 && b.top < 5)
        .length;
    });
    expect(scale).toBe(1);
    await page.getByLabel("Find a card").fill("tape");
    const left = await page.$$eval("tr.card", (rows) =>
      rows.filter((r) => r.getBoundingClientRect().height > 0).map((r) => r.textContent!),
    );
    expect(left.length).toBeGreaterThan(2);
    expect(await page.locator("tr.purpose:visible").count()).toBeLessThan(4);
    expect(await page.textContent(".filters output")).toBe(`${left.length} of 50 cards`);
    await context.close();
    demo.close();
  });
});
