// How much room the pages of a card and of a board take, on a laptop and on paper: what is not the answer is folded away.
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { files, read } from "../pages/site-folder.js";
import { builtSite } from "./built-site.js";

const { visitor, address } = builtSite();

/** The pages of a folder with the most on them. */
const longest = (folder: string, count: number) =>
  files
    .filter((f) => f.startsWith(`${folder}/`) && f.endsWith(".html") && f !== join(folder, "index.html"))
    .sort((a, b) => read(b).length - read(a).length)
    .slice(0, count);

describe.each([
  ["cards", 3, 3000, 4],
  ["boards", 2, 2400, 5],
] as const)("the longest of the %s", (folder, count, high, sheets) => {
  it.each(longest(folder, count))(`%s is under ${high} px on a laptop and takes at most ${sheets} sheets`, async (name) => {
    const { page, context, wrong } = await visitor({ viewport: { width: 1280, height: 800 } });
    await page.goto(`${address()}/${name}`, { waitUntil: "load" });
    await page.evaluate(() => document.fonts.ready);
    expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThan(high);
    const pdf = await page.pdf({ format: "A4" });
    expect(pdf.toString("latin1").match(/\/Type \/Page\b/g)!.length).toBeLessThanOrEqual(sheets);
    await page.emulateMedia({ media: "print" });
    const foot = page.locator(".on-paper");
    expect(await foot.isVisible()).toBe(true);
    expect(await foot.textContent()).toMatch(/results up to \d{4}-\d\d-\d\d\. +Printed \d{4}-\d\d-\d\d from http/);
    expect(await foot.textContent()).toContain(`/${name}`);
    expect(wrong).toEqual([]);
    await context.close();
  });
});

it("opens what is folded away when a link leads into it", async () => {
  const { page, context } = await visitor({ viewport: { width: 1280, height: 800 } });
  await page.goto(`${address()}/cards/gannet-fixed-disk-controller.html`, { waitUntil: "load" });
  expect(await page.locator("#settings").isVisible()).toBe(false);
  await page.goto(`${address()}/cards/gannet-fixed-disk-controller.html#settings`, { waitUntil: "load" });
  await page.locator("#settings").waitFor({ state: "visible" });
  expect(await page.locator("#claims").isVisible()).toBe(false);
  await context.close();
});
