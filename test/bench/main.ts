// npm run bench [name...]: every benchmark by its name, each with its table and with what is out of bounds; exit code 1 when anything is.
import { matrixBench } from "./matrix.js";
import { solverBench } from "./solver-report.js";
import { waysBench } from "./ways.js";

interface Bench {
  readonly table: string;
  readonly failed: readonly string[];
}

const benches: Readonly<Record<string, () => Bench | Promise<Bench>>> = {
  matrix: () => matrixBench(),
  solver: () => solverBench(),
  ways: () => waysBench(),
};

const asked = process.argv.slice(2).filter((word) => word in benches);
for (const [name, run] of Object.entries(benches)) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  const { table, failed } = await run();
  console.log(`${name}\n${table}\n${failed.map((f) => `out of bounds: ${f}\n`).join("")}`);
  if (failed.length > 0) process.exitCode = 1;
}
// Some of the solvers compared with keep threads of their own running.
process.exit();
