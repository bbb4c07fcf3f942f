// Nothing moves under the reader's finger in the planner. By the definition of layout shift (W3C, Layout Instability) what moves within half a
// second of a choice is its effect; how long an answer takes is the machine's affair, so here it is its effect until the answer is whole.
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { addCard, answered } from "./open.js";
import { plannerPages } from "./planner-page.js";

const { planner, visitor } = plannerPages();

interface Watched {
  shift: number;
  readonly below: number[];
}

/** Begins to add up layout shift, and to note in every frame where the part below the answer begins in the window, in pixels. */
function watch(): void {
  const watched: Watched = { shift: 0, below: [] };
  Object.assign(window, { watched });
  new PerformanceObserver((list) => {
    for (const e of list.getEntries() as unknown as { value: number; hadRecentInput: boolean }[])
      if (!e.hadRecentInput) watched.shift += e.value;
  }).observe({ type: "layout-shift", buffered: true });
  const frame = () => {
    const below = document.querySelector(".rest");
    if (below) watched.below.push(Math.min(innerHeight, Math.round(below.getBoundingClientRect().top)));
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}

/** What moved after the answer to an act was whole, and how often the part below the answer turned about in sight on the way there. */
async function movedBy(page: Page, act: () => Promise<unknown>): Promise<{ readonly shift: number; readonly leaps: number }> {
  const restart = () =>
    page.evaluate(async () => {
      await new Promise((painted) => requestAnimationFrame(() => setTimeout(painted)));
      const { watched } = window as unknown as { watched: Watched };
      watched.shift = 0;
      return watched.below.splice(0);
    });
  await restart();
  await act();
  await answered(page);
  const below = await restart();
  await page.waitForTimeout(300);
  const shift = await page.evaluate(() => (window as unknown as { watched: Watched }).watched.shift);
  const moves = below.slice(1).flatMap((y, i) => (Math.abs(y - (below[i] ?? y)) > 2 ? [Math.sign(y - (below[i] ?? y))] : []));
  return { shift, leaps: moves.filter((way, i) => i > 0 && way !== moves[i - 1]).length };
}

describe("the planner", () => {
  // A processor six times slower stands for a cheap phone, on which the pieces of an answer are seen to come one after another.
  const phone = { width: 360, height: 740 };
  const desk = { width: 1280, height: 900 };
  for (const viewport of [phone, desk])
    for (const slower of process.env.LONG ? [1, 6] : [viewport === phone ? 6 : 1]) {
      it(`moves nothing under the reader, at ${viewport.width} pixels, ${slower} times slower`, async () => {
        const { page, context } = await visitor({ viewport });
        const tools = await context.newCDPSession(page);
        await tools.send("Emulation.setCPUThrottlingRate", { rate: slower });
        await page.addInitScript(watch);
        await page.goto(planner());
        await page.waitForSelector("#machine");
        const cell = page.getByRole("checkbox", { name: /^Tallow bus tracer in Way 1/ });
        const proposal = page.getByRole("button", { name: /^Two ways and one switch/ }).first();
        const acts: readonly (readonly [string, () => Promise<unknown>])[] = [
          ["the board", () => page.getByLabel("Skerry 16T").check()],
          ["a card", () => addCard(page, "gannet")],
          ["another card", () => addCard(page, "tallow")],
          ["a proposal", () => proposal.click()],
          ["a cell", () => cell.click()],
          ["the cell again", () => cell.click()],
        ];
        for (const [name, act] of acts) {
          const moved = await movedBy(page, act);
          expect(moved.shift, name).toBeLessThan(0.02);
          expect(moved.leaps, name).toBe(0);
        }
        await context.close();
      });
    }
});
