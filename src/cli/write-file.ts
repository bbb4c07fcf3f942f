// Writing a result: beside its place first, then renamed, so that no reader ever sees half of it; never over something unasked.
import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { WrongUse } from "./wrong-use.js";

export function writeBeside(path: string, content: string | Uint8Array, replace: boolean): void {
  if (existsSync(path) && !replace)
    throw new WrongUse(`${path} is there already.`, "Say --replace to write over it, or name another file.");
  mkdirSync(dirname(path), { recursive: true });
  const beside = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    writeFileSync(beside, content, { flag: "wx" });
    renameSync(beside, path);
  } catch (problem) {
    rmSync(beside, { force: true });
    throw problem;
  }
}
