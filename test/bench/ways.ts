// The fewest ways: how long the best division takes on machines of the solver's large size, with four to six cards and all else open, and
// the change-over by hand beside it.
import { gather } from "../../src/catalogue/index.js";
import { ask } from "../../src/machine/index.js";
import { changeOver, withSwitch } from "../../src/planning/index.js";
import type { Build, Card, Loaded } from "../../src/records/index.js";
import { Random } from "../support/solver/random.js";
import { largeMachine } from "./large-machine.js";

/** What is asked of the best division, in ms: nineteen in twenty, and the slowest. */
export const bounds = { p95: 200, slowest: 1_000 } as const;

interface Run {
  readonly seed: number;
  readonly ways: number | undefined;
  readonly outcome: string;
  readonly withSwitch_ms: number;
  readonly byHand_ms: number;
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

function timed<T>(task: () => T): { readonly result: T; readonly ms: number } {
  const start = performance.now();
  const result = task();
  return { result, ms: performance.now() - start };
}

function run(seed: number): Run {
  const { records, build } = machineOf(seed);
  const request = ask(gather(records), build);
  if (request.kind !== "question") throw new Error(`seed ${seed}: ${request.kind}`);
  const { question } = request;
  const ways = timed(() => withSwitch(question, { most: 1, brief: true, budget: { steps: 400_000 } }));
  const hand = timed(() => changeOver(question));
  return { seed, ways: ways.result.fewest, outcome: ways.result.outcome, withSwitch_ms: ways.ms, byHand_ms: hand.ms };
}

const at = (sorted: readonly number[], share: number) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;

/** The table as text, and what of it is out of bounds. */
export function waysBench(machines = 200): { readonly table: string; readonly failed: readonly string[] } {
  // The first machines warm the engine up and count for nothing.
  for (let seed = 1; seed <= 5; seed++) run(seed);
  const runs = Array.from({ length: machines }, (_, i) => run(1_000 + i));
  const row = (name: string, of: (r: Run) => number) => {
    const sorted = runs.map(of).sort((a, b) => a - b);
    return { name, median: at(sorted, 0.5), p95: at(sorted, 0.95), slowest: at(sorted, 1) };
  };
  const rows = [row("with a switch", (r) => r.withSwitch_ms), row("by hand", (r) => r.byHand_ms)];
  const counts = new Map<string, number>();
  for (const r of runs) counts.set(`${r.outcome} ${r.ways ?? ""}`.trim(), (counts.get(`${r.outcome} ${r.ways ?? ""}`.trim()) ?? 0) + 1);
  const head = `${"ms".padEnd(16)} ${"median".padStart(8)} ${"p95".padStart(8)} ${"slowest".padStart(8)}`;
  const lines = rows.map((r) => [r.name.padEnd(16), ...[r.median, r.p95, r.slowest].map((ms) => ms.toFixed(1).padStart(8))].join(" "));
  const ends = [...counts]
    .sort()
    .map(([end, count]) => `${end}: ${count}`)
    .join("; ");
  const [first] = rows;
  const failed = [
    ...(first!.p95 > bounds.p95 ? [`nineteen in twenty take up to ${first!.p95.toFixed(0)} ms, ${bounds.p95} allowed.`] : []),
    ...(first!.slowest > bounds.slowest ? [`the slowest takes ${first!.slowest.toFixed(0)} ms, ${bounds.slowest} allowed.`] : []),
  ];
  return { table: [head, ...lines, ends].join("\n"), failed };
}
