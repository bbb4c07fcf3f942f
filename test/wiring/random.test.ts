// Random machines with two to six modes: each is wired so that an independent simulation of the finished tables shows exactly the
// planned modes, or refused, and then brute force finds no wiring either. LONG=1 tries 20,000 of them.
import { expect, it } from "vitest";
import type { Switch } from "../../src/records/index.js";
import { isPowerOfTwo } from "../../src/switching/demand/sockets.js";
import { planWiring, type WiringPlan } from "../../src/wiring/index.js";
import { type BruteInput, uniformWorks, unusualWorks } from "./support/brute-force.js";
import { plainState } from "./support/plain-simulation.js";
import { type Machine, machine, Random } from "./support/random.js";

const count = process.env.LONG ? 20_000 : 1_000;

/** Every pole has one throw a position. */
function ordinary(part: Switch): boolean {
  return part.positions.every((p) => (part.closes[p] ?? []).length === part.poles) && !["coded-rotary", "dip"].includes(part.form);
}

function brute({ catalogue, combination, options }: Machine, lines: number): BruteInput {
  const { modes } = combination;
  const fewest = [...modes].sort((a, b) => a.enabled.length - b.enabled.length || modes.indexOf(a) - modes.indexOf(b))[0]!;
  const safest = modes.find((m) => m.id === options.safest) ?? fewest;
  const switched = combination.cards.filter((c) => new Set(modes.map((m) => m.enabled.includes(c.as))).size > 1);
  return {
    modes: modes.map((m) => ({ version: m.firmware, on: switched.map((c) => m.enabled.includes(c.as)) })),
    safestVersion: safest.firmware,
    enables: switched.map((c) => catalogue.cards.get(c.card)!.enable!),
    lines,
  };
}

/** Whether this switch can give the modes with so many lines and poles. */
function works(part: Switch, input: BruteInput, poles: number): boolean {
  if (part.positions.length < input.modes.length) return false;
  return ordinary(part) ? uniformWorks(input, Math.min(poles, part.poles)) : unusualWorks(input, part, poles);
}

/** Bank lines of the largest device there is. */
function linesThere({ catalogue, combination }: Machine): number {
  if (new Set(combination.modes.map((m) => m.firmware)).size === 1) return 0;
  const sizes = [...catalogue.parts.values()].flatMap((p) => (p.type === "memory" ? [Number(p.capacity) / 0x10000] : []));
  return Math.log2(Math.max(...sizes.filter(isPowerOfTwo)));
}

function checkPlan(m: Machine, plan: WiringPlan): void {
  const part = m.switches.find((s) => s.id === plan.switch.part)!;
  const enables =
    Object.fromEntries(brute(m, 0).enables.map((_, i) => [i, i])) &&
    Object.fromEntries(plan.nets.flatMap((n) => (n.card ? [[n.card, m.catalogue.cards.get(n.card)!.enable!]] : [])));
  const shown = new Set<string>();
  for (const row of plan.contacts) {
    const mode = m.combination.modes.find((x) => x.id === row.mode)!;
    const state = plainState(plan, part, enables, row.position);
    expect(state.short).toBe(false);
    if (plan.device) expect(state.version).toBe(mode.firmware);
    for (const [card, is] of Object.entries(state.cards)) expect([card, is]).toEqual([card, mode.enabled.includes(card) ? "on" : "off"]);
    shown.add(row.mode);
  }
  expect(shown.size).toBe(m.combination.modes.length);
  // Every position the knob or lever can reach is a planned one.
  if (part.form !== "rotary") expect(plan.contacts).toHaveLength(part.positions.length);
}

it(`${count} random machines simulate to what was planned, or brute force confirms that none can`, () => {
  const seen = { wiring: 0, refused: 0, "not-needed": 0, smallest: 0 };
  for (let seed = 1; seed <= count; seed += 1) {
    const m = machine(new Random(seed));
    const wiring = planWiring(m.catalogue, m.combination, { ...m.options, tables: false });
    seen[wiring.kind] += 1;
    const lines = linesThere(m);
    const input = brute(m, lines);
    try {
      if (wiring.kind === "wiring") {
        checkPlan(m, wiring.plan);
        // Fewest poles, and fewest lines at that number, over every switch there is.
        const { poles, lines: used } = wiring.plan.optimality;
        if (poles <= 2 && (process.env.LONG || seed % 3 === 0)) {
          expect(m.switches.filter((s) => works(s, input, poles - 1)).map((s) => s.id)).toEqual([]);
          if (used > 0) expect(m.switches.filter((s) => works(s, { ...input, lines: used - 1 }, poles)).map((s) => s.id)).toEqual([]);
          seen.smallest += 1;
        }
      } else if (wiring.kind === "refused") {
        expect(["no-switch", "no-device"]).toContain(wiring.reasons[0]!.code);
        expect(m.switches.filter((s) => works(s, input, s.poles)).map((s) => s.id)).toEqual([]);
      } else {
        const [first] = input.modes;
        expect(input.modes.every((x) => JSON.stringify(x) === JSON.stringify(first))).toBe(true);
      }
    } catch (error) {
      throw new Error(`machine ${seed}: ${error instanceof Error ? error.message : error}`);
    }
  }
  expect(seen.wiring).toBeGreaterThan(count / 10);
  expect(seen.refused).toBeGreaterThan(count / 10);
  expect(seen.smallest).toBeGreaterThan(count / 30);
});

it("a complement-coded switch takes ground on one of its figures where that is the only way", () => {
  // Found by brute force: no wiring with ground on the common gives these modes.
  const m = machine(new Random(2594));
  const wiring = planWiring(m.catalogue, m.combination, m.options);
  if (wiring.kind !== "wiring") throw new Error(wiring.says);
  checkPlan(m, wiring.plan);
  const [section] = wiring.plan.switch.sections;
  expect([section!.hub, section!.hubNet]).toEqual(["C", undefined]);
  expect(section!.throws.map((t) => t.net)).toContain("GND");
});
