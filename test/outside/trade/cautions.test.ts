// The figures in the cautions, worked again. Dose and lamp: data sheet of the 27C160; capacitor and voltage: a public repair page; the
// arithmetic is ours.
import { describe, expect, it } from "vitest";
import { cautions } from "../../../src/wiring/index.js";

const text = (id: string) => cautions.find((c) => c.id === id)!.text;

describe("cautions", () => {
  it("220 uF at 325 V hold 11.6 J", () => {
    expect((0.5 * 220e-6 * 325 ** 2).toFixed(1)).toBe("11.6");
    expect(text("mains-inside")).toContain("11.6 J");
  });
  it.each([
    [15, 12, 20.83],
    [15, 8, 31.25],
  ])("%i W s/cm2 at %i mW/cm2 take %f minutes", (dose, lamp, minutes) => expect(dose / (lamp / 1000) / 60).toBeCloseTo(minutes, 2));
  it("names the 20.8 minutes", () => expect(text("uv-c")).toContain("20.8 minutes"));
  it("stops people before mains, tubes, lamps and fuses", () => {
    expect(cautions.filter((c) => c.severity === "stop").map((c) => c.id)).toEqual(["mains-inside", "crt", "uv-c", "fuse"]);
  });
  it("say where each comes from, once each", () => {
    for (const c of cautions) expect(c.source.length).toBeGreaterThan(10);
    expect(new Set(cautions.map((c) => c.id)).size).toBe(cautions.length);
  });
});
