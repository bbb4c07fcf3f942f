// Replacing a folder: only what was written there goes; what is somebody else's stays, through links, cut-off runs and collisions.
import { existsSync, linkSync, lstatSync, mkdirSync, readdirSync, renameSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeEach, expect, it } from "vitest";
import { type FolderJob, replaceFolder } from "../../src/files/index.js";
import { freshFolder } from "../support/recorder.js";
import { filesBelow, writeTree } from "./trees.js";

let outer: string;
let out: string;

beforeEach(() => {
  outer = freshFolder();
  out = join(outer, "out");
});

function job(changes: Partial<FolderJob> = {}): FolderJob {
  return { folder: out, shown: "out", list: ".list", maker: "the test", replace: false, ...changes };
}

const write = (files: Readonly<Record<string, string>>, changes: Partial<FolderJob> = {}) =>
  replaceFolder(job(changes), (folder) => writeTree(folder, files));

it("replaces what it wrote and lists it, and leaves nothing beside the folder", async () => {
  await write({ "a.txt": "1", "cards/x.html": "1", "cards/y.html": "1" });
  await write({ "a.txt": "2", "cards/x.html": "2", "boards/z.html": "2" });
  const { ".list": list, ...files } = filesBelow(out);
  expect(files).toEqual({ "a.txt": "2", "cards/x.html": "2", "boards/z.html": "2" });
  expect(JSON.parse(list ?? "")).toMatchObject({ files: ["a.txt", "boards/z.html", "cards/x.html"] });
  expect(readdirSync(outer)).toEqual(["out"]);
});

it("keeps what somebody else put into the folder", async () => {
  await write({ "a.txt": "1", "cards/x.html": "1" });
  writeTree(out, { ".git/HEAD": "ref", ".git/objects/ab/cd": "blob", CNAME: "club.example", "cards/note.txt": "mine" });
  mkdirSync(join(out, ".git", "refs", "tags"), { recursive: true });
  symlinkSync("nowhere", join(out, "way"));
  await write({ "a.txt": "2" });
  const { ".list": _, ...files } = filesBelow(out);
  expect(files).toEqual({
    "a.txt": "2",
    ".git/HEAD": "ref",
    ".git/objects/ab/cd": "blob",
    ".git/refs/tags/": "",
    CNAME: "club.example",
    "cards/note.txt": "mine",
    way: "-> nowhere",
  });
});

it("refuses a folder that holds other things, and with leave to replace still removes none of them", async () => {
  writeTree(out, { "letter.txt": "Dear all", "old/plan.txt": "plan" });
  await expect(write({ "a.txt": "1" })).rejects.toThrow(/holds files that the test did not write/);
  expect(filesBelow(out)).toEqual({ "letter.txt": "Dear all", "old/plan.txt": "plan" });
  await write({ "a.txt": "1" }, { replace: true });
  await write({ "b.txt": "2" });
  const { ".list": _, ...files } = filesBelow(out);
  expect(files).toEqual({ "b.txt": "2", "letter.txt": "Dear all", "old/plan.txt": "plan" });
});

it.each<[string, Record<string, string>, Record<string, string>]>([
  ["a file on a file", { "index.html": "mine" }, { "index.html": "new" }],
  ["a folder on a file", { "cards/mine.txt": "mine" }, { cards: "new" }],
  ["a file on a folder", { cards: "mine" }, { "cards/x.html": "new" }],
])("writes over nothing that is not its own: %s", async (_, mine, anew) => {
  writeTree(out, mine);
  await expect(write(anew, { replace: true })).rejects.toThrow(/would be written over/);
  expect(filesBelow(out)).toEqual(mine);
  expect(readdirSync(outer)).toEqual(["out"]);
});

it("keeps a link, and replaces the folder it leads to", async () => {
  mkdirSync(join(outer, "real"));
  symlinkSync("real", out);
  await write({ "a.txt": "1" });
  expect(lstatSync(out).isSymbolicLink()).toBe(true);
  expect(filesBelow(join(outer, "real"))["a.txt"]).toBe("1");
  await write({ "b.txt": "2" });
  expect(Object.keys(filesBelow(join(outer, "real")))).toEqual([".list", "b.txt"]);
});

it("refuses a link that leads nowhere, a file, and the folder it runs in", async () => {
  symlinkSync("nowhere", out);
  await expect(write({})).rejects.toThrow(/link that leads nowhere/);
  expect(lstatSync(out).isSymbolicLink()).toBe(true);
  writeFileSync(join(outer, "file"), "");
  await expect(write({}, { folder: join(outer, "file") })).rejects.toThrow(/is a file/);
  await expect(write({}, { folder: process.cwd(), replace: true })).rejects.toThrow(/folder you stand in/);
  expect(readdirSync(outer).sort()).toEqual(["file", "out"]);
});

it("does not touch neighbours with likely names", async () => {
  await write({ "a.txt": "1" });
  writeTree(`${out}.old`, { "a.txt": "mine" });
  writeTree(`${out}.making`, { "a.txt": "mine" });
  await write({ "a.txt": "2" });
  expect(filesBelow(`${out}.old`)).toEqual({ "a.txt": "mine" });
  expect(filesBelow(`${out}.making`)).toEqual({ "a.txt": "mine" });
});

it("leaves the old folder when making the new one fails", async () => {
  await write({ "a.txt": "1" });
  const failing = replaceFolder(job(), (folder) => {
    writeTree(folder, { "a.txt": "half" });
    throw new Error("out of paper");
  });
  await expect(failing).rejects.toThrow("out of paper");
  expect(filesBelow(out)["a.txt"]).toBe("1");
  expect(readdirSync(outer)).toEqual(["out"]);
});

it("puts the old folder back where a run was cut off between two renames, before it removes anything", async () => {
  await write({ "a.txt": "1" });
  const work = join(outer, ".out.slotwright-work");
  writeTree(join(work, "new"), { "a.txt": "half" });
  writeFileSync(join(work, "swap"), "");
  renameSync(out, join(work, "old"));
  const failing = replaceFolder(job(), () => {
    expect(filesBelow(out)["a.txt"]).toBe("1");
    throw new Error("cut off again");
  });
  await expect(failing).rejects.toThrow("cut off again");
  expect(filesBelow(out)["a.txt"]).toBe("1");
  expect(readdirSync(outer)).toEqual(["out"]);
});

it("takes down the old folder of a run cut off after the swap, and carries over what came since", async () => {
  await write({ "a.txt": "1", "cards/x.html": "1" });
  const { dev, ino } = statSync(out, { bigint: true });
  const work = join(outer, ".out.slotwright-work");
  writeTree(join(work, "old"), { ".list": '{"files":["gone.txt"]}', "gone.txt": "0", "late.txt": "mine", "cards/kept.txt": "mine" });
  linkSync(join(work, "old", "cards", "kept.txt"), join(out, "cards", "kept.txt"));
  writeFileSync(join(work, "swap"), `${dev}:${ino}`);
  await write({ "a.txt": "2" });
  const { ".list": _, ...files } = filesBelow(out);
  expect(files).toEqual({ "a.txt": "2", "late.txt": "mine", "cards/kept.txt": "mine" });
  expect(existsSync(work)).toBe(false);
});

it("takes a site from before there were lists for its own where it writes anew, and keeps the rest", async () => {
  writeTree(out, { ".list": "Made by an older version.\n", "a.txt": "0", "b.txt": "0" });
  await write({ "a.txt": "1" });
  const { ".list": _, ...files } = filesBelow(out);
  expect(files).toEqual({ "a.txt": "1", "b.txt": "0" });
});
