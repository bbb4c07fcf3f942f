// Finding the browser for the browser tests: the one the environment names counts alone, and a wrong name is told.
import { execFileSync } from "node:child_process";
import { afterEach, expect, it, vi } from "vitest";
import { ensureChromium, findChromium, launchArguments } from "./support/chromium.mjs";

afterEach(() => vi.unstubAllEnvs());

it("finds one that runs", () => {
  const found = findChromium() as string;
  expect(execFileSync(found, ["--version", ...launchArguments], { encoding: "utf8" })).toMatch(/\d+\.\d+/);
});

it("takes the one the environment names, and says so when that cannot be run", () => {
  vi.stubEnv("CHROMIUM", process.execPath);
  expect(findChromium()).toBe(process.execPath);
  vi.stubEnv("CHROMIUM", "/no/such/browser");
  expect(findChromium()).toBeUndefined();
  expect(() => ensureChromium()).toThrow("CHROMIUM names /no/such/browser");
});
