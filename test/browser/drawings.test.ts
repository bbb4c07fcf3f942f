// Every drawing in a real browser, at the width of a desk and of a phone: no line through a label, no text on text,
// nothing over the edge; the panel measures what it says.
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { verdictMark } from "../../src/drawing/index.js";
import type { Evidence, Verdict } from "../../src/planning/index.js";
import { everyDrawing, panel } from "../drawing/samples.js";
import { ensureChromium, launchArguments } from "../support/chromium.mjs";
import { complaints } from "../support/geometry.js";

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await chromium.launch({ executablePath: ensureChromium(), args: [...launchArguments] });
  page = await browser.newPage();
});
afterAll(() => browser?.close());

const show = (svg: string, colours = "color:#1b1b19;background:#fbf8f0") =>
  page.setContent(`<!doctype html><meta charset="utf-8"><body style="margin:0;${colours}">${svg}`);

describe.each([640, 330])("at a width of %d", (width) => {
  it.each(everyDrawing(width).map(([name, svg]) => ({ name, svg })))("$name is clean", async ({ svg }) => {
    await show(svg);
    expect(await complaints(page)).toEqual([]);
  });

  it("no two drawings share an id, each has a name and a description", async () => {
    const all = everyDrawing(width).map(([, svg]) => svg);
    await show(all.join(""));
    const told = await page.evaluate(() =>
      [...document.querySelectorAll("svg.dw")].map((svg) => ({
        role: svg.getAttribute("role"),
        named: (svg.getAttribute("aria-labelledby") ?? "").split(" ").map((id) => document.getElementById(id)?.textContent ?? ""),
        ids: [...svg.querySelectorAll("[id]")].map((e) => e.id),
      })),
    );
    expect(told).toHaveLength(all.length);
    for (const one of told) {
      expect(one.role).toBe("img");
      expect(one.named).toHaveLength(2);
      for (const words of one.named) expect(words.length).toBeGreaterThan(5);
    }
    const ids = told.flatMap((one) => one.ids);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe("the check itself", () => {
  it("finds a line through a label, text on text, and text over the edge", async () => {
    await show(
      `<svg class="dw" viewBox="0 0 100 60" width="100" height="60"><text x="10" y="20" font-size="13">label</text><text x="14" y="21" font-size="13">other</text><text x="80" y="50" font-size="13">over the edge</text><line x1="0" y1="16" x2="100" y2="16" stroke="black"/></svg>`,
    );
    const found = (await complaints(page)).join("\n");
    expect(found).toContain('a line runs through "label"');
    expect(found).toContain('"label" stands on "other"');
    expect(found).toContain('"over the edge" hangs over the edge');
  });
});

describe("the panel template", () => {
  it("is printed at its true size: its ruler and outline measure what they say", async () => {
    const [, svg] = everyDrawing(640).find(([name]) => name === "panel")!;
    await show(svg);
    const size = await page.evaluate(() => {
      const svg = document.querySelector("svg") as SVGSVGElement;
      const matrix = svg.getScreenCTM()!;
      const long = [...svg.querySelectorAll("line")].map((l) => Math.abs(l.x2.baseVal.value - l.x1.baseVal.value));
      const outline = svg.querySelector("rect")!.getBoundingClientRect();
      return { perUnit: [matrix.a, matrix.d], ruler: Math.max(...long) * matrix.a, outline: outline.width };
    });
    // CSS pins 1 mm to 96/25.4 pixels.
    const mm = 96 / 25.4;
    expect(size.perUnit[0]).toBeCloseTo(mm, 3);
    expect(size.perUnit[1]).toBeCloseTo(mm, 3);
    expect(size.ruler / mm).toBeCloseTo(100, 2);
    expect(panel.kind === "panel" && Math.abs(size.outline / mm - panel.width)).toBeLessThan(0.5);
  });
});

describe("marks at 14 px in one colour", () => {
  const verdicts: readonly Verdict[] = ["workable", "conditional", "ruled-out", "unknown"];
  const evidence: readonly Evidence[] = ["bench", "documented", "reported", "inferred"];

  /** The pixels of a mark: ink as 1, paper as 0. */
  async function ink(svg: string, colours: string): Promise<number[]> {
    await show(`<div id="m" style="width:21px;height:14px;line-height:0">${svg}</div>`, colours);
    const shot = (await page.locator("#m").screenshot()).toString("base64");
    return page.evaluate(async (data) => {
      const image = new Image();
      image.src = `data:image/png;base64,${data}`;
      await image.decode();
      const canvas = new OffscreenCanvas(image.width, image.height);
      const context = canvas.getContext("2d")!;
      context.drawImage(image, 0, 0);
      const { data: p } = context.getImageData(0, 0, image.width, image.height);
      const paper = p[p.length - 4]!;
      return Array.from({ length: p.length / 4 }, (_, i) => Number(Math.abs(p[4 * i]! - paper) > 96));
    }, shot);
  }
  const differ = (a: readonly number[], b: readonly number[]) => a.filter((v, i) => v !== b[i]).length;

  it.each(["color:#000;background:#fff", "color:#e6e2d8;background:#1e2429"])(
    "verdicts are told apart, and so is what they rest on (%s)",
    async (colours) => {
      const marks = new Map<string, number[]>();
      for (const v of verdicts) for (const e of evidence) marks.set(`${v} ${e}`, await ink(verdictMark(v, e, 14), colours));
      for (const [name, pixels] of marks) expect(pixels.filter(Boolean).length, name).toBeGreaterThan(20);
      // Twelve pixels of 294 is a flag of 6 by 2: less than that, tired eyes miss.
      for (const e of evidence)
        for (const [i, a] of verdicts.entries())
          for (const b of verdicts.slice(i + 1))
            expect(differ(marks.get(`${a} ${e}`)!, marks.get(`${b} ${e}`)!), `${a} and ${b}`).toBeGreaterThanOrEqual(10);
      for (const v of verdicts)
        for (const [i, a] of evidence.entries())
          for (const b of evidence.slice(i + 1))
            expect(differ(marks.get(`${v} ${a}`)!, marks.get(`${v} ${b}`)!), `${a} and ${b}`).toBeGreaterThanOrEqual(4);
    },
  );

  it("say their words, or nothing when the word stands beside them", async () => {
    await show(verdictMark("conditional", "bench", 14) + verdictMark("workable", "bench", 14, { decorative: true }));
    const told = await page.evaluate(() =>
      [...document.querySelectorAll("svg")].map((s) => [s.getAttribute("aria-label"), s.getAttribute("aria-hidden")]),
    );
    expect(told).toEqual([
      ["works if, seen on a bench", null],
      [null, "true"],
    ]);
  });
});
