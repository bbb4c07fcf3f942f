// The package as others get it: packed, installed in an empty folder without development packages, run on plain Node.
import { execFileSync, spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Answer } from "../src/planning/index.js";

const top = fileURLToPath(new URL("..", import.meta.url));
const windows = process.platform === "win32";
let folder: string;
let packed: { files: { path: string }[]; unpackedSize: number };

function npm(args: readonly string[], cwd: string): string {
  return execFileSync(windows ? "npm.cmd" : "npm", [...args], {
    cwd,
    encoding: "utf8",
    shell: windows,
    stdio: ["ignore", "pipe", "inherit"],
  });
}

function slotwright(...args: string[]): { code: number | null; out: string; err: string } {
  const bin = join(folder, "node_modules", ".bin", windows ? "slotwright.cmd" : "slotwright");
  const env = { ...process.env, NODE_OPTIONS: "", NODE_PATH: "" };
  const { status, stdout, stderr } = spawnSync(bin, args, { cwd: folder, encoding: "utf8", shell: windows, env });
  return { code: status, out: stdout, err: stderr };
}

beforeAll(() => {
  if (!existsSync(join(top, "dist", "src", "cli", "main.js"))) throw new Error("Nothing is built: run npm run build first.");
  folder = mkdtempSync(join(tmpdir(), "slotwright-package-"));
  // Scripts stay off: the build of this very run is what gets packed.
  [packed] = JSON.parse(npm(["pack", "--json", "--ignore-scripts", "--pack-destination", folder], top));
  const tarball = readdirSync(folder).find((name) => name.endsWith(".tgz"));
  writeFileSync(join(folder, "package.json"), '{"private": true}');
  npm(["install", "--prefer-offline", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error", `./${tarball}`], folder);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("the package", () => {
  it("holds the program, the demo records and the licences, and no tests", () => {
    const paths = packed.files.map((file) => file.path);
    for (const wanted of [
      "dist/src/cli/main.js",
      "README.md",
      "DEVELOPERS.md",
      "LICENSE",
      "data/LICENSE.md",
      "package.json",
      ".eleventy.js",
    ]) {
      expect(paths).toContain(wanted);
    }
    expect(paths.filter((path) => /(^|\/)test\/|\.map$|\.ts$/.test(path))).toEqual([]);
    expect(packed.unpackedSize).toBeLessThan(8_000_000);
  });

  it("brings no development package along", () => {
    for (const name of ["typescript", "vitest", "@biomejs", "playwright-core", "esbuild"]) {
      expect(existsSync(join(folder, "node_modules", name)), name).toBe(false);
    }
  });

  it("tells its commands", () => {
    const { code, out } = slotwright("--help");
    expect(code).toBe(0);
    for (const command of ["check", "plan", "burn", "site", "pocket", "new", "start-club", "result"])
      expect(out).toMatch(new RegExp(`^ {2}${command} `, "m"));
  });

  it("checks the demo club", () => {
    const { code, out } = slotwright("check");
    expect(out).toContain("everything holds");
    expect(code).toBe(0);
  });

  it("answers the headline machine and the impossible wish", () => {
    const headline = slotwright("plan", "saltmarsh-three-mode-skerry", "--json");
    expect(headline.code).toBe(0);
    expect((JSON.parse(headline.out) as Answer).combinations[0]?.modes.map((mode) => mode.firmware)).toEqual(["R6", "R4A", "R5.1"]);
    expect(slotwright("plan", "tracer-and-disk-one-mode").code).toBe(1);
    expect(slotwright("plan", "no-such-build").code).toBe(2);
  });

  it("starts: checks, builds, serves, prints the address, and ends when asked to", async () => {
    const main = join(folder, "node_modules", "slotwright", "dist", "src", "cli", "main.js");
    // A new club's pages; those of the demo, which the same code builds, take minutes on a busy machine.
    const club = ["--data", "club"];
    expect(slotwright("start-club", "club", "--no-parts").code).toBe(0);
    const started = spawn(process.execPath, [main, "start", "--out", "pages", ...(process.env.LONG ? [] : club)], {
      cwd: folder,
      stdio: ["ignore", "pipe", "inherit"],
    });
    let told = "";
    const address = await new Promise<string>((found, fail) => {
      started.stdout.setEncoding("utf8").on("data", (piece: string) => {
        told += piece;
        const at = /http:\/\/\S+/.exec(told)?.[0];
        if (at) found(at);
      });
      started.once("exit", (code) => fail(new Error(`It ended with ${code} before it served:\n${told}`)));
    });
    expect(told).toMatch(/\d+ records in .*everything holds/);
    const page = await fetch(address);
    expect(page.headers.get("content-type")).toContain("text/html");
    expect(await page.text()).toContain("<h1");
    expect(existsSync(join(folder, "pages", "pagefind", "pagefind.js"))).toBe(true);
    started.kill("SIGINT");
    const [code] = (await once(started, "exit")) as [number | null];
    expect(windows ? 0 : code).toBe(0);
  });
});
