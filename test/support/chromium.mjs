// Where a Chromium is on this machine, and how to get one. Plain JavaScript: test/run.mjs uses it before anything is built.
import { execFileSync } from "node:child_process";
import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";

/** Arguments that make it start as root, in a container, without reaching for the network by itself. */
export const launchArguments = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--disable-dev-shm-usage",
];

const names = ["chromium", "chromium-browser", "google-chrome-stable", "google-chrome", "chrome.exe", "msedge.exe"];
const places = [
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];

function runnable(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** The environment's CHROMIUM first, then the path, then the usual places. */
export function findChromium() {
  const named = process.env.CHROMIUM;
  if (named) return runnable(named) ? named : undefined;
  for (const folder of (process.env.PATH ?? "").split(delimiter)) {
    for (const name of names) if (folder && runnable(join(folder, name))) return join(folder, name);
  }
  return places.find((place) => runnable(place));
}

/** Finds one, or installs Debian's when we may; otherwise says what to install. */
export function ensureChromium(say = () => {}) {
  const found = findChromium();
  if (found) return found;
  if (process.env.CHROMIUM) throw new Error(`CHROMIUM names ${process.env.CHROMIUM}, which cannot be run.`);
  const root = process.getuid?.() === 0;
  if (root && existsSync("/usr/bin/apt-get")) {
    say("No Chromium here: installing Debian's.");
    const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
    const options = { stdio: ["ignore", "ignore", "inherit"], env };
    execFileSync("apt-get", ["update", "-qq"], options);
    execFileSync("apt-get", ["install", "-y", "-qq", "--no-install-recommends", "chromium"], options);
    const installed = findChromium();
    if (installed) return installed;
  }
  throw new Error(
    "The browser tests need Chromium. Install it (Debian: apt-get install chromium; macOS: brew install --cask chromium) or name one: CHROMIUM=/path/to/it npm test",
  );
}
