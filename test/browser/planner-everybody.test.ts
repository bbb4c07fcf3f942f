// The planner for everybody, in a real browser: by keyboard alone, by screen reader, on narrow screens, with a thumb, in both themes.
import { AxeBuilder } from "@axe-core/playwright";
import { describe, expect, it } from "vitest";
import { answered } from "./open.js";
import { plannerPages, tracerAndDisk } from "./planner-page.js";

const { open, planner } = plannerPages();
const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

describe("for everybody", () => {
  it("works by keyboard alone: board, card, reason, repair, answer", async () => {
    const { page, wrong, context } = await open();
    const focused = () =>
      page.evaluate(
        () =>
          document.activeElement?.textContent?.trim() ||
          (document.activeElement as HTMLInputElement | null)?.labels?.[0]?.textContent ||
          "",
      );
    await page.getByLabel("Skerry 16", { exact: true }).focus();
    await page.keyboard.press("ArrowDown");
    await answered(page);
    expect(page.url()).toContain("b=skerry-16t");
    for (let i = 0; i < 30 && (await page.evaluate(() => document.activeElement?.getAttribute("role"))) !== "combobox"; i += 1)
      await page.keyboard.press("Tab");
    for (const card of ["tallow", "gannet"]) {
      await page.keyboard.type(card);
      await page.keyboard.press("ArrowDown");
      expect(
        await page.evaluate(() =>
          document.getElementById(document.activeElement?.getAttribute("aria-activedescendant") ?? "")?.getAttribute("aria-selected"),
        ),
      ).toBe("true");
      await page.keyboard.press("Enter");
      await answered(page);
      expect(await page.evaluate(() => document.activeElement?.getAttribute("role"))).toBe("combobox");
    }
    for (let i = 0; i < 60 && !(await focused()).startsWith("Two ways and one switch"); i += 1) await page.keyboard.press("Tab");
    expect(await focused()).toMatch(/^Two ways and one switch/);
    await page.keyboard.press("Enter");
    await answered(page);
    expect(await page.locator("#answer .says").textContent()).toMatch(/^Yes/);
    // The button that was pressed is gone; the place is kept at the answer it led to.
    await page.waitForFunction(() => document.activeElement?.id === "answer-title");
    expect(wrong).toEqual([]);
    await context.close();
  });

  it("tells the answer to a screen reader once it is there", async () => {
    const { page, context } = await open("#b=skerry-16t&c=gannet-fixed-disk-controller");
    await answered(page);
    expect(await page.locator(".planner > [role=status][aria-live=polite]").textContent()).toMatch(/^Yes, it works.*combinations work\.$/s);
    await context.close();
  });

  const everywhere = ([360, 768, 1280] as const).flatMap((width) => (["light", "dark"] as const).map((theme) => [width, theme] as const));
  const once = [[360, "light"] as const, [1280, "dark"] as const];
  it.each(process.env.LONG ? everywhere : once)(
    "has no violation of WCAG 2.2 AA at %d pixels, %s, in any of its states",
    async (width, colorScheme) => {
      const { page, context } = await open("", { colorScheme, viewport: { width, height: 900 } });
      // The whole page in view: what is partly under the strip at the foot can be moved from under it.
      const whole = async () =>
        page.setViewportSize({ width, height: Math.max(900, await page.evaluate(() => document.documentElement.scrollHeight)) });
      const check = async (state: string) => {
        await whole();
        // The theme changes colours and nothing else, so only colours are judged again.
        const axe = new AxeBuilder({ page }).setLegacyMode();
        const { violations } = await (colorScheme === "light" ? axe.withTags(tags) : axe.withRules("color-contrast")).analyze();
        expect(violations.map((v) => `${state}: ${v.id} ${v.nodes.map((n) => n.target.join(" ")).join(", ")}`)).toEqual([]);
      };
      await check("empty");
      await page.goto(planner(tracerAndDisk));
      await answered(page);
      await check("impossible");
      await page.getByRole("combobox", { name: "Add a card" }).click();
      await check("offers");
      await page
        .getByRole("button", { name: /^Two ways and one switch/ })
        .first()
        .click();
      await answered(page);
      await page.locator("#cards details summary").first().click();
      await page.getByText("What you have at hand").click();
      await check("two modes");
      await page
        .getByRole("button", { name: /^Plan the switch/ })
        .first()
        .click();
      await page.waitForSelector("#faults");
      await check("sheet");
      await context.close();
    },
  );

  it.each(process.env.LONG ? [320, 360, 768, 1280] : [320, 1280])("never scrolls sideways at %d pixels", async (width) => {
    const { page, context } = await open(tracerAndDisk, { viewport: { width, height: 800 } });
    const wide = () => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    await answered(page);
    expect(await wide()).toBe(0);
    await page
      .getByRole("button", { name: /^Two ways and one switch/ })
      .first()
      .click();
    await answered(page);
    await page.locator("#cards details summary").first().click();
    await page.getByLabel("Compare combination 1", { exact: true }).check();
    await page.getByLabel("Compare combination 2", { exact: true }).check();
    expect(await wide()).toBe(0);
    await page
      .getByRole("button", { name: /^Plan the switch/ })
      .first()
      .click();
    await page.waitForSelector("#faults");
    expect(await wide()).toBe(0);
    await context.close();
  });

  it("gives everything that is tapped room for a thumb", async () => {
    const { page, context } = await open(tracerAndDisk);
    await answered(page);
    const small = await page.evaluate(() =>
      [
        ...document.querySelectorAll<HTMLElement>(
          "#planner button, #planner select, #planner label.pick, #planner summary, #planner input[type=text]",
        ),
      ]
        .filter((e) => e.offsetParent !== null && e.getBoundingClientRect().height < 43.5)
        .map((e) => `${e.tagName} ${e.textContent}`),
    );
    expect(small).toEqual([]);
    await context.close();
  });
});
