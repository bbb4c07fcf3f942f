// Every build of the demo club with several modes: planned, wired and simulated from its tables by the independent simulation.
import { describe, expect, it } from "vitest";
import { plan as planBuild } from "../../src/planning/index.js";
import type { Switch } from "../../src/records/index.js";
import { planWiring, wiringOptions } from "../../src/wiring/index.js";
import { demo } from "./support/demo.js";
import { plainState } from "./support/plain-simulation.js";

const catalogue = demo();
const builds = [...catalogue.builds.values()].filter((b) => (b.modes?.length ?? 1) > 1);

describe("builds with several modes", () => {
  it("are there", () => expect(builds.length).toBeGreaterThan(5));
  for (const build of builds) {
    it(`${build.id} is wired as planned, or no combination needs a switch`, () => {
      const answer = planBuild(catalogue, build, { most: 1 });
      if (answer.kind !== "answer") throw new Error("misasked");
      const [combination] = answer.combinations;
      if (!combination) return expect(answer.says).not.toBe("");
      const wiring = planWiring(catalogue, combination, wiringOptions(build, { tables: false }));
      if (wiring.kind !== "wiring") throw new Error(wiring.says);
      const { plan } = wiring;
      const part = catalogue.parts.get(plan.switch.part) as Switch;
      const record = (as: string) => catalogue.cards.get(combination.cards.find((c) => c.as === as)!.card)!;
      const enables = Object.fromEntries(plan.nets.flatMap((n) => (n.kind === "enable" ? [[n.card!, record(n.card!).enable!]] : [])));
      for (const row of plan.contacts) {
        const mode = combination.modes.find((m) => m.id === row.mode)!;
        const state = plainState(plan, part, enables, row.position);
        expect(state.short).toBe(false);
        if (plan.device) expect(state.version).toBe(mode.firmware);
        for (const [card, is] of Object.entries(state.cards))
          expect([card, is]).toEqual([card, mode.enabled.includes(card) ? "on" : "off"]);
      }
      expect(new Set(plan.contacts.map((r) => r.mode)).size).toBe(combination.modes.length);
      // Cards that differ between modes are all on the switch.
      const differ = combination.cards.filter((c) => new Set(combination.modes.map((m) => m.enabled.includes(c.as))).size > 1);
      expect(Object.keys(enables).sort()).toEqual(differ.map((c) => c.as).sort());
      expect(plan.electrical.checks.filter((c) => c.ok === false)).toEqual([]);
    });
  }
});
