// Commands cut off at any moment: what they write is there as it was or as it is to be, whole, and nothing of anybody else is touched.
// They run as others run them, from the built project; `test/support/cut.mjs` cuts them off at a chosen call that changes a file.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { filesBelow, type Tree, writeTree } from "../files/trees.js";

const top = fileURLToPath(new URL("../..", import.meta.url));
const main = join(top, "dist", "src", "cli", "main.js");
const smallFolder = join(top, "test", "support", "small-folder.mjs");
const cut = new URL("../support/cut.mjs", import.meta.url).href;
/** Moments at which each command is killed: of a site's 540 calls that change a file, 4, or 200 in the long run. A small folder, all. */
const kills = process.env.LONG ? 200 : 4;

interface Ended {
  readonly code: number | null;
  readonly err: string;
}

async function run(folder: string, args: readonly string[], env: Readonly<Record<string, string>> = {}): Promise<Ended> {
  const program = args[0]?.endsWith(".mjs") ? args : [main, ...args];
  const child = spawn(process.execPath, ["--import", cut, ...program], {
    cwd: folder,
    stdio: ["ignore", "ignore", "pipe"],
    env: { ...process.env, NO_COLOR: "1", ...env },
  });
  let err = "";
  child.stderr.setEncoding("utf8").on("data", (piece: string) => {
    err += piece;
  });
  const [code] = (await once(child, "close")) as [number | null];
  return { code, err };
}

interface Case {
  /** Makes what stands there before, in a folder that holds a small club in `club`. */
  prepare(folder: string): Promise<void> | void;
  /** The command, or a program of our own and what it is given. */
  readonly args: readonly string[];
  /** Killed at each of its calls, not at some of them. */
  readonly everyMoment?: boolean;
  /** What the command writes, below the folder; everything else there is somebody else's. */
  readonly place: string;
}

const dump = (factor: number) => Buffer.from(Array.from({ length: 32 * 1024 }, (_, i) => (i * factor) ^ (i >> 7)));
const must = async (folder: string, args: readonly string[]) => {
  const { code, err } = await run(folder, args);
  if (code !== 0) throw new Error(`${args.join(" ")} ended with ${code}:\n${err}`);
};
const burn = ["burn", "example-machine", "--data", "club", "--as", "1.1=dump.bin", "--out", "burned"];
const result = [
  "result",
  "example-machine",
  "--data",
  "club",
  "--combination",
  "1",
  "--by",
  "A",
  "--outcome",
  "worked",
  "--date",
  "2026-01-02",
];

const cases: Readonly<Record<string, Case>> = {
  "site over an older site": {
    async prepare(folder) {
      await must(folder, ["site", "--data", "club", "--out", "out"]);
      writeTree(join(folder, "out"), { ".git/HEAD": "ref", CNAME: "club.example" });
      const card = join(folder, "club", "data", "cards", "example-disk-card.yaml");
      writeFileSync(card, readFileSync(card, "utf8").replace("name: Example disk card", "name: Example disc card"));
    },
    args: ["site", "--data", "club", "--out", "out"],
    place: "out",
  },
  "pocket over an older one": {
    prepare: (folder) => writeFileSync(join(folder, "pocket.html"), "old"),
    args: ["pocket", "--data", "club", "--out", "pocket.html", "--replace"],
    place: "pocket.html",
  },
  "burn of a new set": { prepare: (folder) => writeFileSync(join(folder, "dump.bin"), dump(1)), args: burn, place: "burned" },
  "burn over an older set": {
    async prepare(folder) {
      writeFileSync(join(folder, "dump.bin"), dump(1));
      await must(folder, burn);
      writeTree(join(folder, "burned"), { "notes.txt": "mine" });
      writeFileSync(join(folder, "dump.bin"), dump(2));
    },
    args: [...burn, "--replace"],
    place: "burned",
  },
  "a small folder over an older one": {
    async prepare(folder) {
      await must(folder, [smallFolder, "old"]);
      writeTree(join(folder, "out"), { ".git/HEAD": "ref", "below/notes.txt": "mine" });
    },
    args: [smallFolder, "new"],
    everyMoment: true,
    place: "out",
  },
  "start-club in a new folder": { prepare: () => {}, args: ["start-club", "second"], place: "second" },
  "start-club in a folder under version control": {
    prepare: (folder) => writeTree(join(folder, "second"), { ".git/HEAD": "ref" }),
    args: ["start-club", "second"],
    place: "second",
  },
  "new card": { prepare: () => {}, args: ["new", "card", "second-card", "--data", "club"], place: "club/data/cards" },
  "result of a test": { prepare: () => {}, args: result, place: "club/data/builds" },
  "the sheet of a machine": {
    prepare(folder) {
      // Without the other builds and the known problems of the demo club: less to read, and the sheet is as long.
      const wanted = (from: string) => !/data.(conflicts|photos|builds.(?!saltmarsh-three-mode-skerry))/.test(relative(top, from));
      cpSync(join(top, "data"), join(folder, "data"), { recursive: true, filter: wanted });
      writeFileSync(join(folder, "sheet.html"), "old");
    },
    args: ["plan", "saltmarsh-three-mode-skerry", "--sheet", "sheet.html", "--replace"],
    place: "sheet.html",
  },
};

