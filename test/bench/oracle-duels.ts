// Possible values beside clingo's brave consequences, and the exact count beside its enumeration, on the same builds in the same run.
// Both must agree, or the comparison is worth nothing. Enumeration only ends where there are a few million combinations at most.
import { count, possible } from "../../src/solver/index.js";
import { bravelyPossible, clingoProgram, loadClingo } from "../support/solver/clingo.js";
import { range } from "../support/solver/random.js";
import { processorMs, spreadOf } from "./figures.js";
import { type Build, type BuildSize, generateBuild, sizes } from "./generate.js";

export interface OracleDuel {
  readonly task: string;
  readonly size: string;
  readonly builds: number;
  readonly own: number;
  readonly clingo: number;
  /** The median of the ratios, build by build. */
  readonly ratio: number;
}

const from = 52_001;
const million = 1_000_000n;
/** Builds whose combinations clingo can list one by one. */
const countable: BuildSize = { slots: 6, cards: 5, firmware: 6, conflicts: 10 };

export async function oracleDuels(seeds: number): Promise<OracleDuel[]> {
  const drawn = (size: BuildSize, n: number) =>
    range(n).map((seed) => generateBuild(size, (["normal", "tight"] as const)[seed % 2]!, from + seed));
  const fields = (["medium", "large"] as const).map((size) => ({ size, builds: drawn(sizes[size], seeds), own: [] as number[] }));
  // The engine comes first: once clingo is loaded, its threads count as processor time, too.
  for (const { builds, own } of fields) for (const { whole } of builds) own.push(timed(() => possible(whole)).ms);
  const many = range(400)
    .map((seed) => generateBuild(countable, "loose", from + seed))
    .map((build) => ({ build, ...timed(() => count(build.whole)) }))
    .filter(({ value }) => value.exact && value.count >= million && value.count < 3n * million)
    .slice(0, Math.min(5, seeds));
  const run = await loadClingo();
  const out: OracleDuel[] = [];
  for (const { size, builds, own } of fields) {
    const theirs: number[] = [];
    for (const { whole } of builds) {
      const start = processorMs();
      const values = await bravelyPossible(run, whole);
      theirs.push(processorMs() - start);
      const same = possible(whole).values.every(
        (set, v) => set.size === values[v]!.size && [...set].every((value) => values[v]!.has(value)),
      );
      if (!same) throw new Error(`clingo gives other possible values on ${size}`);
    }
    out.push(duel("possible values", size, own, theirs));
  }
  const theirs: number[] = [];
  for (const { build, value } of many) theirs.push(await enumerated(run, build, value.count));
  out.push(
    duel(
      "exact count",
      "1 to 3 million combinations",
      many.map((m) => m.ms),
      theirs,
    ),
  );
  return out;
}

async function enumerated(run: Awaited<ReturnType<typeof loadClingo>>, build: Build, expected: bigint): Promise<number> {
  const start = processorMs();
  const answer = await run(clingoProgram(build.whole), 0, ["--quiet=2,2"]);
  const ms = processorMs() - start;
  if (BigInt(answer.Models.Number) !== expected)
    throw new Error(`clingo lists ${answer.Models.Number} combinations, the engine counts ${expected}`);
  return ms;
}

function duel(task: string, size: string, own: readonly number[], theirs: readonly number[]): OracleDuel {
  return {
    task,
    size,
    builds: own.length,
    own: spreadOf(own).median,
    clingo: spreadOf(theirs).median,
    ratio: spreadOf(theirs.map((ms, i) => ms / own[i]!)).median,
  };
}

function timed<T>(task: () => T): { readonly value: T; readonly ms: number } {
  const start = processorMs();
  const value = task();
  return { value, ms: processorMs() - start };
}
