// The planner on a machine as large as they come, in a browser four times slower than this one: it reacts at once whatever is being worked
// out, and it answers soon. The site is the built one; only its records are another club's.
import { cpSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Locator } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { addressOf } from "../../src/machine/address.js";
import { largeMachine } from "../bench/large-machine.js";
import { siteFolder } from "../pages/site-folder.js";
import { traceMainThread } from "./main-thread.js";
import { replied as answered, startBrowser, visit } from "./open.js";
import { serveFolder } from "./serve.mjs";

let browser: Browser;
let site: Awaited<ReturnType<typeof serveFolder>>;
const folder = mkdtempSync(join(tmpdir(), "slotwright-large-"));
const { records, build } = largeMachine(1);
beforeAll(async () => {
  cpSync(join(siteFolder, "assets"), join(folder, "assets"), { recursive: true });
  for (const name of ["planner.html", "offline.js"]) cpSync(join(siteFolder, name), join(folder, name));
  cpSync(join(siteFolder, "offline"), join(folder, "offline"), { recursive: true });
  cpSync(join(siteFolder, "data", "planner.pack"), join(folder, "data", "planner.pack"));
  writeFileSync(join(folder, "data", "planner.pack"), JSON.stringify({ records, unread: [], errors: [] }));
  site = await serveFolder(folder);
  browser = await startBrowser();
});
afterAll(async () => {
  await browser?.close();
  site?.close();
  rmSync(folder, { recursive: true, force: true });
});

interface Took {
  readonly what: string;
  readonly ms: number;
}

const p95 = (all: readonly Took[]) => [...all].sort((a, b) => a.ms - b.ms)[Math.ceil(all.length * 0.95) - 1]!.ms;
const listed = (all: readonly Took[]) =>
  [...all]
    .sort((a, b) => b.ms - a.ms)
    .map(({ what, ms }) => `${what} ${ms}`)
    .join(", ");

/** Opens the large build with an ear for how long each interaction takes until the next paint. */
async function open(width: number, quiet = false) {
  const { page, context } = await visit(browser, site.address, { viewport: { width, height: 800 }, serviceWorkers: "block" });
  await page.addInitScript(() => {
    const w = window as unknown as { what: string; times: Map<number, { what: string; ms: number }> };
    w.times = new Map();
    w.what = "before";
    new PerformanceObserver((list) => {
      for (const e of list.getEntries() as unknown as { interactionId: number; duration: number }[]) {
        const before = w.times.get(e.interactionId);
        if (e.interactionId) w.times.set(e.interactionId, { what: before?.what ?? w.what, ms: Math.max(before?.ms ?? 0, e.duration) });
      }
    }).observe({ type: "event", buffered: true, durationThreshold: 16 } as PerformanceObserverInit);
  });
  await page.goto(`${site.address}/planner.html#${addressOf(build)}`);
  await answered(page);
  const slow = await context.newCDPSession(page);
  const made: string[] = [];
  const loops: number[] = [];
  /** A loop of always the same length: how much longer it takes than at best is what other work on the machine costs. */
  const loop = () =>
    page.evaluate(() => {
      const from = performance.now();
      let sum = 0;
      for (let i = 0; i < 15_000_000; i += 1) sum += i % 7;
      return sum > 0 ? performance.now() - from : 0;
    });
  const doing = async (what: string, act: () => Promise<unknown>, times = 1) => {
    await page.evaluate((now) => {
      (window as unknown as { what: string }).what = now;
      console.timeStamp(now);
    }, what);
    await act();
    for (let i = 0; i < times; i += 1) made.push(what);
    await page.waitForTimeout(150);
    if (!quiet) loops.push(await loop());
    await page.waitForTimeout(50);
  };
  const tap = (what: string, target: Locator) => doing(what, () => target.click());
  const slower = async (rate: number) => {
    await slow.send("Emulation.setCPUThrottlingRate", { rate });
    for (let i = 0; i < 8; i += 1) await loop();
  };
  /** How many times slower than at best the machine was meanwhile, by the middle one of the loops. */
  const disturbed = () => {
    const sorted = [...loops].sort((a, b) => a - b);
    return sorted[Math.floor(sorted.length / 2)]! / sorted[0]!;
  };
  const times = async (): Promise<Took[]> => {
    await page.waitForTimeout(400);
    const told = await page.evaluate(() => [...(window as unknown as { times: Map<number, Took> }).times.values()]);
    // Interactions quicker than 16 ms are not reported; they count as such.
    return [...told, ...made.slice(told.length).map((): Took => ({ what: "unreported", ms: 16 }))];
  };
  return { page, context, session: slow, tap, doing, slower, times, disturbed };
}