/** Some numbers from 1 to `last`, the same for the same name: all when there are few, else more of the late ones, where it matters. */
function moments(last: number, wanted: number, name: string): readonly number[] {
  const all = Array.from({ length: last }, (_, i) => i + 1);
  if (last <= wanted) return all;
  let state = [...name].reduce((sum, letter) => (sum * 31 + letter.charCodeAt(0)) >>> 0, 7);
  const random = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const late = Math.max(1, last - 3 * wanted);
  return Array.from({ length: wanted }, (_, i) =>
    i % 2 ? 1 + Math.floor(random() * last) : late + Math.floor(random() * (last - late + 1)),
  );
}

/** All below a folder but our own work folders, parts and locks. */
function seen(folder: string): Tree {
  return Object.fromEntries(Object.entries(filesBelow(folder)).filter(([name]) => !/\.slotwright-(work|lock|part)/.test(name)));
}

const under = (tree: Tree, place: string) =>
  Object.fromEntries(Object.entries(tree).filter(([name]) => name === place || name.startsWith(`${place}/`)));
const besides = (tree: Tree, place: string) =>
  Object.fromEntries(Object.entries(tree).filter(([name]) => name !== place && !name.startsWith(`${place}/`)));
const count = (folder: string) => Number(readFileSync(join(folder, "..", "count"), "utf8"));

async function inPairs<T>(items: readonly T[], work: (item: T) => Promise<void>): Promise<void> {
  const left = [...items];
  const worker = async () => {
    for (let item = left.shift(); item !== undefined; item = left.shift()) await work(item);
  };
  await Promise.all([worker(), worker()]);
}

interface Stage {
  readonly outer: string;
  readonly start: string;
  readonly old: Tree;
  readonly anew: Tree;
  readonly calls: number;
}

async function stage({ prepare, args }: Case): Promise<Stage> {
  if (!existsSync(main)) throw new Error("Nothing is built: run npm run build first.");
  const outer = mkdtempSync(join(tmpdir(), "slotwright-cut-"));
  const start = join(outer, "start");
  mkdirSync(start);
  await must(start, ["start-club", "club", "--no-parts"]);
  // The one part that burning needs; with all of them every site takes longer.
  cpSync(join(top, "data", "parts", "kicad-derived", "27c256.yaml"), join(start, "club", "data", "parts", "27c256.yaml"));
  await prepare(start);
  const whole = join(outer, "whole");
  cpSync(start, whole, { recursive: true });
  const { code, err } = await run(whole, args, { CUT_COUNT: join(outer, "count") });
  expect(code, err).toBe(0);
  const calls = count(whole);
  return { outer, start, old: seen(start), anew: seen(whole), calls };
}

/** Runs the command in a copy, cut off; what it writes must be old or new, the rest as it was. */
async function cutOff(one: Case, { outer, start, old, anew }: Stage, name: string, env: Record<string, string>) {
  const folder = join(outer, name);
  cpSync(start, folder, { recursive: true });
  const ended = await run(folder, one.args, env);
  const after = seen(folder);
  const [was, is, now] = [old, anew, after].map((tree) => under(tree, one.place)) as [Tree, Tree, Tree];
  const outcome =
    Object.keys(now).every((file) => now[file] === was[file]) && Object.keys(now).length === Object.keys(was).length ? "old" : "new";
  expect(now, `${name}\n${ended.err}`).toEqual(outcome === "old" ? was : is);
  // Schemas may be written beside a record of the club: old or new, each whole.
  for (const [file, text] of Object.entries(besides(after, one.place))) expect([besides(old, one.place)[file], anew[file]]).toContain(text);
  for (const file of Object.keys(besides(old, one.place))) expect(after[file], file).toBeDefined();
  return { folder, outcome, ...ended };
}

describe.each(Object.entries(cases))("%s", (title, one) => {
  let set: Stage;
  beforeAll(async () => {
    set = await stage(one);
  });
  afterAll(() => rmSync(set.outer, { recursive: true, force: true }));

  it("leaves old or new when it is killed, and the next run ends it", async () => {
    const outcomes = new Set<string>();
    const again = process.env.LONG ? 10 : 3;
    await inPairs([...moments(set.calls, one.everyMoment ? set.calls : kills, title).entries()], async ([i, at]) => {
      const { folder, outcome } = await cutOff(one, set, `kill-${i}-at-${at}`, { CUT: "kill", CUT_AT: String(at) });
      outcomes.add(outcome);
      if (i % again !== 0 || outcome === "new") return;
      await must(folder, one.args);
      expect(filesBelow(folder), `again after ${at}`).toEqual(set.anew);
    });
    expect(outcomes).toContain("old");
  });

  it.each(["ENOSPC", "EACCES", "EROFS"])("leaves the old one and says why when the system answers %s", async (code) => {
    const few = moments(set.calls, process.env.LONG ? 20 : 1, `${title} ${code}`);
    await inPairs(few, async (at) => {
      const ended = await cutOff(one, set, `${code}-at-${at}`, { CUT: code, CUT_AT: String(at) });
      if (ended.outcome === "new") return;
      expect(ended.code, ended.err).toBe(2);
      expect(ended.err).toMatch({ ENOSPC: /no room left on the disk/, EACCES: /does not allow it/, EROFS: /read-only/ }[code] as RegExp);
      expect(readdirSync(ended.folder).filter((name) => name.includes(".slotwright-"))).toEqual([]);
    });
  });
});
