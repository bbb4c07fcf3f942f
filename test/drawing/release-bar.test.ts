// The bar without words, and the marks a page keeps once: a stretch for each run, and every mark a list may point at is there.
import { expect, it } from "vitest";
import { releaseBar, verdictMark, verdictMarkSymbols, verdictMarkUse } from "../../src/drawing/index.js";
import { evidenceOrder, verdictOrder } from "../../src/words/index.js";

it("has a stretch for each run, as long as its releases, in the look of the drawing with words", () => {
  const bar = releaseBar(["ruled-out", "workable", "workable", "unknown"]);
  expect(bar.match(/class="dw-(?:no|works|unknown|if)"/g)).toEqual(['class="dw-no"', 'class="dw-works"', 'class="dw-unknown"']);
  expect(bar).toMatch(/<rect x="81" y="2" width="158"/);
  expect(bar).toContain('aria-hidden="true"');
});

it("points only at marks that are among the symbols, each drawn as alone", () => {
  const symbols = verdictMarkSymbols();
  for (const verdict of verdictOrder)
    for (const evidence of [undefined, ...evidenceOrder]) {
      const [, id] = /href="#([^"]+)"/.exec(verdictMarkUse(verdict, evidence))!;
      const [, inside] = new RegExp(`<symbol id="${id}"[^>]*>(.*?)</symbol>`).exec(symbols)!;
      expect(verdictMark(verdict, evidence, 20, { decorative: true })).toContain(`>${inside}</svg>`);
    }
});
