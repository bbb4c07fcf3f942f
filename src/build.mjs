// Compiles the project into dist/: one JavaScript file per source file, beside bundles for the browser.
// With --if-possible a missing compiler is no failure: an install without development packages keeps what is there.
// When neither the sources nor dist/ changed since the last whole build, by their content, nothing is done; without dist/ all is built.
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { chmodSync, cpSync, existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join, sep } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const top = join(dirname(fileURLToPath(import.meta.url)), "..");
const tsc = compiler();
if (tsc === undefined) {
  const why = "The TypeScript compiler is not installed; run npm ci to get it.";
  console.error(process.argv.includes("--if-possible") ? `Not built. ${why}` : why);
  process.exit(process.argv.includes("--if-possible") ? 0 : 1);
}

const stamp = join(top, "dist", ".built-from");
const from = sourcesSum();
if (existsSync(stamp) && readFileSync(stamp, "utf8") === `${from}\n${builtSum()}\n`) {
  console.error("Built before from these very sources: nothing to do.");
  process.exit(0);
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
// What was edited meanwhile may or may not be in it; then the next build is a whole one.
if (sourcesSum() === from) writeFileSync(stamp, `${from}\n${builtSum()}\n`);

/** What a build is made from: our own files, and every package as npm noted it when it installed them. */
function sourcesSum() {
  const packages = join(top, "node_modules", ".package-lock.json");
  const single = ["package.json", "package-lock.json", "tsconfig.json"].map((name) => join(top, name));
  const files = [...single, packages, ...["src", "templates", "test"].flatMap((name) => filesBelow(join(top, name)))];
  return sumOf(
    files.filter((file) => existsSync(file)),
    `node ${process.versions.node}`,
  );
}

function builtSum() {
  return sumOf(filesBelow(join(top, "dist")).filter((file) => file !== stamp));
}

/** One sum over names, contents and the right to be run. */
function sumOf(files, begin = "") {
  const sum = createHash("sha256").update(begin);
  for (const file of files) {
    const content = createHash("sha256").update(readFileSync(file)).digest("hex");
    sum.update(`\n${content} ${(statSync(file).mode & 0o111) !== 0} ${file}`);
  }
  return sum.digest("hex");
}

function filesBelow(folder) {
  if (!existsSync(folder)) return [];
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return files
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((file) => !file.includes(`${sep}node_modules${sep}`, top.length))
    .sort();
}

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
