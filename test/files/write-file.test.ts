// Writing one file: never over something unasked, never half, through links, with nothing left beside it.
import { chmodSync, mkdirSync, readdirSync, readFileSync, readlinkSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { FileRefusal, writeFile } from "../../src/files/index.js";
import { freshFolder } from "../support/recorder.js";

it("writes a file in a folder that is not there yet", () => {
  const folder = freshFolder();
  writeFile(join(folder, "a", "b.txt"), "text", false);
  expect(readFileSync(join(folder, "a", "b.txt"), "utf8")).toBe("text");
  expect(readdirSync(join(folder, "a"))).toEqual(["b.txt"]);
});

it("writes over a file only when told to", () => {
  const path = join(freshFolder(), "b.txt");
  writeFileSync(path, "old");
  expect(() => writeFile(path, "new", false)).toThrow(FileRefusal);
  expect(readFileSync(path, "utf8")).toBe("old");
  writeFile(path, "new", true);
  expect(readFileSync(path, "utf8")).toBe("new");
});

it("leaves a folder alone, and nothing beside it", () => {
  const folder = freshFolder();
  mkdirSync(join(folder, "b.txt", "inside"), { recursive: true });
  expect(() => writeFile(join(folder, "b.txt"), "new", true)).toThrow(/is a folder/);
  expect(readdirSync(folder)).toEqual(["b.txt"]);
});

it("writes through a link, and keeps the rights of what is there", () => {
  const folder = freshFolder();
  writeFileSync(join(folder, "real.txt"), "old");
  chmodSync(join(folder, "real.txt"), 0o640);
  symlinkSync("real.txt", join(folder, "link.txt"));
  expect(() => writeFile(join(folder, "link.txt"), "new", false)).toThrow(/is there already/);
  writeFile(join(folder, "link.txt"), "new", true);
  expect(readlinkSync(join(folder, "link.txt"))).toBe("real.txt");
  expect(readFileSync(join(folder, "real.txt"), "utf8")).toBe("new");
  if (process.platform !== "win32") expect((statSync(join(folder, "real.txt")).mode & 0o777).toString(8)).toBe("640");
});

it("takes the place of no link that leads nowhere", () => {
  const folder = freshFolder();
  symlinkSync("nowhere.txt", join(folder, "link.txt"));
  for (const replace of [false, true]) expect(() => writeFile(join(folder, "link.txt"), "new", replace)).toThrow(/leads nowhere/);
  expect(readlinkSync(join(folder, "link.txt"))).toBe("nowhere.txt");
});

it.skipIf(process.platform === "win32")("takes the place of no device", () => {
  expect(() => writeFile("/dev/null", "new", true)).toThrow(/no plain file/);
  expect(statSync("/dev/null").isCharacterDevice()).toBe(true);
});

it("clears away the part of a run that was cut off, and no other file", () => {
  const folder = freshFolder();
  // No process has this number.
  const dead = `.b.txt.${hostname()}.4194305.slotwright-part`;
  const others = [`.b.txt.another-machine.4194305.slotwright-part`, `.b.txt.${hostname()}.mine.slotwright-part`, ".b.txt.part"];
  for (const name of [dead, ...others]) writeFileSync(join(folder, name), "half");
  writeFile(join(folder, "b.txt"), "text", false);
  expect(readdirSync(folder).sort()).toEqual(["b.txt", ...others].sort());
});
