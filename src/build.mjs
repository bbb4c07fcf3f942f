// Compiles the project into dist/: one JavaScript file per source file, beside bundles for the browser.
// With --if-possible a missing compiler is no failure: an install without development packages keeps what is there.
import { execFileSync } from "node:child_process";
import { chmodSync, cpSync, existsSync, readdirSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const top = join(dirname(fileURLToPath(import.meta.url)), "..");
const tsc = compiler();
if (tsc === undefined) {
  const why = "The TypeScript compiler is not installed; run npm ci to get it.";
  console.error(process.argv.includes("--if-possible") ? `Not built. ${why}` : why);
  process.exit(process.argv.includes("--if-possible") ? 0 : 1);
}

rmSync(join(top, "dist"), { recursive: true, force: true });
try {
  execFileSync(process.execPath, [tsc, "-p", top], { stdio: "inherit", cwd: top });
} catch {
  console.error("Not built: the compiler's messages stand above.");
  process.exit(1);
}
dropCompiledTests(join(top, "dist", "test"));
// npm makes the command executable once, when it installs; a file compiled anew has lost that.
chmodSync(join(top, "dist", "src", "cli", "main.js"), 0o755);

const bundles = join(top, "src", "publish", "bundles.mjs");
if (existsSync(bundles)) {
  const { bundle } = await import(pathToFileURL(bundles).href);
  await bundle(top);
}
const assets = join(top, "templates", "assets");
if (existsSync(assets)) cpSync(assets, join(top, "dist", "templates", "assets"), { recursive: true });

function compiler() {
  try {
    const require = createRequire(import.meta.url);
    return join(dirname(require.resolve("typescript/package.json")), "bin", "tsc");
  } catch {
    return undefined;
  }
}

/** Tests run from their sources; a compiled copy would be run a second time by anyone who names no configuration. */
function dropCompiledTests(folder) {
  if (!existsSync(folder)) return;
  for (const entry of readdirSync(folder, { recursive: true })) {
    if (/\.test\.js(\.map)?$/.test(entry)) rmSync(join(folder, entry));
  }
}