/** What an owner does with such a machine: pins and un-pins, cards in and out, kinds of way, reasons, choices taken back in any order. */
async function play({ page, tap, doing }: Awaited<ReturnType<typeof open>>) {
  const choose = (id: string, at: number) => page.locator(`input[name="choice-${id}"]`).nth(at);
  const field = page.getByRole("combobox", { name: "Add a card" });
  const add = async (typed: string) => {
    await tap("the field", field);
    for (const key of typed) await doing("typing", () => field.press(key));
    await doing("down", () => field.press("ArrowDown"));
    await doing("add", () => field.press("Enter"));
  };
  for (const at of ["A", "C", "A", "C"]) await tap("revision", page.locator(`#choice-revision-${at}`));
  await answered(page);
  for (const at of [3, 1, 0]) await tap("memory", choose("memory", at));
  for (const at of [10, 12, 0]) await tap("firmware", choose("firmware:always", at));
  await answered(page);
  for (const i of [0, 3, 7]) await tap("a card's choices", page.locator("#cards .card summary").nth(i));
  for (const at of [7, 12, 0]) await tap("slot", choose("slot:card-1", at));
  await answered(page);
  for (const at of [1, 0]) await tap("setting", choose("setting:card-4:J1", at));
  await answered(page);
  await add("19");
  await answered(page);
  await tap("take out", page.getByRole("button", { name: "Take out Card 7 disk", exact: true }));
  await tap("I have it", page.getByRole("checkbox", { name: /^I have it\s*Card 3 / }));
  await add("n 20");
  for (const i of [1, 2]) await tap("a way", page.locator("#ways .way > details > summary").nth(i));
  for (const i of [0, 1]) await tap("compare", page.locator("#ways .acts .pick").nth(i));
  await answered(page);
  await tap("take this way", page.getByRole("button", { name: "Take this combination 1", exact: true }));
  await answered(page);
  const back = page.locator(".said button");
  for (let left = await back.count(); left > 2; left -= 1) {
    await expect.poll(() => back.count()).toBe(left);
    await tap("take back", back.nth(Math.floor(left / 2)));
  }
  await answered(page);
}

describe("a machine of 20 slots, 20 cards, 30 versions and 200 known problems", () => {
  // By the clock in the long run alone: it takes a machine with nothing else to do.
  it.each(process.env.LONG ? [360, 1280] : [])(
    "reacts within 100 ms, 95 times in 100, at %d pixels on a processor four times slower",
    async (width) => {
      const opened = await open(width);
      await opened.slower(4);
      await play(opened);
      const all = await opened.times();
      const busy = opened.disturbed();
      console.log(
        `${width} pixels: p95 ${p95(all)} ms of ${all.length}, machine ${busy.toFixed(1)} times slower than at best: ${listed(all)}`,
      );
      expect(all.length).toBeGreaterThanOrEqual(35);
      // With cores to spare the clock must show it. Where the workers and the painting share two cores with the page, or others keep the
      // machine busy, the figure is theirs as well; then the one in processor time below has to do.
      if (busy < 1.25) expect(p95(all), listed(all)).toBeLessThan(100);
      await opened.context.close();
    },
  );

  it.each(process.env.LONG ? [360, 1280] : [360])(
    "is never held up for 100 ms of such a processor's time, 95 times in 100, at %d pixels",
    async (width) => {
      // Other work on the machine can only add to the page's processor time (it empties its caches), so the least of three plays counts.
      let least: readonly Took[] = [];
      for (let plays = 0; plays < 3 && (plays === 0 || p95(least) >= 100); plays += 1) {
        const opened = await open(width, true);
        const trace = await traceMainThread(opened.session);
        await play(opened);
        const all = (await trace.end()).map(({ what, ms }): Took => ({ what, ms: Math.round(ms * 4) }));
        console.log(`${width} pixels, processor time times four: p95 ${p95(all)} ms of ${all.length}: ${listed(all)}`);
        expect(all.length).toBeGreaterThanOrEqual(35);
        if (plays === 0 || p95(all) < p95(least)) least = all;
        await opened.context.close();
      }
      expect(p95(least), listed(least)).toBeLessThan(100);
    },
  );

  it("is answered before all is counted, and goes on counting", async () => {
    const { page, context } = await open(1280);
    for (const at of ["A", "B", "A", "B"]) {
      await page.locator(`#choice-revision-${at}`).click();
      await answered(page);
    }
    expect(await page.locator("#answer .says").textContent()).toMatch(/^Yes, it works/);
    // What could not be counted at once is counted on, told, and given up honestly when the time is over.
    expect(await page.locator("#answer .sure").textContent()).toMatch(/At least [\d,]+ combinations work.*Still counting\./);
    await page.locator("#answer .now[data-counted]").waitFor();
    expect(await page.locator("#answer .sure").textContent()).toMatch(/combinations work\.(?!.*Still counting)/);
    await context.close();
  });
});
