// slotwright site and start: what they refuse before any work is done. What they build is tested on the built site.
import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { freshFolder, slotwright } from "../support/recorder.js";

it.each<[string[], RegExp]>([
  [["site", "--out", "mine"], /mine holds files that slotwright site did not write/],
  [["site", "--out", "file"], /file is a file/],
  [["site", "--address", "example.org"], /example\.org is not an address/],
  [["start", "--port", "http"], /--port http is not a port/],
  [["start", "--out", "mine"], /mine holds files/],
])("%j is refused", async (args, says) => {
  const folder = freshFolder();
  mkdirSync(join(folder, "mine"));
  writeFileSync(join(folder, "mine", "letter.txt"), "Dear all");
  writeFileSync(join(folder, "file"), "");
  const { code, err } = await slotwright(args, { folder });
  expect(code).toBe(2);
  expect(err).toMatch(says);
  expect(existsSync(join(folder, "mine", "letter.txt"))).toBe(true);
  expect(existsSync(join(folder, "_site"))).toBe(false);
});
