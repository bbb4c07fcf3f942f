// The second worker of the site, for the bench.
import { benchTasks } from "./bench-tasks.js";
import type { BenchTasks } from "./protocol.js";
import { type Port, serve } from "./serve.js";

serve<BenchTasks>(self as unknown as Port, benchTasks);
