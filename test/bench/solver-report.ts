// Writes what the solver's benchmark measured: RESULTS.md and RESULTS.svg beside this file's source.
import { writeFileSync } from "node:fs";
import { cpus, loadavg } from "node:os";
import { join } from "node:path";
import { besideClingo, linesTable, measureLines } from "./fewest-lines.js";
import { plot, short, table } from "./figures.js";
import { sizes } from "./generate.js";
import { oracleDuels } from "./oracle-duels.js";
import { duels, firstSeed, growth, measureAll, rowTables, seedCount, verdicts } from "./solver.js";

export async function solverBench(): Promise<{ readonly table: string; readonly failed: readonly string[] }> {
  const rows = measureAll(seedCount, (line) => console.error(line));
  const switched = measureLines(seedCount, firstSeed, (line) => console.error(line));
  // Among the next builds are some that Z3 takes minutes over.
  const duelSeeds = Math.min(12, seedCount);
  const grown = growth(Math.min(60, seedCount));
  const fights = await duels({ medium: sizes.medium, large: sizes.large }, duelSeeds);
  const oracle = await oracleDuels(duelSeeds);
  const beside = await besideClingo(duelSeeds, firstSeed);
  const judged = verdicts(rows, fights, grown, switched, oracle);
  const text = `# The solver measured

Written by \`npm run bench solver\`, ${seedCount} seeded builds a row (a quarter of that for the largest), Node ${process.versions.node}, ${cpus().length} cores with ${loadavg()[1]!.toFixed(0)} jobs at once on average: a busy machine slows processor time too.

## Targets

${table(
  ["target", "met", "measured"],
  judged.map((v) => [v.target, v.met ? "yes" : "**no**", v.measured]),
)}

## Every task

${rowTables(rows)}

## Cheapest answers

Four modes share slots, jumpers and the board; each wants some of the cards enabled. Least trouble is the way from a machine as it stands to one of four that work (jumpers, slots, firmware, the board's revision). Milliseconds of processor time to the proof: median / p95 / maximum.

${linesTable(switched)}

Beside clingo (WebAssembly) and its optimisation, four modes on large builds: ${short(beside.own)} ms against ${short(beside.clingo)} ms (medians), the answers agreeing.

![Decide: median, p95 and maximum by kind of build](RESULTS.svg)

## Beside general solvers

Cold decisions on the same ${duelSeeds} builds a size in the same run, encoding included, median milliseconds of processor time.

${table(
  ["solver", "builds", "median", "times this engine"],
  fights.map((f) => [f.name, f.size, short(f.median), f.ratio.toFixed(0)]),
)}

Possible values beside clingo's brave consequences, and the exact count beside its enumeration where that ends; medians, and the median of the ratios build by build.

${table(
  ["task", "builds", "runs", "this engine", "clingo", "times"],
  oracle.map((o) => [o.task, o.size, `${o.builds}`, short(o.own), short(o.clingo), o.ratio.toFixed(0)]),
)}

## Growth

Median milliseconds to decide, of each build the best of three, one dimension at a time (12 slots, 12 cards, 12 firmware versions, 60 conflicts otherwise).

${table(
  ["along", "steps"],
  grown.map((g) => [g.what, g.steps.map(([n, ms]) => `${n}: ${short(ms)}`).join(", ")]),
)}
`;
  const folder = join(process.cwd(), "test", "bench");
  writeFileSync(join(folder, "RESULTS.md"), text);
  writeFileSync(
    join(folder, "RESULTS.svg"),
    plot(
      "Decide and possible values: dot median, tick p95, bar maximum",
      rows.flatMap((r) => [
        { label: `${r.name}: decide`, spread: r.decide },
        ...(r.possible.runs > 0 ? [{ label: `${r.name}: possible values`, spread: r.possible }] : []),
      ]),
    ),
  );
  return { table: text, failed: judged.filter((v) => !v.met).map((v) => `${v.target}: ${v.measured}`) };
}
