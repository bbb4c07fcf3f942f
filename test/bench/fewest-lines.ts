// The switched machine measured: four modes to the fewest lines, every size and strain, refused ones too; and the fewest changes to a
// machine as it stands, the other cost that owners ask for. A time counts only up to the proof that nothing cheaper is left.
import { type Cost, cheapest } from "../../src/solver/index.js";
import { leastByClingo, loadClingo } from "../support/solver/clingo.js";
import { Random, range } from "../support/solver/random.js";
import { processorMs, type Spread, spelt, spreadOf, table } from "./figures.js";
import { type Build, generateBuild, type Strain, sizes, strains } from "./generate.js";
import { generateModes } from "./modes.js";

export interface LinesRow {
  readonly name: string;
  readonly modes: Spread;
  readonly refused: number;
  /** Fewest and most lines a machine came to. */
  readonly lines: readonly [number, number];
  readonly changes: Spread;
  /** Of both, those that a second was not enough for. */
  readonly unproven: number;
}

const cap = 1000;

export function measureLines(seeds: number, from: number, say: (line: string) => void): LinesRow[] {
  for (const seed of range(12)) {
    const { problem, lines } = generateModes(sizes.large, strains[seed % 4]!, seed);
    cheapest(problem, [lines], { k: 1 }, { steps: 2000 });
  }
  return Object.entries(sizes).flatMap(([name, size]) =>
    strains.map((strain) => {
      const row = measure(`${name} ${strain}`, size, strain, name === "larger" ? Math.ceil(seeds / 4) : seeds, from);
      say(`${row.name}: four modes ${spelt(row.modes)}, fewest changes ${spelt(row.changes)}`);
      return row;
    }),
  );
}

function measure(name: string, size: (typeof sizes)[keyof typeof sizes], strain: Strain, seeds: number, from: number): LinesRow {
  const [modes, changes, lines]: [number[], number[], number[]] = [[], [], []];
  let [refused, unproven] = [0, 0];
  for (const seed of range(seeds)) {
    const machine = generateModes(size, strain, from + seed);
    const began = processorMs();
    const fewest = cheapest(machine.problem, [machine.lines], { k: 1 }, { stop: () => processorMs() > began + cap });
    modes.push(processorMs() - began);
    if (!fewest.proven) unproven++;
    else if (fewest.solutions[0]) lines.push(fewest.solutions[0].cost[0]!);
    else refused++;

    const build = generateBuild(size, strain, from + seed);
    const others = range(build.whole.variables.length).filter((v) => !build.slotVariables.includes(v));
    const cost = trouble(build, seed);
    const then = processorMs();
    const least = cheapest(build.whole, [cost], { k: 4, project: others }, { stop: () => processorMs() > then + cap });
    changes.push(processorMs() - then);
    if (!least.proven) unproven++;
  }
  const span = lines.length > 0 ? ([Math.min(...lines), Math.max(...lines)] as const) : ([0, 0] as const);
  return { name, modes: spreadOf(modes), refused, lines: span, changes: spreadOf(changes), unproven };
}

/** Median times of the engine and of clingo's optimisation on the same large machines, both to the proof; run after all else, clingo keeps threads. */
export async function besideClingo(seeds: number, from: number): Promise<{ readonly own: number; readonly clingo: number }> {
  const machines = range(seeds).map((seed) => generateModes(sizes.large, strains[seed % 3]!, from + seed));
  const times: [number[], number[]] = [[], []];
  const answers = machines.map(({ problem, lines }) => {
    const began = processorMs();
    const [best] = cheapest(problem, [lines], { k: 1 }).solutions;
    times[0].push(processorMs() - began);
    return best?.cost[0];
  });
  const run = await loadClingo();
  for (const [i, { problem, lines }] of machines.entries()) {
    const began = processorMs();
    const least = await leastByClingo(run, problem, lines);
    times[1].push(processorMs() - began);
    if (least !== answers[i]) throw new Error(`clingo finds ${least} lines on machine ${i}, the engine ${answers[i]}`);
  }
  return { own: spreadOf(times[0]).median, clingo: spreadOf(times[1]).median };
}

/** What it takes to get from a machine as it stands (drawn near a working one) to another: jumpers, slots, firmware, the board. */
export function trouble(build: Build, seed: number): Cost {
  const random = new Random(seed + 77);
  const price = (name: string) => (name === "revision" ? 400 : name === "firmware" ? 16 : name.endsWith("slot") ? 4 : 1);
  return {
    terms: build.whole.variables.map(({ name, size }, variable) => {
      const stands = random.next() < 0.7 ? (build.planted?.[variable] ?? 0) : random.int(0, size - 1);
      return { variable, weights: range(size).map((value) => (value === stands ? 0 : price(name))) };
    }),
  };
}

export function linesTable(rows: readonly LinesRow[]): string {
  return table(
    ["builds", "four modes to the fewest lines", "lines", "refused", "four with least trouble", "not proven in 1 s"],
    rows.map((r) => [r.name, spelt(r.modes), r.lines.join(" to "), `${r.refused} of ${r.modes.runs}`, spelt(r.changes), `${r.unproven}`]),
  );
}
