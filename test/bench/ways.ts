// The fewest ways: what they and the best division cost on machines of the solver's large size, with four to six cards and all else open, and
// the change-over by hand beside it. Held against a known piece of work on the same machines in the same run: whether all the cards can be
// on at once. Clingo's optimisation divides the same machines.
import { gather } from "../../src/catalogue/index.js";
import { compile } from "../../src/encoding/index.js";
import { type ResolvedBuild, resolveBuild } from "../../src/machine/index.js";
import { changeOver, verdictOf, withSwitch } from "../../src/planning/index.js";
import { asked, openWays } from "../../src/planning/ways/open-ways.js";
import { wishesOf } from "../../src/planning/ways/wishes.js";
import type { Build, Card, Loaded } from "../../src/records/index.js";
import { type Cost, cheapest, type Problem } from "../../src/solver/index.js";
import { leastByClingo, loadClingo } from "../support/solver/clingo.js";
import { Random, range } from "../support/solver/random.js";
import { processorMs, type Spread, short, spreadOf, table } from "./figures.js";
import { largeMachine } from "./large-machine.js";

/**
 * What the ways may cost, as multiples of the median of the known piece of work: half of the machines, nineteen in twenty, the slowest. Where
 * they were set the known work took 5 ms, so that nineteen in twenty take 200 ms at most, and the slowest half a second.
 */
export const bounds = { median: 14, p95: 40, slowest: 100 } as const;

export interface WaysFigures {
  /** Whether all the cards can be on at once: compiled and decided. */
  readonly known: Spread;
  readonly withSwitch: Spread;
  readonly byHand: Spread;
  /** By outcome and number of ways, how many machines. */
  readonly ends: Readonly<Record<string, number>>;
}

/** A large machine with a few cards that can be switched off, most of which want only some of the versions. */
function machineOf(seed: number): { readonly records: readonly Loaded[]; readonly build: Build } {
  const { records } = largeMachine(seed);
  const random = new Random(seed + 31);
  const chosen = random.shuffle(records.flatMap((l) => (l.kind === "card" ? [l.record as Card] : []))).slice(0, random.int(4, 6));
  for (const card of chosen) {
    const from = random.int(0, 3) * 8;
    const enable: Card["enable"] = { by: "contacts", sense: "open-enables", points: [], releases: ["io", "interrupts", "firmware"] };
    const needs: Card["needs"] = {
      firmware: [{ family: "line", from: `V${from + 1}`, upTo: `V${Math.min(30, from + random.int(4, 12))}` }],
    };
    Object.assign(card, { enable, needs: random.next() < 0.8 ? needs : undefined });
  }
  return { records, build: { id: "q", name: "Q", board: "backplane", cards: chosen.map(({ id }) => ({ card: id })) } };
}

export function largeQuestion(seed: number): ResolvedBuild {
  const { records, build } = machineOf(seed);
  const request = resolveBuild(gather(records), build);
  if (request.kind !== "question") throw new Error(`seed ${seed}: ${request.kind}`);
  return request.question;
}

function timed<T>(task: () => T): { readonly result: T; readonly ms: number } {
  const start = processorMs();
  const result = task();
  return { result, ms: processorMs() - start };
}

const budget = { steps: 400_000 } as const;

function measureWays(machines: number): WaysFigures {
  const run = (seed: number, at: number) => {
    const question = largeQuestion(seed);
    const known = timed(() => verdictOf(compile(question), budget));
    const ways = timed(() => withSwitch(question, { most: 1, brief: true, budget }));
    // What the hand does takes longest, and no bound is set for it: a quarter of the machines tell.
    const hand = at % 4 === 0 ? [timed(() => changeOver(question)).ms] : [];
    return { known: known.ms, ways: ways.ms, hand, end: `${ways.result.outcome} ${ways.result.fewest ?? ""}`.trim() };
  };
  // The first machines warm the engine up and count for nothing.
  for (const seed of range(10)) run(seed + 1, seed);
  const runs = range(machines).map((i) => run(1_000 + i, i));
  const ends: Record<string, number> = {};
  for (const { end } of runs) ends[end] = (ends[end] ?? 0) + 1;
  return {
    known: spreadOf(runs.map((r) => r.known)),
    withSwitch: spreadOf(runs.map((r) => r.ways)),
    byHand: spreadOf(runs.flatMap((r) => r.hand)),
    ends,
  };
}

/** What is out of bounds. */
export function complaints({ known, withSwitch: { median, p95, max } }: Pick<WaysFigures, "known" | "withSwitch">): readonly string[] {
  const over = (what: string, ms: number, most: number) =>
    ms > most * known.median
      ? [`${what} takes ${(ms / known.median).toFixed(1)} times what it takes to say whether all can be on at once, ${most} times allowed.`]
      : [];
  return [
    ...over("half of the machines", median, bounds.median),
    ...over("nineteen in twenty", p95, bounds.p95),
    ...over("the slowest", max, bounds.slowest),
  ];
}

/** The division with the fewest cards off, in the fewest ways that may do: the problem that is asked, and its cost. */
export function divisionProblem(question: ResolvedBuild): { readonly problem: Problem; readonly off: Cost } | undefined {
  const { fewest } = withSwitch(question, { most: 1, brief: true, budget });
  if (fewest === undefined) return undefined;
  const open = openWays(question, wishesOf(question), fewest);
  return { problem: asked(open, open.compiled.possible), off: open.off };
}

/** Median times to the proof, on the same problems; run after all else, since clingo keeps threads. */
async function besideClingo(machines: number): Promise<{ readonly own: Spread; readonly clingo: Spread }> {
  const problems = range(machines).flatMap((i) => divisionProblem(largeQuestion(1_000 + i)) ?? []);
  const own = problems.map(({ problem, off }) => timed(() => cheapest(problem, [off], { k: 1 }).solutions[0]?.cost[0]));
  const run = await loadClingo();
  const clingo: number[] = [];
  for (const [i, { problem, off }] of problems.entries()) {
    const began = processorMs();
    const least = await leastByClingo(run, problem, off);
    clingo.push(processorMs() - began);
    if (least !== own[i]!.result) throw new Error(`clingo leaves ${least} cards off in machine ${i}, the engine ${own[i]!.result}`);
  }
  return { own: spreadOf(own.map((o) => o.ms)), clingo: spreadOf(clingo) };
}

/** The table as text, and what of it is out of bounds. */
export async function waysBench(machines = 200): Promise<{ readonly table: string; readonly failed: readonly string[] }> {
  const figures = measureWays(machines);
  const beside = await besideClingo(12);
  const times = (ms: number) => `${short(ms)} (${(ms / figures.known.median).toFixed(1)})`;
  const row = (name: string, { median, p95, max }: Spread) => [name, times(median), times(p95), times(max)];
  const rows = [
    row("all at once, yes or no", figures.known),
    row("fewest ways, best division", figures.withSwitch),
    row("changed over by hand", figures.byHand),
    row("one division: this engine", beside.own),
    row("one division: clingo", beside.clingo),
  ];
  const ends = Object.entries(figures.ends)
    .sort(([a], [b]) => a.localeCompare(b))
    .map(([end, count]) => `${end}: ${count}`)
    .join("; ");
  const head = ["ms of processor time (times the first's median)", "median", "p95", "slowest"];
  return { table: `${table(head, rows)}\n${ends}`, failed: complaints(figures) };
}
