// The matrix of a club that has grown: 40 cards under 20 versions, read on a desk, on a phone and on paper.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
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
  expect(await page.locator(".matrix tbody td").count()).toBe(800);
  await context.close();
});

describe.each([
  [1280, 800],
  [768, 900],
])("on a page %i px wide", (width, height) => {
  it("keeps heads, names and legend in sight, however far it is moved", async () => {
    const { page, context, wrong } = await open(width, height);
    for (const [down, aside, within] of [
      [0, 0, 0],
      [500, 200, 900],
      [9999, 9999, 9999],
    ] as const) {
      const seen = await page.evaluate(
        ([y, gridX, gridY]) => {
          scrollTo(0, Math.max(y, document.querySelector(".legend")!.getBoundingClientRect().top + scrollY));
          const grid = document.querySelector("section.grid")!;
          grid.scrollTo(gridX, gridY);
          const field = grid.getBoundingClientRect();
          const onTop = (e: Element) => {
            const b = e.getBoundingClientRect();
            return e.contains(document.elementFromPoint(b.left + b.width / 2, b.top + b.height / 2));
          };
          const inside = (e: Element) => {
            const b = e.getBoundingClientRect();
            return b.left >= 0 && b.right <= innerWidth && b.top >= 0 && b.bottom <= innerHeight;
          };
          const corner = document.querySelector(".matrix thead th")!.getBoundingClientRect();
          const between = (e: Element) => {
            const b = e.getBoundingClientRect();
            return b.left >= corner.right && b.right <= field.right;
          };
          const heads = [...document.querySelectorAll(".matrix thead tr:last-child a")].filter(between);
          const names = [...document.querySelectorAll(".matrix tbody th > a")].filter((e) => {
            const b = e.getBoundingClientRect();
            return b.top >= corner.bottom && b.bottom <= field.bottom;
          });
          return {
            heads: heads.length,
            names: names.length,
            hidden: [...heads, ...names].filter((e) => !inside(e) || !onTop(e)).map((e) => e.textContent),
            legend: inside(document.querySelector(".legend")!) && onTop(document.querySelector(".legend li")!),
            page: document.documentElement.scrollWidth - innerWidth,
          };
        },
        [down, aside, within] as const,
      );
      expect(seen.heads).toBeGreaterThan(7);
      expect(seen.names).toBeGreaterThan(5);
      expect(seen).toMatchObject({ hidden: [], legend: true });
      expect(seen.page).toBeLessThanOrEqual(0);
    }
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("has marks and heads large enough to read and to hit, none on another", async () => {
    const { page, context } = await open(width, height);
    const small = await page.evaluate(() => {
      const at = (e: Element) => e.getBoundingClientRect();
      const says = (e: Element) => `${e.tagName} ${e.textContent?.trim()}`;
      return [
        ...[...document.querySelectorAll(".matrix td svg")].filter((e) => at(e).height < 14 || at(e).width < 21),
        ...[...document.querySelectorAll(".matrix td a")].filter((e) => at(e).height < 44 || at(e).width < 44),
        ...[...document.querySelectorAll(".matrix th a, .matrix th code")].filter(
          (e) => Number.parseFloat(getComputedStyle(e).fontSize) < 15,
        ),
      ].map(says);
    });
    expect(small).toEqual([]);
    expect(await overlaps(page, ".matrix thead code, .matrix thead tr:first-child a")).toEqual([]);
    expect(await overlaps(page, ".matrix tbody tr:nth-child(-n+6) :is(td, th) > a")).toEqual([]);
    await context.close();
  });
});

it("shows all 20 versions side by side on a page of 1280 px", async () => {
  const { page, context } = await open(1280, 800);
  expect(
    await page.evaluate(() => document.querySelector("section.grid")!.scrollWidth - document.querySelector("section.grid")!.clientWidth),
  ).toBe(0);
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
      const rows = [...document.querySelectorAll<HTMLElement>(".matrix tbody tr")];
      const words = (name: string) => [...form.querySelectorAll<HTMLOptionElement>(`select[name=${name}] option`)].map((o) => o.value);
      const set = (name: string, value: string) => {
        form.querySelector<HTMLSelectElement>(`select[name=${name}]`)!.value = value;
      };
      const out: { asked: string; wrong: number; shown: number; said: string; times: number }[] = [];
      let known = 0;
      for (const verdict of words("verdict"))
        for (const evidence of words("evidence"))
          for (const kind of words("kind").slice(0, 2)) {
            set("verdict", verdict);
            set("evidence", evidence);
            set("kind", kind);
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
              [...row.querySelectorAll("td.run .words")].some((cell) => {
                const [v, e = ""] = cell.lastChild!.textContent!.trim().split(", ");
                return (verdict === "" || v === word("verdict", verdict)) && (evidence === "" || e === word("evidence", evidence));
              }) &&
              (kind === "" || row.dataset.does!.split(" ").includes(kind));
            out.push({
              asked: `${verdict} ${evidence} ${kind}`,
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

it("is a list by card on a phone: the line of releases as a bar, and every run of versions with its words", async () => {
  const { page, context } = await open(360, 740);
  const found = await page.evaluate(() => {
    /** What is set of a run: the code in sight, then its words. */
    const text = (a: Element) =>
      `${[...a.querySelectorAll("code")].find((c) => c.getBoundingClientRect().width > 0)?.textContent} ${a.querySelector(".words")!.lastChild!.textContent!.trim()}`;
    return [...document.querySelectorAll<HTMLElement>(".matrix tbody tr")].map((row) => ({
      bar: row.querySelector("svg.rb")!.getBoundingClientRect().width,
      shown: [...row.querySelectorAll("td a")]
        .filter((a) => a.getBoundingClientRect().height > 0)
        .map((a) => ({
          says: text(a),
          tall: a.getBoundingClientRect().height,
          size: Number.parseFloat(getComputedStyle(a).fontSize),
          right: a.getBoundingClientRect().right,
        })),
      versions: row.querySelectorAll("td").length,
    }));
  });
  const order = await page.$$eval(".matrix thead tr:last-child code", (c) => c.map((e) => e.textContent!));
  expect(order).toHaveLength(20);
  for (const row of found) {
    expect(row.bar).toBeGreaterThan(300);
    const covered = row.shown.flatMap(({ says }) => {
      const [, from, to] = /^(\S+)(?: to (\S+))? (?:works|no|not known)/.exec(says) ?? [];
      return order.slice(order.indexOf(from!), order.indexOf(to ?? from!) + 1);
    });
    expect(covered).toEqual(order);
    for (const a of row.shown) {
      expect(a.tall).toBeGreaterThanOrEqual(44);
      expect(a.size).toBeGreaterThanOrEqual(15);
      expect(a.right).toBeLessThanOrEqual(360);
    }
  }
  await context.close();
});

it("prints turned, with nothing cut on A4 or Letter, heads on every page, and says what it was narrowed to", async () => {
  const { page, context } = await open(1280, 800);
  const pdf = await page.pdf({ preferCSSPageSize: true });
  const [, wide, tall] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf.toString("latin1")) ?? [];
  expect(Number(wide)).toBeGreaterThan(Number(tall));
  await page.selectOption("select[name=verdict]", "works");
  await page.emulateMedia({ media: "print" });
  // Millimetres of the turned sheet between its margins of 10 mm.
  for (const mm of [297 - 20, 279.4 - 20]) {
    await page.setViewportSize({ width: Math.floor((mm / 25.4) * 96), height: 700 });
    const seen = await page.evaluate(() => ({
      over: document.documentElement.scrollWidth - innerWidth,
      table: document.querySelector(".matrix")!.getBoundingClientRect().right - innerWidth,
      head: getComputedStyle(document.querySelector(".matrix thead")!).display,
      said: getComputedStyle(document.querySelector("section.grid")!, "::before").content,
      small: [...document.querySelectorAll(".matrix td svg")].filter((e) => e.getBoundingClientRect().height < 14).length,
    }));
    expect(seen).toMatchObject({ over: 0, head: "table-header-group" });
    expect(seen.table).toBeLessThanOrEqual(0);
    expect(seen.said).toMatch(/^"Only: works\. \d+ of 40 cards\."$/);
    expect(await overlaps(page, ".matrix thead code")).toEqual([]);
    expect(await overlaps(page, ".matrix tbody tr:nth-child(-n+6) td svg")).toEqual([]);
  }
  await context.close();
});
