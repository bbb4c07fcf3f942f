// The engine on seeded builds nobody tuned it for: every task, every size and strain; beside general solvers; growth with each dimension.
// Gates stand on the maximum, since medians hid the runaways of the past. BENCH_SEEDS sets the number of builds a row (200 when left out).
import { cheapest, count, decide, oneReason, oneRepair, openSession, reasonsAndRepairs } from "../../src/solver/index.js";
import { range } from "../support/solver/random.js";
import type { LinesRow } from "./fewest-lines.js";
import { processorMs, type Spread, short, spelt, spreadOf, table } from "./figures.js";
import { type Build, type BuildSize, generateBuild, type Strain, sizes, strains } from "./generate.js";
import type { OracleDuel } from "./oracle-duels.js";
import { rivalsOf } from "./rivals.js";

export const seedCount = Number(process.env.BENCH_SEEDS ?? 200);
/** Seeds of the benchmark lie apart from those looked at while the engine was written. */
export const firstSeed = 50_001;
const countCap = 1000;

export interface Row {
  readonly name: string;
  readonly refused: number;
  readonly decide: Spread;
  readonly possible: Spread;
  readonly click: Spread;
  readonly count: Spread;
  readonly overCap: number;
  readonly oneReason: Spread;
  readonly oneRepair: Spread;
  readonly allSets: Spread;
  readonly incompleteSets: number;
  readonly cheapest: Spread;
}

function timed<T>(into: number[], task: () => T): T {
  const from = processorMs();
  const result = task();
  into.push(processorMs() - from);
  return result;
}

/** Too short for the clock of processor time. */
function wallMs(task: () => unknown): number {
  const from = performance.now();
  task();
  return performance.now() - from;
}

/**
 * A budget of processor time, for the tasks that have no end of their own. Asking for processor time is dear (on some systems more than
 * what is measured), so it is asked only when the clock, which is cheap, has moved on.
 */
function within(ms: number): { stop: () => boolean } {
  const end = processorMs() + ms;
  let next = 0;
  return {
    stop: () => {
      const now = performance.now();
      if (now < next) return false;
      next = now + 4;
      return processorMs() > end;
    },
  };
}

export function measure(name: string, size: BuildSize, strain: Strain, seeds: number, from = firstSeed, counting = true): Row {
  const times = { decide: [], possible: [], click: [], count: [], oneReason: [], oneRepair: [], allSets: [], cheapest: [] } as Record<
    string,
    number[]
  >;
  let [refused, overCap, incompleteSets] = [0, 0, 0];
  for (const seed of range(seeds)) {
    const build = generateBuild(size, strain, from + seed);
    const found = timed(times.decide!, () => decide(build.whole));
    if (found.kind === "none") {
      refused++;
      timed(times.oneReason!, () => oneReason(build.problem, build.choices));
      timed(times.oneRepair!, () => oneRepair(build.problem, build.choices));
      const budget = within(2000);
      if (!timed(times.allSets!, () => reasonsAndRepairs(build.problem, build.choices, budget)).reasons.complete) incompleteSets++;
      continue;
    }
    clickThrough(build, times, seed);
    if (counting && !timed(times.count!, () => count(build.whole, {}, within(countCap))).exact) overCap++;
    const budget = within(1000);
    timed(times.cheapest!, () => cheapest(build.whole, [slotPrices(build)], { k: 4, project: build.slotVariables }, budget));
  }
  const spread = (key: string) => spreadOf(times[key]!);
  return {
    name,
    refused,
    overCap,
    incompleteSets,
    decide: spread("decide"),
    possible: spread("possible"),
    click: spread("click"),
    count: spread("count"),
    oneReason: spread("oneReason"),
    oneRepair: spread("oneRepair"),
    allSets: spread("allSets"),
    cheapest: spread("cheapest"),
  };
}

/** First possible values, then six clicks and one of them undone. */
function clickThrough(build: Build, times: Record<string, number[]>, seed: number): void {
  const session = openSession(build.whole);
  let possible = timed(times.possible!, () => session.possible());
  for (const click of range(6)) {
    const variable = (seed + click * 7 + 3) % build.problem.variables.length;
    const values = [...possible.values[variable]!];
    if (values.length === 0) continue;
    session.select(variable, values[values.length >> 1]!);
    possible = timed(times.click!, () => session.possible());
    if (click === 5) {
      session.withdraw((seed + 3) % build.problem.variables.length);
      possible = timed(times.click!, () => session.possible());
    }
  }
}

