// From what is wanted to a wired machine: every refused question of the demo club, and random ones, divided into ways, wired, and simulated
// from the tables by the independent simulation.
import { describe, expect, it } from "vitest";
import { type Division, findWays, plan as planBuild, type Ways } from "../../src/planning/index.js";
import type { Build, Switch } from "../../src/records/index.js";
import { planWiring, type WiringPlan, wiringOptions } from "../../src/wiring/index.js";
import { Random } from "../support/solver/random.js";
import { demo } from "./support/demo.js";
import { plainState } from "./support/plain-simulation.js";

const catalogue = demo();
const many = process.env.LONG ? 200 : 10;

function waysOf(build: Build): Ways {
  const ways = findWays(catalogue, build, { most: 2 });
  if (ways?.kind !== "ways") throw new Error(`${build.id}: ${JSON.stringify(ways)}`);
  return ways;
}

const refused = (build: Build) => {
  const answer = planBuild(catalogue, build, { brief: true, most: 1 });
  return answer.kind === "answer" && answer.verdict === "ruled-out";
};

/** Every position of the wired machine runs the firmware and has the cards on that its way has. */
function simulate({ combination }: Division, plan: WiringPlan): void {
  if (!combination) throw new Error("a division without its combination");
  const part = catalogue.parts.get(plan.switch.part) as Switch;
  const record = (as: string) => catalogue.cards.get(combination.cards.find((c) => c.as === as)!.card)!;
  const enables = Object.fromEntries(plan.nets.flatMap((n) => (n.kind === "enable" ? [[n.card!, record(n.card!).enable!]] : [])));
  for (const row of plan.contacts) {
    const mode = combination.modes.find((m) => m.id === row.mode)!;
    const state = plainState(plan, part, enables, row.position);
    expect(state.short).toBe(false);
    if (plan.device) expect(state.version).toBe(mode.firmware);
    for (const [card, is] of Object.entries(state.cards)) expect([card, is]).toEqual([card, mode.enabled.includes(card) ? "on" : "off"]);
  }
  expect(new Set(plan.contacts.map((r) => r.mode)).size).toBe(combination.modes.length);
}

/** What became of a refused question, in a word. */
function follow(build: Build): string {
  const ways = waysOf(build);
  if (ways.outcome === "none") {
    expect(ways.against?.wishes.length || ways.against?.choices.length || ways.against?.facts.length, build.id).toBeGreaterThan(0);
    return ways.byHand.kind === "change-over" ? "by hand" : "none";
  }
  expect(["found", "perhaps"], build.id).toContain(ways.outcome);
  expect(ways.fewest, build.id).toBeGreaterThan(1);
  // Whatever a switch can do, the hand can do in as many ways or fewer.
  expect(ways.byHand.kind === "change-over" && ways.byHand.ways.length, build.id).toBeLessThanOrEqual(ways.fewest!);
  const [division] = ways.divisions;
  const wiring = planWiring(catalogue, division!.combination!, wiringOptions(division!.build, { tables: false }));
  if (wiring.kind !== "wiring") return wiring.kind;
  simulate(division!, wiring.plan);
  return "wired";
}

describe("a refused question", () => {
  it("of the demo club ends in a wired machine, in a change-over by hand, or in the reason why neither can be", () => {
    const seen: Record<string, number> = {};
    for (const { result: _, ...build } of catalogue.builds.values()) {
      if ((build.modes ?? [{}]).length > 1 || !refused(build)) continue;
      const end = follow(build);
      seen[end] = (seen[end] ?? 0) + 1;
    }
    if (process.env.SHOW) console.log(seen);
    for (const end of ["wired", "by hand", "none"]) expect(seen[end] ?? 0, JSON.stringify(seen)).toBeGreaterThan(0);
  });

  it(`of ${many} at random, with cards that can be switched off and work alone, ends so too`, () => {
    const cards = [...catalogue.cards.values()].filter((c) => c.enable?.by === "contacts");
    const boards = [...catalogue.boards.values()];
    const seen: Record<string, number> = {};
    let tried = 0;
    for (let seed = 1; tried < many; seed++) {
      const random = new Random(seed);
      const board = random.pick(boards);
      const machine = (ids: readonly string[]): Build => ({
        id: `seed-${seed}`,
        name: "Random",
        board: board.id,
        cards: ids.map((card) => ({ card })),
      });
      const fit = cards.filter((c) => c.bus === board.bus && !refused(machine([c.id]))).map((c) => c.id);
      const some = random.shuffle(fit).slice(0, random.int(2, 4));
      const build = machine(some);
      if (some.length < 2 || !refused(build)) continue;
      tried++;
      const end = follow(build);
      seen[end] = (seen[end] ?? 0) + 1;
    }
    if (process.env.SHOW) console.log(seen);
    expect(seen.wired ?? 0, JSON.stringify(seen)).toBeGreaterThan(many / 2);
  });
});
