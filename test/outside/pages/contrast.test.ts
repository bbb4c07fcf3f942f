// Contrast of the page's colours, computed as WCAG 2.2 defines it (relative luminance and contrast ratio, terms section;
// success criteria 1.4.6 for text at 7:1 and 1.4.11 for marks). Source of the formula: w3.org/TR/WCAG22.
// And the same under the common colour-vision deficiencies, with the matrices of Vienot, Brettel and Mollon 1999 (from memory).
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const top = fileURLToPath(new URL("../../..", import.meta.url));
const css = readFileSync(join(top, "templates", "style", "tokens.css"), "utf8");
/** Every style sheet but that of the colours themselves and that of paper, which is black on white. */
const sheets = ["templates/style", "src/planner/style", "src/planner/single-file"].flatMap((folder) =>
  readdirSync(join(top, folder))
    .filter((name) => name.endsWith(".css") && !/^(?:tokens|print)\.css$/.test(name))
    .map((name) => ({ name, text: readFileSync(join(top, folder, name), "utf8") })),
);
/** Names of the colours that are set as the colour of text, or as what text stands on. */
const used = (property: RegExp) =>
  [...new Set(sheets.flatMap(({ text }) => [...text.matchAll(property)].map((m) => m[1]!)))].filter((name) => name !== "mono").sort();

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

it("takes every colour from the one list", () => {
  expect(sheets.length).toBeGreaterThan(6);
  for (const { name, text } of sheets) expect(text.match(/#[0-9a-f]{3,8}\b(?=[^{}]*;)|\b(?:rgb|hsl|oklch)a?\(/gi) ?? [], name).toEqual([]);
});

describe.each(Object.entries(themes))("the %s theme", (_, colours) => {
  it("sets all text at 7:1 or better on everything text stands on", () => {
    const texts = used(/(?<![-\w])color: var\(--(\w+)\)/g);
    const grounds = used(/background(?:-color)?: var\(--(\w+)\)/g);
    expect(texts).toEqual(["cool", "ink", "soft", "warm"].filter((name) => texts.includes(name)));
    expect(texts.length).toBeGreaterThan(2);
    expect(grounds).toEqual(["paper", "tint"]);
    // Warm is text nowhere today; it is held to the same, so that it may become so.
    for (const ground of grounds)
      for (const text of [...texts, "warm"])
        expect(contrast(colours[text]!, colours[ground]!), `${text} on ${ground}`).toBeGreaterThanOrEqual(7);
  });

  it("draws marks and bars at 4.5:1 or better, in the accents and in ink", () => {
    for (const ground of ["paper", "tint"])
      for (const mark of ["ink", "cool", "warm"])
        expect(contrast(colours[mark]!, colours[ground]!), `${mark} on ${ground}`).toBeGreaterThanOrEqual(4.5);
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