/** A price for each slot used. */
function slotPrices(build: Build) {
  return {
    terms: build.slotVariables.map((variable) => ({ variable, weights: range(build.problem.variables[variable]!.size).map((s) => s % 5) })),
  };
}

export interface Duel {
  readonly name: string;
  readonly size: string;
  readonly median: number;
  readonly ratio: number;
}

/**
 * Cold decisions side by side in one run. The engine is measured on all sizes before any other solver is loaded: processor time counts
 * every thread, and some of them keep threads running.
 */
export async function duels(named: Readonly<Record<string, BuildSize>>, seeds: number): Promise<Duel[]> {
  const fields = Object.entries(named).map(([size, spec]) => {
    const builds = range(seeds).map((seed) => generateBuild(spec, (["normal", "tight"] as const)[seed % 2]!, firstSeed + 1000 + seed));
    const own: number[] = [];
    const answers = builds.map(({ whole }) => timed(own, () => decide(whole)).kind === "found");
    return { size, builds, answers, own: spreadOf(own).median };
  });
  const out: Duel[] = fields.map(({ size, own }) => ({ name: "this engine", size, median: own, ratio: 1 }));
  for (const load of rivalsOf) {
    const rival = await load();
    for (const { size, builds, answers, own } of fields) {
      const times: number[] = [];
      for (const [i, { whole }] of builds.entries()) {
        const from = processorMs();
        const answer = await rival.decide(whole);
        times.push(processorMs() - from);
        if (answer !== answers[i]) throw new Error(`${rival.name} answers ${answer} on ${size} ${i}, the engine ${answers[i]}`);
      }
      const { median } = spreadOf(times);
      out.push({ name: rival.name, size, median, ratio: median / own });
    }
  }
  return out;
}

/** Medians of deciding along one dimension, the others held; every build is decided a few times and its best time taken. */
export function growth(seeds: number): { readonly what: string; readonly steps: readonly (readonly [string, number])[] }[] {
  const base = { slots: 12, cards: 12, firmware: 12, conflicts: 60 };
  const median = (size: BuildSize) =>
    spreadOf(
      range(seeds).map((seed) => {
        const { whole } = generateBuild(size, "normal", 90_001 + seed);
        return Math.min(...range(3).map(() => wallMs(() => decide(whole))));
      }),
    ).median;
  const along = (what: string, make: (n: number) => BuildSize, ns: readonly number[]) => ({
    what,
    steps: ns.map((n): readonly [string, number] => [`${n}`, median(make(n))]),
  });
  return [
    along("firmware versions", (firmware) => ({ ...base, firmware }), [4, 10, 20, 30]),
    along("conflicts", (conflicts) => ({ ...base, conflicts }), [50, 100, 200]),
    along("cards (and slots)", (cards) => ({ ...base, cards, slots: cards }), [6, 10, 14, 18, 22]),
  ];
}

export function measureAll(seeds: number, say: (line: string) => void): Row[] {
  // The first builds pay for the engine being compiled to machine code; they are not counted.
  for (const strain of strains) for (const size of [sizes.medium, sizes.large]) measure("warm", size, strain, 4, 1, size === sizes.medium);
  const rows: Row[] = [];
  for (const [name, size] of Object.entries(sizes)) {
    for (const strain of strains) {
      const row = measure(
        `${name} ${strain}`,
        size,
        strain,
        name === "larger" ? Math.ceil(seeds / 4) : seeds,
        firstSeed,
        name !== "larger",
      );
      rows.push(row);
      say(
        `${row.name}: decide ${spelt(row.decide)}, possible ${spelt(row.possible)}, count ${spelt(row.count)} (${row.overCap} over), all sets ${spelt(row.allSets)}`,
      );
    }
  }
  return rows;
}

export function rowTables(rows: readonly Row[]): string {
  const first = table(
    ["builds", "refused", "decide", "first possible values", "each click", "exact count", "over 1 s", "4 cheapest"],
    rows.map((r) => [
      r.name,
      `${r.refused} of ${r.decide.runs}`,
      spelt(r.decide),
      spelt(r.possible),
      spelt(r.click),
      spelt(r.count),
      `${r.overCap} of ${r.count.runs}`,
      spelt(r.cheapest),
    ]),
  );
  const second = table(
    ["refused builds", "one reason", "one repair", "all reasons and repairs", "cut at 2 s"],
    rows
      .filter((r) => r.refused > 0)
      .map((r) => [r.name, spelt(r.oneReason), spelt(r.oneRepair), spelt(r.allSets), `${r.incompleteSets} of ${r.allSets.runs}`]),
  );
  return `Milliseconds of processor time: median / p95 / maximum.\n\n${first}\n\n${second}`;
}

