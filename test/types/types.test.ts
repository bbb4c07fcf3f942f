// Proves that every mark in must-not-compile.ts stands before a true mistake: without the marks, the compiler finds exactly as many.
import { spawnSync } from "node:child_process";
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, it } from "vitest";

const here = dirname(fileURLToPath(import.meta.url));
const top = join(here, "..", "..");
const marked = readFileSync(join(here, "must-not-compile.ts"), "utf8");
const copy = join(here, ".unmarked.ts");
const settings = join(here, ".tsconfig.unmarked.json");
afterAll(() => {
  for (const file of [copy, settings]) rmSync(file, { force: true });
});

/** Lines with a mistake, as the compiler names them. */
function mistakes(file: string): number[] {
  const tsc = join(dirname(createRequire(import.meta.url).resolve("typescript/package.json")), "bin", "tsc");
  writeFileSync(
    settings,
    JSON.stringify({ extends: "../../tsconfig.json", compilerOptions: { noEmit: true, rootDir: "../.." }, include: [], files: [file] }),
  );
  const { stdout, status } = spawnSync(process.execPath, [tsc, "-p", settings, "--pretty", "false"], { cwd: top, encoding: "utf8" });
  const lines = [...stdout.matchAll(/^\S+\((\d+),\d+\): error TS/gm)].map((m) => Number(m[1]));
  expect(status === 0).toBe(lines.length === 0);
  return lines;
}

it("every mark stands before a mistake", () => {
  const marks = marked.split("\n").flatMap((line, i) => (line.trim() === "// @ts-expect-error" ? [i + 2] : []));
  expect(marks.length).toBeGreaterThan(10);
  expect(mistakes("must-not-compile.ts")).toEqual([]);
  writeFileSync(copy, marked.replaceAll("// @ts-expect-error", "//"));
  expect([...new Set(mistakes(".unmarked.ts"))]).toEqual(marks);
});
