// Compiles the project into dist/: one JavaScript file per source file, beside bundles for the browser.
import { execFileSync } from "node:child_process";
import { cpSync, existsSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const top = join(dirname(fileURLToPath(import.meta.url)), "..");
const require = createRequire(import.meta.url);
const tsc = join(dirname(require.resolve("typescript/package.json")), "bin", "tsc");

rmSync(join(top, "dist"), { recursive: true, force: true });
execFileSync(process.execPath, [tsc, "-p", top], { stdio: "inherit", cwd: top });

const bundles = join(top, "src", "site", "bundles.mjs");
if (existsSync(bundles)) {
  const { bundle } = await import(new URL(`file://${bundles.replaceAll("\\", "/")}`).href);
  await bundle(top);
}
const assets = join(top, "templates", "assets");
if (existsSync(assets)) cpSync(assets, join(top, "dist", "templates", "assets"), { recursive: true });
