// Bank lines, their pins and the bank of all-open lines. Pin numbers: data sheets and the symbol libraries named in the fixtures
// (27C400, 27C4096 and 29F040 from memory); the banking itself is arithmetic.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { addressLines } from "../../../src/switching/contacts/device.js";
import { families, fitOf, socketFor, unfitText } from "./devices.js";

interface Case {
  readonly device: string;
  readonly width: number;
  readonly image: number;
  readonly fit: number;
  readonly inside: readonly [string, string];
  readonly lines: readonly (readonly [string, number])[];
  readonly allOpen: number;
}
const cases: readonly Case[] = JSON.parse(readFileSync(new URL("banking.json", import.meta.url), "utf8"));

describe("images of one size in a device", () => {
  for (const c of cases) {
    // The SO44 part goes into no DIP socket: only its address lines are looked at.
    const soldered = c.device === "27C320";
    it(`${c.device} by ${c.width}: ${c.fit} images of ${c.image} bytes`, () => {
      const names = addressLines(families.get(c.device)!, c.width);
      const inside = names.slice(0, Math.log2((c.image * 8) / c.width));
      expect([inside[0], inside.at(-1)]).toEqual(c.inside);
      const pins = new Map(families.get(c.device)!.pins.map((p) => [p.name, p.pin]));
      expect(names.slice(inside.length).map((name) => [name, pins.get(name)])).toEqual(c.lines);
      if (soldered) {
        expect(unfitText(c.device, socketFor("27C160", c.width, c.image))).toContain("SO44");
        return;
      }
      const fit = fitOf(c.device, socketFor(c.device, c.width, c.image));
      expect(fit.banks).toBe(c.fit);
      expect(fit.lines.map((l) => [l.line, l.pin])).toEqual(c.lines);
      expect(fit.lines.reduce((bank, l) => bank + 2 ** l.bit, 0)).toBe(c.allOpen);
    });
  }
});
