// The build itself: the command can be run after every build, not only after the one npm installed.
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, statSync, symlinkSync, writeFileSync } from "node:fs";
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

test("the command can be run after the first build and after the second", () => {
  const folder = smallProject();
  const main = join(folder, "dist", "src", "cli", "main.js");
  for (const time of ["first", "second"]) {
    const built = spawnSync(process.execPath, [join("src", "build.mjs")], { cwd: folder, encoding: "utf8" });
    expect(built.status, `${time} build: ${built.stdout}${built.stderr}`).toBe(0);
    // Windows has no such bit: there npm's own wrapper names the program that runs it.
    if (!windows) expect((statSync(main).mode & 0o111).toString(8), `${time} build`).toBe("111");
    const [program, args]: [string, string[]] = windows ? [process.execPath, [main]] : [main, []];
    expect(spawnSync(program, args, { encoding: "utf8" }).stdout, `${time} build`).toBe("it runs\n");
  }
});
