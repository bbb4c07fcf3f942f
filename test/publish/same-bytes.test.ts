// The same records give the same bytes, search index and offline pack among them: else every rebuild makes every reader fetch all anew.
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { freshFolder } from "../support/recorder.js";

const main = fileURLToPath(new URL("../../dist/src/cli/main.js", import.meta.url));

function slotwright(folder: string, args: readonly string[], env: Readonly<Record<string, string>> = {}): void {
  execFileSync(process.execPath, [main, ...args], { cwd: folder, stdio: ["ignore", "ignore", "pipe"], env: { ...process.env, ...env } });
}

function sums(folder: string): Readonly<Record<string, string>> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const paths = files.map((entry) => join(entry.parentPath, entry.name)).sort();
  return Object.fromEntries(
    paths.map((path) => [relative(folder, path).split(sep).join("/"), createHash("sha256").update(readFileSync(path)).digest("hex")]),
  );
}

/** The same records, made in the other order, in a folder of another name. */
function copyBackwards(from: string, to: string): void {
  const files = readdirSync(from, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  for (const path of files
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()
    .reverse()) {
    const target = join(to, relative(from, path));
    mkdirSync(join(target, ".."), { recursive: true });
    writeFileSync(target, readFileSync(path));
  }
}

it("builds the same site under another time zone, language, folder and order of files", () => {
  if (!existsSync(main)) throw new Error("Nothing is built: run npm run build first.");
  const folder = freshFolder();
  slotwright(folder, ["start-club", "club", "--no-parts"]);
  // Enough pages that they come in no fixed order by themselves.
  const card = readFileSync(join(folder, "club", "data", "cards", "example-disk-card.yaml"), "utf8");
  for (const id of ["zeta", "alpha", "mid"])
    writeFileSync(
      join(folder, "club", "data", "cards", `${id}-card.yaml`),
      card.replace("id: example-disk-card", `id: ${id}-card`).replace("model: EX-D", `model: ${id}`),
    );
  copyBackwards(join(folder, "club"), join(folder, "elsewhere", "other"));
  slotwright(folder, ["site", "--data", "club", "--out", "one"], { TZ: "UTC", LANG: "C", LC_ALL: "C" });
  const env = { TZ: "Pacific/Chatham", LANG: "tr_TR.UTF-8", LC_ALL: "tr_TR.UTF-8" };
  slotwright(join(folder, "elsewhere"), ["site", "--data", "other", "--out", "two"], env);
  cpSync(join(folder, "club"), join(folder, "again"), { recursive: true });
  slotwright(folder, ["site", "--data", "again", "--out", "three"], { TZ: "America/St_Johns", LANG: "sv_SE.UTF-8" });
  const one = sums(join(folder, "one"));
  expect(Object.keys(one).some((name) => name.startsWith("pagefind/fragment/"))).toBe(true);
  expect(one).toHaveProperty(["offline/site.pack"]);
  expect(sums(join(folder, "elsewhere", "two"))).toEqual(one);
  expect(sums(join(folder, "three"))).toEqual(one);
});
