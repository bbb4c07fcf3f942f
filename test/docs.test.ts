// The documents stay true: the paths they name exist, the scripts they name are there, the commands they show run.
import { existsSync, mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { freshFolder, slotwright } from "./support/recorder.js";

const top = fileURLToPath(new URL("..", import.meta.url));
const documents = ["README.md", "DEVELOPERS.md"];
const read = (file: string) => readFileSync(join(top, file), "utf8");
const scripts = (JSON.parse(read("package.json")) as { scripts: Record<string, string> }).scripts;

describe.each(documents)("%s", (file) => {
  const text = read(file);

  it("names only paths that exist", () => {
    const named = [...text.matchAll(/`((?:src|test|templates|data|\.ci)\/[\w./-]*)`/g)].map((m) => m[1] as string);
    const missing = named.filter((path) => !existsSync(join(top, path)));
    expect(missing).toEqual([]);
    if (file === "DEVELOPERS.md") expect(named.length).toBeGreaterThan(10);
  });

  it("names only scripts that package.json has", () => {
    const named = [...text.matchAll(/\bnpm (?:run ([\w:-]+)|(test|start)\b)/g)].map((m) => (m[1] ?? m[2]) as string);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });

  it("leaves no heading without a word below it", () => {
    const empty = [...text.matchAll(/^(#+ .*)\n+(?=#|$(?![\s\S]))/gm)].map((m) => m[1]).filter((heading) => !heading?.startsWith("# "));
    expect(empty).toEqual([]);
  });
});

describe("the commands", () => {
  const commands = async () =>
    [...(await slotwright(["--help"])).out.matchAll(/^ {2}([a-z][a-z-]+)(?= )/gm)]
      .map((m) => m[1] as string)
      .filter((name) => name !== "help");

  it("are all in the README's table, and no others", async () => {
    const listed = [...read("README.md").matchAll(/^\| `slotwright ([a-z-]+)/gm)].map((m) => m[1] as string);
    expect([...new Set(listed)].sort()).toEqual((await commands()).sort());
  });

  it("each tell their options and the exit codes", async () => {
    for (const name of await commands()) {
      const { code, out } = await slotwright([name, "--help"]);
      expect(code, name).toBe(0);
      expect(out, name).toContain("--json");
      expect(out, name).toContain("--data");
    }
  });

  it("shown in the README's five minutes run as shown", async () => {
    const lines = [...read("README.md").matchAll(/^ {4}(?:npx slotwright|cd) .*$/gm)].map((m) => m[0].trim());
    expect(lines.length).toBeGreaterThan(5);
    let folder = freshFolder();
    for (const line of lines) {
      const words = line.replace(/^npx slotwright /, "").split(/\s+/);
      if (words[0] === "cd") {
        folder = join(folder, words[1] ?? "");
        mkdirSync(folder, { recursive: true });
        continue;
      }
      const { code, err } = await slotwright(words, { folder });
      // 1 is an answer as well: the impossible wish.
      expect(code, `${line}\n${err}`).toBe(line.includes("tracer-and-disk-one-mode") ? 1 : 0);
    }
  });
});
