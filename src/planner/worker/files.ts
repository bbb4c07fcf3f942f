// Build files in and out: the same reading and writing as in a club's folder, so that what goes out passes its check.
import { readOne, writeRecord } from "../../records/index.js";
import type { BenchTasks } from "./protocol.js";

export const handlers = {
  write({ build }: BenchTasks["write"]["asks"]): BenchTasks["write"]["gives"] {
    return writeRecord("build", build);
  },
  read({ text, file }: BenchTasks["read"]["asks"]): BenchTasks["read"]["gives"] {
    const { record, findings } = readOne("build", text, file);
    return record ? { kind: "read", build: record, warnings: findings } : { kind: "unreadable", findings };
  },
};
