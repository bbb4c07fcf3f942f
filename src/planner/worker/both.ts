// Both workers as one script, for the single file: apart they would carry most of the code twice. Each that is started does what it is asked.
import { benchTasks } from "./bench-tasks.js";
import type { BenchTasks, Tasks } from "./protocol.js";
import { type Port, serve } from "./serve.js";
import { solveTasks } from "./solve-tasks.js";

// Whoever opens the records is told what the solving worker tells; the other does not look at it.
serve<Tasks & BenchTasks>(self as unknown as Port, { ...benchTasks, ...solveTasks });
