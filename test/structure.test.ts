// The shape of the project: which room may import which, where Node may be used, what lies at the top, how long files are.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { breaches, circlesAmong, importsOf, nodeUses, type RoomRules, roomOf, roomTable } from "./support/imports.js";

const top = fileURLToPath(new URL("..", import.meta.url));

/** The rooms as DEVELOPERS.md draws them: its table is the one source. */
const rules: RoomRules = roomTable(readFileSync(join(top, "DEVELOPERS.md"), "utf8"));

/** Files past 350 lines that are one idea all the same, each with the reason. */
const longFiles: Readonly<Record<string, string>> = {};

const sources = ["src", "templates"].flatMap((folder) => filesBelow(join(top, folder)));
const code = sources.filter((file) => /\.(ts|tsx|mjs|js)$/.test(file));
const read = (file: string) => readFileSync(join(top, file), "utf8");

function filesBelow(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(top, join(entry.parentPath, entry.name)).split(sep).join("/"))
    .filter((file) => !file.includes("/node_modules/"));
}

describe("rooms", () => {
  it("import only what the import column allows, through the index", () => {
    expect(code.length).toBeGreaterThan(20);
    expect(code.flatMap((file) => breaches(file, read(file), rules))).toEqual([]);
  });

  it("use no process, console or Node global outside the rooms that have Node", () => {
    expect(code.flatMap((file) => nodeUses(file, read(file), rules))).toEqual([]);
  });

  it("are all declared, and no declaration is stale", () => {
    const rooms = new Set(code.map(roomOf).filter((room) => room !== undefined));
    expect([...rooms].sort()).toEqual(Object.keys(rules.column).sort());
    const uses = (room: string) => code.filter((file) => roomOf(file) === room).flatMap((file) => importsOf(read(file)).map((i) => i.from));
    for (const [room, names] of Object.entries(rules.packages))
      for (const name of names) {
        const used = uses(room).some((from) =>
          name === "node:*" ? from.startsWith("node:") : from === name || from.startsWith(`${name}/`),
        );
        expect(used, `${room} is allowed ${name} and does not use it`).toBe(true);
      }
  });

  it("import one way: no room imports one that imports it", () => {
    const circles = Object.entries(rules.column).flatMap(([room, may]) =>
      Object.keys(may)
        .filter((other) => other !== room && room in (rules.column[other] ?? {}))
        .map((other) => `${room} <-> ${other}`),
    );
    expect(circles).toEqual([]);
  });

  it("have no circle between files", () => {
    expect(circlesAmong(code, read)).toEqual([]);
  });

  it("stay under 5,000 lines of code", () => {
    const size = (room: string) =>
      code.filter((file) => roomOf(file) === room).reduce((sum, file) => sum + read(file).split("\n").length - 1, 0);
    const large = Object.keys(rules.column).filter((room) => size(room) > 5000);
    expect(large.map((room) => `${room}: ${size(room)}`)).toEqual([]);
  });

  it("each open with a comment that says what the file is", () => {
    const opens = (text: string) => /^(#!.*\n)?(\/\/|\/\*)/.test(text);
    expect(code.filter((file) => !opens(read(file)))).toEqual([]);
  });
});

describe("files", () => {
  const length = (file: string) => read(file).split("\n").length - 1;
  const tests = filesBelow(join(top, "test")).filter((file) => /\.(ts|tsx|mjs)$/.test(file));

  it("stay under 350 lines unless a reason is given, style sheets too", () => {
    const styles = sources.filter((file) => file.endsWith(".css"));
    expect(styles.length).toBeGreaterThan(5);
    const long = [...code, ...tests, ...styles].filter((file) => length(file) > 350 && !(file in longFiles));
    expect(long.map((file) => `${file}: ${length(file)}`)).toEqual([]);
  });

  it("that are allowed to be long still are", () => {
    for (const file of Object.keys(longFiles)) expect(length(file), file).toBeGreaterThan(350);
  });

  it("keep the site's configuration under 60 lines", () => {
    expect(read(".eleventy.js").split("\n").length).toBeLessThan(60);
  });

  it("at the top level are the named ones only", () => {
    const named = ["package.json", ".eleventy.js", "README.md", "DEVELOPERS.md", "LICENSE", "data", "src", "templates", "test"];
    const tools = [
      "package-lock.json",
      "tsconfig.json",
      "biome.json",
      ".gitignore",
      ".git",
      ".ci",
      "node_modules",
      "dist",
      "_site",
      "_shots",
    ];
    const here = readdirSync(top);
    expect(here.filter((name) => ![...named, ...tools].includes(name) && !name.endsWith(".tgz"))).toEqual([]);
    for (const name of named) expect(here).toContain(name);
  });
});

describe("dependencies", () => {
  const { dependencies, devDependencies } = JSON.parse(read("package.json")) as Record<string, Record<string, string>>;
  const used = (files: readonly string[]) => new Set(files.flatMap((file) => importsOf(read(file)).map((i) => i.from)));
  const uses = (froms: ReadonlySet<string>, name: string) => [...froms].some((from) => from === name || from.startsWith(`${name}/`));

  it("that the package brings along are used by it", () => {
    const froms = used(code);
    expect(Object.keys(dependencies ?? {}).filter((name) => !uses(froms, name))).toEqual([]);
  });

  it("that the program uses are brought along by the package", () => {
    // Bundles for the browser are made before packing; types leave nothing behind.
    const shipped = code.filter((file) => !file.endsWith(".mjs"));
    const froms = shipped.flatMap((file) =>
      importsOf(read(file))
        .filter((i) => !i.typeOnly)
        .map((i) => i.from),
    );
    const outside = froms.filter((from) => !from.startsWith(".") && !from.startsWith("node:"));
    expect(
      [...new Set(outside)].filter((from) => !Object.keys(dependencies ?? {}).some((name) => from === name || from.startsWith(`${name}/`))),
    ).toEqual([]);
    expect(Object.keys(devDependencies ?? {}).filter((name) => name in (dependencies ?? {}))).toEqual([]);
  });
});

describe("the checks themselves", () => {
  it("read every form of import with its line", () => {
    const source = [
      'import { a } from "./a.js";',
      'import type { B } from "../records/index.js";',
      'import { type C, type D } from "./c.js";',
      'import def, { type E } from "./e.js";',
      'export * from "./f.js";',
      "export const x = 1;",
      '// import { no } from "./no.js";',
      'import {\n  g,\n} from "./g.js";',
      'const h = await import("./h.js");',
      'new Worker(new URL("./i.js", import.meta.url));',
      'import "./j.css";',
    ].join("\n");
    expect(importsOf(source).map((i) => `${i.line} ${i.from}${i.typeOnly ? " type" : ""}`)).toEqual([
      "1 ./a.js",
      "2 ../records/index.js type",
      "3 ./c.js type",
      "4 ./e.js",
      "5 ./f.js",
      "10 ./g.js",
      "11 ./h.js",
      "12 ./i.js",
      "13 ./j.css",
    ]);
  });

  it("find each kind of breach", () => {
    const one = (file: string, source: string) => breaches(file, source, rules);
    expect(one("src/solver/x.ts", 'import { y } from "../planning/index.js";')).toEqual([
      "src/solver/x.ts:1 solver may not enter planning",
    ]);
    expect(one("src/wiring/x.ts", 'import { y } from "../planning/index.js";')).toEqual([
      "src/wiring/x.ts:1 wiring may take only types from planning",
    ]);
    expect(one("src/wiring/x.ts", 'import type { Y } from "../planning/index.js";')).toEqual([]);
    expect(one("src/planning/x.ts", 'import { y } from "../solver/count.js";')).toEqual([
      "src/planning/x.ts:1 solver is entered through its index, not ../solver/count.js",
    ]);
    expect(one("src/records/x.ts", 'import fs from "node:fs";')).toEqual(["src/records/x.ts:1 records may not use node:fs"]);
    expect(one("src/planning/x.ts", 'import z from "yaml";')).toEqual(["src/planning/x.ts:1 planning may not use yaml"]);
    expect(one("src/attic/x.ts", "export const a = 1;")).toEqual(["src/attic/x.ts:1 lies in a room nobody declared: attic"]);
    expect(one("src/solver/x.ts", 'import x from "../../test/x.js";')).toEqual([
      "src/solver/x.ts:1 solver reaches outside the rooms: ../../test/x.js",
    ]);
  });

  it("find the console and the process, but not words or fields of that name", () => {
    const uses = (source: string) => nodeUses("src/pages/x.ts", source, rules);
    expect(uses("console.log(1);\nconst a = process.env.X;")).toEqual([
      "src/pages/x.ts:1 pages may not use console",
      "src/pages/x.ts:2 pages may not use process",
    ]);
    expect(uses('const say = "console.log(1)"; // process.exit\nthing.process(1);')).toEqual([]);
  });
});
