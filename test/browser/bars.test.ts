// The bars over the releases as the eye has them at arm's length: blurred and without colour, in both themes and on paper, the four
// verdicts must stay apart, and so must the heights of the ink.
import type { Page } from "playwright-core";
import { render } from "preact-render-to-string";
import { describe, expect, it } from "vitest";
import { evidenceOrder, type Verdict, verdictOrder, verdictWords } from "../../src/words/index.js";
import { Ink } from "../../templates/parts/Bar.js";
import { builtSite } from "./built-site.js";

const { visitor, address } = builtSite();

const inked = (verdict: Verdict) => verdict === "workable" || verdict === "conditional";
/** Every look there is: name, verdict, and the drawing. A "no" and a "?" have no evidence. */
const looks = verdictOrder.flatMap((verdict) =>
  (inked(verdict) ? evidenceOrder : (["inferred"] as const)).map((evidence) => {
    const mark = { verdict, evidence, css: verdictWords[verdict].css, word: "", evidenceWord: "", label: "" };
    const on = { mark, starts: false, ends: false, letter: "a" };
    return { name: inked(verdict) ? `${verdict} ${evidence}` : verdict, verdict, html: render(Ink({ on })) };
  }),
);

/** Grey levels of each look, blurred; 0 is the ground, 1 the ink. Cells are as wide as the matrix has them at 1280 px. */
async function blurred(page: Page, sigma: number): Promise<number[][]> {
  const [wide, tall] = [34, 24];
  await page.goto(`${address()}/matrix/skerry-16t--d1.html`);
  await page.evaluate(
    ({ cells, wide, tall }) => {
      document.body.replaceChildren(
        ...cells.map((html) => {
          const cell = document.createElement("div");
          cell.innerHTML = html;
          // Set by script: the page's own policy takes no style written in an element.
          Object.assign(cell.style, { width: `${wide}px`, height: `${tall}px`, padding: "5px 0", overflow: "hidden" });
          return cell;
        }),
      );
      document.body.className = "";
      document.body.style.lineHeight = "0";
    },
    { cells: looks.map((l) => l.html), wide, tall },
  );
  await page.evaluate(() => document.fonts.ready);
  const shot = await page.screenshot({ clip: { x: 0, y: 0, width: wide, height: tall * looks.length } });
  return page.evaluate(
    async ({ png, wide, tall, count, sigma }) => {
      const image = new Image();
      image.src = `data:image/png;base64,${png}`;
      await image.decode();
      const canvas = document.createElement("canvas");
      canvas.width = wide;
      canvas.height = tall * count;
      const pen = canvas.getContext("2d", { willReadFrequently: true })!;
      pen.drawImage(image, 0, 0);
      const reach = Math.ceil(sigma * 3);
      const kernel = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-((i - reach) ** 2) / (2 * sigma * sigma)));
      const sum = kernel.reduce((a, b) => a + b, 0);
      const linear = (c: number) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
      /** Weights of sight for red, green and blue; blurred as light is, read as the eye reads it. */
      const grey = (data: Uint8ClampedArray) =>
        Array.from({ length: data.length / 4 }, (_, i) =>
          [0.2126, 0.7152, 0.0722].reduce((a, w, k) => a + w * linear(data[i * 4 + k]! / 255), 0),
        );
      const along = (from: number[], step: number, size: number, at: (i: number) => number) =>
        from.map((_, i) => {
          let out = 0;
          for (let k = -reach; k <= reach; k += 1) {
            const p = Math.min(size - 1, Math.max(0, at(i) + k));
            out += kernel[k + reach]! * from[i + (p - at(i)) * step]!;
          }
          return out / sum;
        });
      const cells = Array.from({ length: count }, (_, n) => {
        const once = along(grey(pen.getImageData(0, n * tall, wide, tall).data), 1, wide, (i) => i % wide);
        return along(once, wide, tall, (i) => Math.floor(i / wide)).map(Math.cbrt);
      });
      const flat = cells.flat();
      const ground = Math.cbrt(grey(pen.getImageData(0, 0, 1, 1).data)[0]!);
      const far = flat.reduce((a, b) => (Math.abs(b - ground) > Math.abs(a - ground) ? b : a), ground);
      return cells.map((c) => c.map((v) => (v - ground) / (far - ground)));
    },
    { png: shot.toString("base64"), wide, tall, count: looks.length, sigma },
  );
}

/** The largest difference anywhere between two looks. */
const apart = (a: readonly number[], b: readonly number[]) => Math.max(...a.map((v, i) => Math.abs(v - b[i]!)));

describe.each([
  ["light", "screen"],
  ["dark", "screen"],
  ["light", "print"],
] as const)("%s, on %s", (colorScheme, media) => {
  it("keeps the four verdicts and the heights of the ink apart at arm's length and without colour", async () => {
    const { page, context } = await visitor({ viewport: { width: 400, height: 400 }, colorScheme });
    await page.emulateMedia({ media });
    // Two pixels are three minutes of arc at 60 cm: what an eye with half of full sight blurs.
    const seen = await blurred(page, 2);
    const pairs = looks.flatMap((a, i) => looks.slice(i + 1).map((b, k) => ({ a, b, by: apart(seen[i]!, seen[i + 1 + k]!) })));
    const said = (of: typeof pairs) => of.map(({ a, b, by }) => `${a.name} and ${b.name}: ${by.toFixed(2)}`);
    if (process.env.BARS) process.stderr.write(`${said(pairs.sort((a, b) => a.by - b.by).slice(0, 12)).join("\n")}\n`);
    expect(pairs).toHaveLength(45);
    // All were drawn: even the faintest leaves something.
    expect(looks.filter((_, i) => Math.max(...seen[i]!.map(Math.abs)) < 0.02).map((l) => l.name)).toEqual([]);
    // A tenth of all the contrast there is, over an area, is seen at once.
    expect(said(pairs.filter(({ a, b, by }) => a.verdict !== b.verdict && by < 0.1))).toEqual([]);
    expect(said(pairs.filter(({ a, b, by }) => a.verdict === b.verdict && by < 0.05))).toEqual([]);
    await context.close();
  });
});

it("would find two looks that are alike", () => {
  expect(apart([0, 0.5, 0], [0, 0.5, 0])).toBe(0);
  expect(apart([0, 0.5, 0], [0, 0.1, 0])).toBeCloseTo(0.4, 5);
});
