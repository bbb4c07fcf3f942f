// What the bench test says a meter shows, against the path table of the finished build: every two terminals, every position.
import { describe, expect, it } from "vitest";
import type { Switch } from "../../src/records/index.js";
import { planWiring, type WiringPlan } from "../../src/wiring/index.js";
import { plainMeter } from "./support/plain-simulation.js";
import { machine, Random } from "./support/random.js";

const step = (plan: WiringPlan, words: string) => plan.benchTest.find((s) => s.does.includes(words))!.expect;

/** Sets of joined terminals: "1C with 1.1; 2C with 2.1 with 2.2; no others". */
function sets(see: string): string[][] {
  return see.split("; ").flatMap((part) => (part.includes(" with ") ? [part.split(" with ")] : []));
}

function pairsOf(part: Switch, joined: (a: string, b: string) => boolean): string[] {
  return part.terminals.flatMap((a, i) => part.terminals.slice(i + 1).flatMap((b) => (joined(a, b) ? [`${a} ${b}`] : [])));
}

describe("the bench test of random machines", () => {
  it("says what the meter shows at the switch and at the enable wires", () => {
    let looked = 0;
    let enablesLooked = 0;
    for (let seed = 1; looked < 100; seed += 1) {
      const m = machine(new Random(seed));
      const wiring = planWiring(m.catalogue, m.combination, { ...m.options, tables: false });
      if (wiring.kind !== "wiring") continue;
      const { plan } = wiring;
      const part = m.switches.find((s) => s.id === plan.switch.part)!;
      const enables = Object.fromEntries(plan.nets.flatMap((n) => (n.card ? [[n.card, m.catalogue.cards.get(n.card)!.enable!]] : [])));
      for (const { position } of plan.contacts) {
        const meter = plainMeter(plan, part, enables, position);
        const bare = step(plan, "bare switch").find((e) => e.position === position)!.see;
        for (const [a, b] of part.closes[position] ?? []) expect(bare).toContain(`${a} to ${b}`);
        expect(bare.split(" to ")).toHaveLength((part.closes[position] ?? []).length + 1);
        const loom = step(plan, "With the loom on").find((e) => e.position === position)!.see;
        const told = sets(loom);
        const wanted = pairsOf(part, (a, b) => meter(`switch ${a}`, `switch ${b}`));
        expect(
          pairsOf(part, (a, b) => told.some((set) => set.includes(a) && set.includes(b))),
          `seed ${seed}, ${position}: ${loom}`,
        ).toEqual(wanted);
        if (Object.keys(enables).length === 0) continue;
        const ends = step(plan, "ends of the enable wires").find((e) => e.position === position)!.see;
        for (const [card, { points = [] }] of Object.entries(enables)) {
          const id = (role: string) => points.find((p) => p.role === role)?.id;
          const pairs = [
            ["a", "b"],
            ["a", "ground"],
            ["common", "on"],
            ["common", "off"],
          ] as const;
          for (const [x, y] of pairs) {
            const [from, to] = [id(x), id(y)];
            if (from === undefined || to === undefined) continue;
            const other = y === "ground" ? "ground" : to;
            const is = meter(`${card} ${from}`, y === "ground" ? "ground" : `${card} ${to}`) ? "joined" : "apart";
            expect(ends, `seed ${seed}`).toContain(`${from} and ${other} ${is}`);
            enablesLooked += 1;
          }
        }
      }
      looked += 1;
    }
    expect(enablesLooked).toBeGreaterThan(150);
  });
});