export interface Verdict {
  readonly target: string;
  readonly met: boolean;
  readonly measured: string;
}

/** The targets against what was measured. */
export function verdicts(
  rows: readonly Row[],
  fights: readonly Duel[],
  grown: ReturnType<typeof growth>,
  switched: readonly LinesRow[],
  oracle: readonly OracleDuel[],
): Verdict[] {
  const of = (pattern: RegExp) => rows.filter((r) => pattern.test(r.name));
  const worst = (
    some: readonly Row[],
    key: "decide" | "possible" | "click" | "count" | "oneReason" | "oneRepair" | "allSets" | "cheapest",
    tail: "p95" | "max",
  ) => Math.max(0, ...some.filter((r) => r[key].runs > 0).map((r) => r[key][tail]));
  const large = of(/^large /);
  const under = (target: string, value: number, limit: number): Verdict => ({ target, met: value < limit, measured: `${short(value)} ms` });
  const over = of(/^large (normal|tight)/);
  const counted = over.reduce((sum, r) => sum + r.count.runs, 0);
  const late = over.reduce((sum, r) => sum + r.overCap, 0);
  const ratio = Math.min(...fights.filter((f) => f.name.startsWith("clingo")).map((f) => f.ratio));
  const times = (target: string, least: number, one: OracleDuel): Verdict => ({
    target: `${target}: at least ${least} times faster than clingo`,
    met: one.ratio >= least,
    measured: `${one.ratio.toFixed(0)} times`,
  });
  const against = (task: string, size: string) => oracle.find((o) => o.task === task && o.size.startsWith(size))!;
  const grows = (what: string) => {
    const steps = grown.find((g) => g.what.startsWith(what))!.steps;
    return steps.at(-1)![1] / steps[0]![1];
  };
  return [
    under("decide, large: p95 under 10 ms", worst(large, "decide", "p95"), 10),
    under("decide, large: maximum under 50 ms", worst(large, "decide", "max"), 50),
    { target: "decide: median at least 100 times faster than cold clingo", met: ratio >= 100, measured: `${ratio.toFixed(0)} times` },
    under("first possible values, large: p95 under 50 ms", worst(large, "possible", "p95"), 50),
    under("first possible values, large: maximum under 150 ms", worst(large, "possible", "max"), 150),
    under("each click, large: p95 under 16 ms", worst(large, "click", "p95"), 16),
    under("each click, large: maximum under 50 ms", worst(large, "click", "max"), 50),
    times("first possible values, medium", 10, against("possible values", "medium")),
    times("first possible values, large", 5, against("possible values", "large")),
    under("exact count, medium: maximum under 300 ms", worst(of(/^medium /), "count", "max"), 300),
    {
      target: "exact count, large normal and tight: 95 % under 1 s",
      met: late <= counted * 0.05,
      measured: `${counted - late} of ${counted}`,
    },
    times("exact count, from a million combinations on", 100, against("exact count", "1 to")),
    under("one reason, large: maximum under 50 ms", worst(large, "oneReason", "max"), 50),
    under("one repair, large: maximum under 50 ms", worst(large, "oneRepair", "max"), 50),
    under("all reasons and repairs, large: maximum under 500 ms", worst(large, "allSets", "max"), 500),
    under(
      "four modes to the fewest lines, large: maximum under 100 ms",
      Math.max(...switched.filter((r) => r.name.startsWith("large ")).map((r) => r.modes.max)),
      100,
    ),
    under("4 cheapest, large: maximum under 100 ms", worst(large, "cheapest", "max"), 100),
    { target: "growth: firmware 4 to 30 within 2 times", met: grows("firmware") <= 2, measured: `${grows("firmware").toFixed(1)} times` },
    { target: "growth: conflicts 50 to 200 no slower", met: grows("conflicts") <= 1, measured: `${grows("conflicts").toFixed(1)} times` },
    {
      target: "growth: decide within 2 times from 6 to 22 cards",
      met: grows("cards") <= 2,
      measured: `${grows("cards").toFixed(1)} times`,
    },
  ];
}
