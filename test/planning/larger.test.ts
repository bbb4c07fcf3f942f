// Machines too large to fill in every way: up to nine slots, seven cards with copies, three modes. What the planner offers is judged by the
// independent checker, and so are machines one change away; pinned to such a machine the planner must give the checker's verdict.
import { describe, expect, it } from "vitest";
import { plan } from "../../src/planning/index.js";
import { Random } from "../support/solver/random.js";
import { judge, type Machine } from "./support/checker/index.js";
import { machineOf, pinnedTo, size, verdictFor } from "./support/twin.js";
import { randomSetup, type Setup } from "./support/world.js";

const worlds = process.env.LONG ? 2_000 : 100;

/** The machine with one thing changed. */
function nudged({ world, build }: Setup, m: Machine, random: Random): Machine {
  const cards = m.cards.map((c) => ({ ...c, settings: { ...c.settings } }));
  const at = random.int(0, cards.length - 1);
  const c = cards[at]!;
  const record = world.cards.get(build.cards[at]!.card)!;
  switch (random.int(0, 4)) {
    case 0:
      return { ...m, revision: random.pick(world.board.revisions).id };
    case 1:
      return { ...m, firmware: m.firmware.map((f) => (random.next() < 0.5 ? random.pick(world.family.versions).id : f)) };
    case 2: {
      const setting = record.settings && random.pick(record.settings);
      if (setting) c.settings[setting.id] = random.pick(setting.positions).id;
      return { ...m, cards };
    }
    case 3:
      cards[at] = { ...c, revision: random.pick(record.revisions?.map((r) => r.id) ?? [c.revision]) };
      return { ...m, cards };
    default:
      cards[at] = { ...c, slot: random.int(0, world.board.slots.length - 1) };
      return { ...m, cards };
  }
}

describe("planner and independent checker on larger machines", () => {
  it(`agree on ${worlds} random worlds, machine by machine`, () => {
    const seen: Record<string, number> = {};
    const count = (what: string) => {
      seen[what] = (seen[what] ?? 0) + 1;
    };
    for (let seed = 200_001; seed < 200_001 + worlds; seed++) {
      const setup = randomSetup(seed, "large");
      const { world, catalogue, build } = setup;
      const random = new Random(seed);
      if (size(world, build) > 1e6) count("large");
      const got = plan(catalogue, build, { brief: true, most: 4 });
      if (got.kind !== "answer") throw new Error(`seed ${seed}: ${got.faults[0]?.says}`);
      count(`answer ${got.verdict}`);
      for (const c of got.combinations) {
        const machine = machineOf(world, build, c);
        expect([judge(world, build, machine).bad, verdictFor(judge(world, build, machine))], `seed ${seed}`).toEqual([[], c.verdict]);
        for (let i = 0; i < 3; i++) {
          const near = nudged(setup, machine, random);
          // Pins of the build that the change broke are pinned anew: the machine itself is asked about.
          const told = plan(catalogue, pinnedTo(world, build, near), { brief: true, most: 1 });
          if (told.kind !== "answer") throw new Error(`seed ${seed}: ${told.faults[0]?.says}`);
          const verdict = verdictFor(judge(world, build, near));
          expect(told.verdict, `seed ${seed}: ${JSON.stringify(near)}`).toBe(verdict);
          count(`machine ${verdict}`);
        }
      }
    }
    if (process.env.SHOW) console.log(seen);
    expect(seen.large ?? 0).toBeGreaterThan(worlds / 10);
    for (const verdict of ["workable", "conditional", "ruled-out", "unknown"]) {
      expect(seen[`machine ${verdict}`] ?? 0, verdict).toBeGreaterThan(worlds / 10);
      expect(seen[`answer ${verdict}`] ?? 0, verdict).toBeGreaterThan(0);
    }
  });
});
