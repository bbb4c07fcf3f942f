// Plans on tiny machines: what is chosen, what it costs, what is refused.
import { describe, expect, it } from "vitest";
import { planWiring, type WiringPlan } from "../../src/wiring/index.js";
import {
  cable,
  changeOver,
  combination,
  grounding,
  header,
  m27c010,
  m27c020,
  m27c040,
  pair,
  resistor,
  rotary,
  world,
} from "./support/world.js";

const parts = [m27c010, m27c020, m27c040, rotary(4, 3), rotary(1, 12), rotary(2, 2, "toggle"), ...header(10), cable(10), resistor];

function planOf(wiring: ReturnType<typeof planWiring>): WiringPlan {
  if (wiring.kind !== "wiring") throw new Error(JSON.stringify(wiring, null, 1));
  return wiring.plan;
}

describe("a machine with three modes, three firmwares and three cards with contacts of their own", () => {
  const catalogue = world({
    parts,
    cards: { tallow: pair(true), gannet: pair(false), plover: pair(false) },
    versions: { R4A: 32768, "R5.1": 65536, R6: 65536 },
  });
  const modes = [
    { firmware: "R4A", on: ["tallow"] },
    { firmware: "R6", on: ["gannet"] },
    { firmware: "R5.1", on: ["gannet", "plover"] },
  ];
  const plan = planOf(planWiring(catalogue, combination(modes, ["tallow", "gannet", "plover"]), { safest: "m2", length_m: 0.5 }));

  it("takes the four-pole rotary: three poles for the enables, one for both bank lines", () => {
    expect(plan.switch.part).toBe("rotary-4x3");
    expect([plan.optimality.poles, plan.optimality.lines]).toEqual([4, 2]);
    expect(plan.lines.filter((l) => l.role === "switched").map((l) => l.line)).toEqual(["A16", "A17"]);
    expect(plan.optimality.proven).toBe(true);
  });

  it("claims no more of fewer poles than was looked into", () => {
    const cards = { one: grounding(true), two: grounding(true) };
    const world2 = world({
      parts: [rotary(4, 3), rotary(2, 2, "toggle"), ...header(10), cable(10), resistor],
      cards,
      versions: { R6: 65536 },
    });
    const asked = combination([{ firmware: "R6", on: ["one", "two"] }, { firmware: "R6" }], ["one", "two"]);
    const { optimality } = planOf(planWiring(world2, asked));
    // Both could be joined for good: then one pole would do.
    expect(optimality.poles).toBe(2);
    expect(optimality.says).toContain("fewer than 2 ground poles cannot do, unless nets are joined for good, which is not planned here.");
  });

  it("lets the safest mode hold the bank that all-open lines select", () => {
    const open = plan.banks.at(-1)!;
    expect(plan.device?.part).toBe("27c020");
    expect([open.index, open.version]).toEqual([3, "R6"]);
  });

  it("says for each position what must be seen, and repeats the small image", () => {
    expect(plan.contacts.map((r) => [r.position, r.mode, r.version])).toEqual([
      ["1", "m1", "R4A"],
      ["2", "m2", "R6"],
      ["3", "m3", "R5.1"],
    ]);
    expect(plan.banks.find((b) => b.version === "R4A")?.repeats).toBe(2);
    expect(plan.proof.holds).toBe(true);
  });

  it("counts nine conductors and leaves one contact spare", () => {
    expect(plan.wires.filter((w) => w.run === "cable")).toHaveLength(9);
    expect(plan.connectors[0]!.spare).toHaveLength(1);
    expect(plan.cables[0]).toMatchObject({ conductors: 10, used: 9, spare: 1 });
  });
});

it("needs no switch when nothing differs", () => {
  const catalogue = world({ parts, versions: { R5: 65536 } });
  expect(planWiring(catalogue, combination([{ firmware: "R5" }, { firmware: "R5" }], [])).kind).toBe("not-needed");
});

it("lets grounding enables share poles with bank lines, and gives a change-over a pole of its own", () => {
  const catalogue = world({ parts, cards: { a: grounding(true), b: changeOver }, versions: { R4: 65536, R5: 65536 } });
  const plan = planOf(
    planWiring(
      catalogue,
      combination(
        [
          { firmware: "R4", on: ["a"] },
          { firmware: "R5", on: ["b"] },
        ],
        ["a", "b"],
      ),
      { safest: "m2" },
    ),
  );
  // Mode 1 grounds a bank line and card a at once: two ground poles, and one for b.
  expect(plan.optimality.poles).toBe(3);
  expect(plan.nets.filter((n) => n.card === "b").map((n) => n.point)).toEqual(["J1-C", "J1-ON", "J1-OFF"]);
});
