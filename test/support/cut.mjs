// Loaded before a command (node --import): cuts it off at its n-th call that changes a file, by a kill or by an answer of the system's.
// CUT_AT=n with CUT=kill, or with CUT=ENOSPC, EACCES, ... from the n-th call on; CUT_COUNT=<file> says how many such calls there were.
import fs from "node:fs";
import { syncBuiltinESMExports } from "node:module";
import { isMainThread } from "node:worker_threads";

const changing =
  "writeFileSync renameSync linkSync symlinkSync mkdirSync rmSync rmdirSync unlinkSync fsyncSync cpSync copyFileSync chmodSync";
/** A full disk still lets files go, and so must we. */
const making = new Set("writeFileSync linkSync symlinkSync mkdirSync cpSync copyFileSync".split(" "));
const { CUT, CUT_AT, CUT_COUNT } = process.env;
const at = Number(CUT_AT ?? Number.POSITIVE_INFINITY);
const original = { ...fs };
let calls = 0;

function kill() {
  process.kill(process.pid, "SIGKILL");
  // The signal comes at once or a moment later.
  for (;;);
}

if (isMainThread)
  for (const name of changing.split(" "))
    fs[name] = (...given) => {
      calls += 1;
      if (calls >= at && CUT === "kill") {
        const [path, content] = given;
        if (name === "writeFileSync" && typeof path === "string") original.writeFileSync(path, content.slice(0, content.length / 2));
        kill();
      }
      if (calls >= at && CUT !== "kill" && making.has(name)) {
        const path = given.find((one) => typeof one === "string");
        throw Object.assign(new Error(`${CUT}: made up, ${name} '${path}'`), { code: CUT, syscall: "write", path });
      }
      return original[name](...given);
    };
syncBuiltinESMExports();

if (CUT_COUNT) process.on("exit", () => original.writeFileSync(CUT_COUNT, String(calls)));
