// Writing results: never over something unasked, never half.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { writeBeside } from "../../src/cli/write-file.js";
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
