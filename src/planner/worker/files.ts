// Build files in and out: the same reading, looking up and writing as in a club's folder, so that what goes out passes its check and
// what comes in is refused for the same reasons, with the same places.
import type { Catalogue } from "../../catalogue/index.js";
import { findFaults } from "../../machine/index.js";
import { type Finding, locator, readOne, writeRecord } from "../../records/index.js";
import type { BenchTasks } from "./protocol.js";

export function writeBuild({ build }: BenchTasks["write"]["asks"]): BenchTasks["write"]["gives"] {
  return writeRecord("build", build);
}

export function readBuild(catalogue: Catalogue, { text, file }: BenchTasks["read"]["asks"]): BenchTasks["read"]["gives"] {
  const { record, findings } = readOne("build", text, file);
  if (!record) return { kind: "unreadable", findings };
  const at = locator(file, text);
  const unresolved = findFaults(catalogue, record).map(
    ({ pointer, on, says, hint }): Finding => ({ code: "rule-question", level: "error", says, hint, at: at(pointer, { on }) }),
  );
  return unresolved.length > 0 ? { kind: "unresolved", findings: unresolved } : { kind: "read", build: record, warnings: findings };
}
