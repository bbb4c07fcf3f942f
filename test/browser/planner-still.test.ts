// Nothing moves under the reader's finger in the planner. What moves within half a second of a choice is its effect, by the definition of
// layout shift (W3C, Layout Instability); on a machine that is busy with other tests an answer comes later. So this runs alone.
import { describe, expect, it } from "vitest";
import { addCard, answered } from "./open.js";
import { plannerPages } from "./planner-page.js";

const { planner, visitor } = plannerPages();

describe("the planner", () => {
  it("moves nothing under the reader: layout shift stays under 0.02 while choosing", async () => {
    for (const viewport of [
      { width: 360, height: 740 },
      { width: 1280, height: 900 },
    ]) {
      const { page, context } = await visitor({ viewport });
      await page.addInitScript(() => {
        const w = window as unknown as { shift: number };
        w.shift = 0;
        new PerformanceObserver((list) => {
          for (const e of list.getEntries() as unknown as { value: number; hadRecentInput: boolean }[])
            if (!e.hadRecentInput) w.shift += e.value;
        }).observe({ type: "layout-shift", buffered: true });
      });
      await page.goto(planner());
      await page.waitForSelector("#machine");
      await page.getByLabel("Skerry 16T").check();
      await answered(page);
      await addCard(page, "gannet");
      await addCard(page, "tallow");
      const shifted = async () => {
        await page.waitForTimeout(300);
        return page.evaluate(() => {
          const w = window as unknown as { shift: number };
          const { shift } = w;
          w.shift = 0;
          return shift;
        });
      };
      expect(await shifted(), `${viewport.width}`).toBeLessThan(0.02);
      // Nor in the grid of ways, where what each cell comes to is known a little after the tap.
      await page
        .getByRole("button", { name: /^Two ways and one switch/ })
        .first()
        .click();
      await answered(page);
      await shifted();
      const cell = page.getByRole("checkbox", { name: /^Tallow bus tracer in Way 1/ });
      for (let i = 0; i < 2; i += 1) {
        await cell.click();
        await answered(page);
      }
      expect(await shifted(), `the grid at ${viewport.width}`).toBeLessThan(0.02);
      await context.close();
    }
  });
});
