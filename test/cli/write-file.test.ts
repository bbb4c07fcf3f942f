// Writing results: never over something unasked, never half, and a folder swap that leaves no rubbish.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { swapFolder, writeBeside } from "../../src/cli/write-file.js";
import { WrongUse } from "../../src/cli/wrong-use.js";
import { freshFolder } from "../support/recorder.js";

it("writes a file in a folder that is not there yet", () => {
  const folder = freshFolder();
  writeBeside(join(folder, "a", "b.txt"), "text", false);
  expect(readFileSync(join(folder, "a", "b.txt"), "utf8")).toBe("text");
  expect(readdirSync(join(folder, "a"))).toEqual(["b.txt"]);
});

it("writes over a file only when told to", () => {
  const path = join(freshFolder(), "b.txt");
  writeFileSync(path, "old");
  expect(() => writeBeside(path, "new", false)).toThrow(WrongUse);
  expect(readFileSync(path, "utf8")).toBe("old");
  writeBeside(path, "new", true);
  expect(readFileSync(path, "utf8")).toBe("new");
});

it("leaves nothing beside the place when it fails", () => {
  const folder = freshFolder();
  mkdirSync(join(folder, "b.txt", "inside"), { recursive: true });
  expect(() => writeBeside(join(folder, "b.txt"), "new", true)).toThrow();
  expect(readdirSync(folder)).toEqual(["b.txt"]);
});

it("puts a fresh folder in the place of the old one", () => {
  const folder = freshFolder();
  const place = join(folder, "site");
  for (const name of ["fresh", "site"]) mkdirSync(join(folder, name));
  writeFileSync(join(place, "old.html"), "old");
  writeFileSync(join(folder, "fresh", "new.html"), "new");
  swapFolder(join(folder, "fresh"), place);
  expect(readdirSync(folder)).toEqual(["site"]);
  expect(readdirSync(place)).toEqual(["new.html"]);
});

it("keeps the old folder when the fresh one cannot be moved", () => {
  const folder = freshFolder();
  const place = join(folder, "site");
  mkdirSync(place);
  writeFileSync(join(place, "old.html"), "old");
  expect(() => swapFolder(join(folder, "missing"), place)).toThrow();
  expect(existsSync(join(place, "old.html"))).toBe(true);
  expect(readdirSync(folder)).toEqual(["site"]);
});
