// The solving worker of the site.
import type { Tasks } from "./protocol.js";
import { type Port, serve } from "./serve.js";
import { solveTasks } from "./solve-tasks.js";

serve<Tasks>(self as unknown as Port, solveTasks);
