// npm test: build (which checks the types), lint, then every test, and one closing line with the counts.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { ensureChromium } from "./support/chromium.mjs";

const top = join(dirname(fileURLToPath(import.meta.url)), "..");
const scratch = mkdtempSync(join(tmpdir(), "slotwright-test-"));
const counts = { passed: 0, failed: 0 };
const started = Date.now();
if (process.argv.includes("--long")) process.env.LONG = "1";

/** One step; a step that fails counts as one failure, so that the closing line never hides it. */
function step(name, command, args, env = {}) {
  const from = Date.now();
  console.log(`\n== ${name}`);
  const done = spawnSync(command, args, { cwd: top, stdio: ["ignore", "inherit", "inherit"], env: { ...process.env, ...env } });
  const ok = done.status === 0;
  console.log(`== ${name}: ${ok ? "holds" : `fails (exit ${done.status ?? done.signal ?? done.error?.message})`}, ${seconds(from)}`);
  return ok;
}

function seconds(from) {
  return `${((Date.now() - from) / 1000).toFixed(1)} s`;
}

function need(ok) {
  if (!ok) counts.failed += 1;
  return ok;
}

/** Runs vitest on part of the tests and adds up what its own report says. */
function vitest(name, args) {
  const report = join(scratch, `${name}.json`);
  const vitestMain = join(top, "node_modules", "vitest", "vitest.mjs");
  const config = join("test", "vitest.config.ts");
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  const ok = step(`tests: ${name}`, process.execPath, [vitestMain, "run", "--config", config, ...reporters, ...args]);
  let failed = 0;
  try {
    const told = JSON.parse(readFileSync(report, "utf8"));
    counts.passed += told.numPassedTests;
    failed = told.numFailedTests;
    // A file that does not even load has no tests to fail.
    failed += told.testResults.filter((file) => file.status === "failed" && file.assertionResults.length === 0).length;
    if (told.numTotalTests === 0) failed += 1;
  } catch (problem) {
    console.log(`No report from vitest: ${problem.message}`);
  }
  counts.failed += !ok && failed === 0 ? 1 : failed;
}

/** Tests that measure run one file at a time, with the machine to themselves; all others two at a time. */
const alone = ["test/browser/planner-large.test.ts", "test/browser/planner-still.test.ts", "test/bench/"];

try {
  let chromium = "";
  try {
    chromium = ensureChromium((line) => console.log(line));
  } catch (problem) {
    console.log(problem.message);
  }
  need(chromium !== "");
  process.env.CHROMIUM = chromium;
  const cli = join("dist", "src", "cli", "main.js");
  if (need(step("build and types", process.execPath, [join("src", "build.mjs")]))) {
    need(step("lint", process.execPath, [join("node_modules", "@biomejs", "biome", "bin", "biome"), "check", "."]));
    // The data's own findings are judged by a test; here only wrong use (2) or a crash would show.
    need(step("site", process.execPath, [cli, "site", "--out", "_site"]));
    vitest(
      "rooms",
      alone.map((path) => `--exclude=${path.endsWith("/") ? `${path}**` : path}`),
    );
    vitest("alone", ["--no-file-parallelism", ...alone]);
  }
} finally {
  rmSync(scratch, { recursive: true, force: true });
}

const holds = counts.failed === 0 && counts.passed > 0;
console.log(`\nIn ${seconds(started)} on Node ${process.versions.node}${process.env.LONG ? ", long run" : ""}.`);
console.log(`${counts.passed} passed, ${counts.failed} failed`);
process.exitCode = holds ? 0 : 1;
