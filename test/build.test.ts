// The build itself: the command can be run after every build, not only after the one npm installed.
import { spawnSync } from "node:child_process";
import { chmodSync, cpSync, mkdirSync, readFileSync, statSync, symlinkSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { freshFolder } from "./support/recorder.js";

const top = fileURLToPath(new URL("..", import.meta.url));
const windows = process.platform === "win32";

/** A project of one file with this project's own build, so that building it disturbs no other test. */
function smallProject(): string {
  const folder = freshFolder();
  for (const file of ["package.json", "tsconfig.json", join("src", "build.mjs")]) cpSync(join(top, file), join(folder, file));
  mkdirSync(join(folder, "src", "cli"));
  writeFileSync(join(folder, "src", "cli", "main.ts"), '#!/usr/bin/env node\nconsole.log("it runs");\n');
  symlinkSync(join(top, "node_modules"), join(folder, "node_modules"), "junction");
  return folder;
}

function build(folder: string): string {
  const built = spawnSync(process.execPath, [join("src", "build.mjs")], { cwd: folder, encoding: "utf8" });
  expect(built.status, `${built.stdout}${built.stderr}`).toBe(0);
  return built.stderr;
}

test("the command can be run after the first build and after the second", () => {
  const folder = smallProject();
  const main = join(folder, "dist", "src", "cli", "main.js");
  for (const time of ["first", "second"]) {
    build(folder);
    // Built anew the second time, too: something else was added.
    writeFileSync(join(folder, "src", "more.ts"), "export {};\n");
    // Windows has no such bit: there npm's own wrapper names the program that runs it.
    if (!windows) expect((statSync(main).mode & 0o111).toString(8), `${time} build`).toBe("111");
    const [program, args]: [string, string[]] = windows ? [process.execPath, [main]] : [main, []];
    expect(spawnSync(program, args, { encoding: "utf8" }).stdout, `${time} build`).toBe("it runs\n");
  }
});

test("a build is skipped when sources and dist/ are as the last one left them, and only then", () => {
  const folder = smallProject();
  const main = join(folder, "dist", "src", "cli", "main.js");
  const skips = /^Built before .*nothing to do\.\n$/;
  expect(build(folder)).toBe("");
  // What is as old as the hills was not written again.
  utimesSync(main, 1, 1);
  expect(build(folder)).toMatch(skips);
  expect(statSync(main).mtimeMs).toBe(1000);

  // Same length, same time: the content decides.
  const source = join(folder, "src", "cli", "main.ts");
  const { atime, mtime } = statSync(source);
  writeFileSync(source, readFileSync(source, "utf8").replace("it runs", "it jogs"));
  utimesSync(source, atime, mtime);
  expect(build(folder)).toBe("");
  expect(readFileSync(main, "utf8")).toContain("it jogs");
  expect(build(folder)).toMatch(skips);

  writeFileSync(main, "console.log('spoiled');\n");
  expect(build(folder)).toBe("");
  expect(readFileSync(main, "utf8")).toContain("it jogs");
  expect(build(folder)).toMatch(skips);

  if (windows) return;
  chmodSync(main, 0o644);
  expect(build(folder)).toBe("");
  expect((statSync(main).mode & 0o111).toString(8)).toBe("111");
});

test("a build that fails is not taken for one that was made", () => {
  const folder = smallProject();
  writeFileSync(join(folder, "src", "cli", "wrong.ts"), 'export const wrong: number = "text";\n');
  for (const time of ["first", "second"]) {
    const { status, stdout } = spawnSync(process.execPath, [join("src", "build.mjs")], { cwd: folder, encoding: "utf8" });
    expect([time, status, stdout.includes("wrong.ts")]).toEqual([time, 1, true]);
  }
});
