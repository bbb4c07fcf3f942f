// The documents stay true: the paths they name exist, the scripts they name are there, the commands they show run.
import { existsSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { freshFolder, slotwright } from "./support/recorder.js";

const top = fileURLToPath(new URL("..", import.meta.url));
const rooms = readdirSync(join(top, "src"), { withFileTypes: true }).filter((entry) => entry.isDirectory());
const roomDocuments = rooms.map((room) => `src/${room.name}/README.md`).filter((file) => existsSync(join(top, file)));
const documents = ["README.md", "DEVELOPERS.md", ...roomDocuments];
const read = (file: string) => readFileSync(join(top, file), "utf8");
const folderOf = (file: string) => file.replace(/[^/]*$/, "");
const scripts = (JSON.parse(read("package.json")) as { scripts: Record<string, string> }).scripts;

describe.each(documents)("%s", (file) => {
  const text = read(file);

  it("names only paths that exist", () => {
    const named = [...text.matchAll(/`((?:src|test|templates|data|\.ci)\/[\w./-]*)`/g)].map((m) => m[1] as string);
    // A room's own document names its files from where it lies.
    const folder = folderOf(file);
    const own = folder === "" ? [] : [...text.matchAll(/`((?:[\w-]+\/)*[\w.-]+\.(?:ts|tsx|mjs))`/g)].map((m) => m[1] as string);
    const there = (path: string) => [path, `${folder}${path}`, `src/${path}`].some((at) => existsSync(join(top, at)));
    expect([...named, ...own].filter((path) => !there(path))).toEqual([]);
    if (file === "DEVELOPERS.md") expect(named.length).toBeGreaterThan(10);
  });

  it("names only scripts that package.json has", () => {
    const named = [...text.matchAll(/\bnpm (?:run ([\w:-]+)|(test|start)\b)/g)].map((m) => (m[1] ?? m[2]) as string);
    if (folderOf(file) === "") expect(named.length).toBeGreaterThan(0);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });

  it("leaves no heading without a word below it", () => {
    const empty = [...text.matchAll(/^(#+ .*)\n+(?=#|$(?![\s\S]))/gm)].map((m) => m[1]).filter((heading) => !heading?.startsWith("# "));
    expect(empty).toEqual([]);
  });
});

it("the rooms' documents are linked from DEVELOPERS.md, and every link of a document leads somewhere", () => {
  expect(roomDocuments.length).toBeGreaterThan(4);
  const linked = [...read("DEVELOPERS.md").matchAll(/\]\((src\/[^)#]+)/g)].map((m) => m[1]);
  expect([...new Set(linked)].sort()).toEqual([...roomDocuments].sort());
  for (const file of documents) {
    const headings = (of: string) =>
      [...read(of).matchAll(/^#+ (.*)$/gm)].map((m) =>
        m[1]!
          .toLowerCase()
          .replace(/[^\w\s-]/g, "")
          .replace(/\s/g, "-"),
      );
    for (const [, path, anchor] of read(file).matchAll(/\]\(([^)#:]*)(?:#([^)]*))?\)/g)) {
      const target = path === "" ? file : join(folderOf(file), path!);
      expect(existsSync(join(top, target)), `${file}: ${target}`).toBe(true);
      if (anchor) expect(headings(target), `${file}: #${anchor}`).toContain(anchor);
    }
  }
});

it("every file that a comment names is there", () => {
  const files = ["src", "templates", "test"]
    .flatMap((folder) => readdirSync(join(top, folder), { withFileTypes: true, recursive: true }))
    .filter((entry) => entry.isFile() && !entry.parentPath.includes("node_modules"));
  const there = new Set([...files.map((entry) => entry.name), ...readdirSync(top)]);
  const gone = files
    .filter((entry) => /\.(ts|tsx|mjs|css)$/.test(entry.name))
    .flatMap((entry) => {
      const comments = readFileSync(join(entry.parentPath, entry.name), "utf8").match(/(?<![:"'`\w])\/\/.*|\/\*[\s\S]*?\*\//g) ?? [];
      const named = comments.flatMap((comment) => comment.match(/[\w.-]+\.(?:tsx?|mjs|md)\b/g) ?? []);
      return named.filter((name) => !there.has(name)).map((name) => `${entry.name}: ${name}`);
    });
  expect(gone).toEqual([]);
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
