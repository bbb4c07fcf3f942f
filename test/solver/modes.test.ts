// Four modes to the fewest switched lines: against trying everything on small machines, against clingo's optimisation on larger ones, and
// the solution itself read anew.
import { expect, test } from "vitest";
import { cheapest, decide, solves } from "../../src/solver/index.js";
import { sizes, strains } from "../bench/generate.js";
import { generateModes, type ModesBuild } from "../bench/modes.js";
import { bruteLeast } from "../support/solver/brute.js";
import { leastByClingo, loadClingo } from "../support/solver/clingo.js";
import { range } from "../support/solver/random.js";

/** Cards enabled in some modes and not in others, and the lines that choose among the versions: counted off the solution. */
function linesOf(machine: ModesBuild, solution: readonly number[]): number {
  const switched = machine.enabled.filter((row) => new Set(row.map((v) => solution[v])).size > 1).length;
  const versions = new Set(machine.firmware.map((v) => solution[v])).size;
  return switched + Math.ceil(Math.log2(versions));
}

function fewest(machine: ModesBuild): number | undefined {
  const ranked = cheapest(machine.problem, [machine.lines], { k: 1 });
  expect(ranked.proven).toBe(true);
  const [best] = ranked.solutions;
  if (!best) return undefined;
  expect(solves(machine.problem, best.solution)).toBe(true);
  expect(linesOf(machine, best.solution)).toBe(best.cost[0]);
  return best.cost[0];
}

test("small machines: as few lines as trying everything finds", () => {
  const seen = new Set<number | undefined>();
  for (const [cards, modes] of [
    [2, 4],
    [3, 2],
  ] as const) {
    for (const strain of strains) {
      for (const seed of range(5)) {
        const machine = generateModes({ slots: cards, cards, firmware: 3, conflicts: 4 }, strain, 1 + seed, modes);
        const lines = fewest(machine);
        seen.add(lines);
        expect(lines, `${cards} cards, ${modes} modes, ${strain} ${seed}`).toBe(bruteLeast(machine.problem, machine.lines)[0]);
      }
    }
  }
  expect(seen.has(undefined)).toBe(true);
  expect(seen.size).toBeGreaterThan(2);
});

test("medium and large machines: as few lines as clingo proves", async () => {
  const run = await loadClingo();
  const seen = new Set<number | undefined>();
  for (const seed of range(process.env.LONG ? 60 : 10)) {
    const strain = strains[seed % 4]!;
    const machine = generateModes(sizes.medium, strain, 100 + seed);
    const lines = fewest(machine);
    seen.add(lines);
    expect(lines, `${strain} ${seed}`).toBe(await leastByClingo(run, machine.problem, machine.lines));
  }
  for (const seed of [2, 3, 5]) {
    const machine = generateModes(sizes.large, "normal", seed);
    expect(fewest(machine), `large ${seed}`).toBe(await leastByClingo(run, machine.problem, machine.lines));
  }
  expect(seen.size).toBeGreaterThan(2);
});

test("what was planted works", () => {
  let planted = 0;
  for (const seed of range(40)) {
    const machine = generateModes(sizes.small, strains[seed % 3]!, seed);
    if (seed % 4 === 0) continue;
    planted++;
    expect(decide(machine.problem).kind, `seed ${seed}`).toBe("found");
  }
  expect(planted).toBe(30);
});
