// The lock: one run at a time, told who it is; the lock of an ended run is taken over by exactly one.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { takeLock } from "../../src/files/lock.js";
import { freshFolder } from "../support/recorder.js";

const holder = (changes: object) => ({
  what: "slotwright site",
  pid: process.pid,
  host: hostname(),
  since: "2026-05-31",
  nonce: "0123456789abcdef",
  ...changes,
});

it("lets one run in at a time, and says who holds it", () => {
  const path = join(freshFolder(), "lock");
  const lock = takeLock(path, "slotwright site", "_site");
  expect(() => takeLock(path, "slotwright start", "_site")).toThrow(
    new RegExp(`_site is being written by another run: slotwright site, process ${process.pid} on `),
  );
  lock.release();
  expect(existsSync(path)).toBe(false);
  takeLock(path, "slotwright start", "_site").release();
});

it.each<[string, object]>([
  // No process has this number.
  ["whose process is gone", { pid: 4194305 }],
  ["whose number another process has now", { began: "1" }],
  ["from before the machine was started", { boot: "00000000-0000-0000-0000-000000000000" }],
])("takes over the lock of a run %s", (_, changes) => {
  if (process.platform !== "linux" && !("pid" in changes)) return;
  const folder = freshFolder();
  const path = join(folder, "lock");
  writeFileSync(path, JSON.stringify(holder(changes)));
  const lock = takeLock(path, "slotwright site", "_site");
  expect(readdirSync(folder)).toEqual(["lock"]);
  lock.release();
  expect(readdirSync(folder)).toEqual([]);
});

it("takes over where the run that was taking over was cut off as well", () => {
  const folder = freshFolder();
  const path = join(folder, "lock");
  writeFileSync(path, JSON.stringify(holder({ pid: 4194305 })));
  writeFileSync(`${path}.0123456789abcdef`, JSON.stringify(holder({ pid: 4194306, nonce: "1123456789abcdef" })));
  takeLock(path, "slotwright site", "_site").release();
  expect(readdirSync(folder)).toEqual([]);
});

it.each<[string, string]>([
  ["a run on another machine", JSON.stringify(holder({ host: "another-machine", pid: 4194305 }))],
  ["a file that is no lock", "my notes"],
])("does not take the place of %s", (_, text) => {
  const path = join(freshFolder(), "lock");
  writeFileSync(path, text);
  expect(() => takeLock(path, "slotwright site", "_site")).toThrow();
  expect(readFileSync(path, "utf8")).toBe(text);
});

it("lets no two of many runs in that find the same ended lock", async () => {
  const folder = freshFolder();
  const path = join(folder, "lock");
  const inside = join(folder, "inside");
  const lockFile = new URL("../../dist/src/files/lock.js", import.meta.url).href;
  // Each run holds the lock for a moment and makes a file that must not be there; refused runs try again.
  const script = `
    import { rmSync, writeFileSync } from "node:fs";
    import { takeLock } from ${JSON.stringify(lockFile)};
    const [path, inside, rounds] = [process.argv[1], process.argv[2], 40];
    let entered = 0;
    while (entered < rounds) {
      let lock;
      try { lock = takeLock(path, "test", "place"); } catch (problem) { if (problem.name !== "FileRefusal") throw problem; }
      if (!lock) { await new Promise((go) => setTimeout(go, Math.random() * 3)); continue; }
      writeFileSync(inside, "", { flag: "wx" });
      entered += 1;
      await new Promise((go) => setTimeout(go, Math.random() * 2));
      rmSync(inside);
      // Every other time it goes without letting go, as a run that is killed does.
      if (entered % 2) writeFileSync(path, JSON.stringify({ what: "test", pid: 4194305, host: ${JSON.stringify(hostname())}, since: "now", nonce: Math.random().toString(16).slice(2).padEnd(16, "0").slice(0, 16) }));
      else lock.release();
    }
  `;
  const runs = [1, 2, 3, 4].map(() => spawn(process.execPath, ["--input-type=module", "-e", script, path, inside], { stdio: "inherit" }));
  expect(await Promise.all(runs.map(async (run) => (await once(run, "exit"))[0]))).toEqual([0, 0, 0, 0]);
});
