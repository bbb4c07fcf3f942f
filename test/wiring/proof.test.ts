// The proof: what each position, each way between two, each open wire and the pulled plug come to.
import { describe, expect, it } from "vitest";
import type { Part } from "../../src/records/index.js";
import { planWiring, type WiringPlan } from "../../src/wiring/index.js";
import { between } from "../../src/wiring/simulate/proof.js";
import {
  cable,
  changeOver,
  coded,
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

function planOf(
  parts: readonly Part[],
  cards: Parameters<typeof world>[0]["cards"],
  modes: Parameters<typeof combination>[0],
  safest: string,
): WiringPlan {
  const versions = { R4: 0x10000, R5: 0x10000, R6: 0x10000, R7: 0x10000 };
  const catalogue = world({ parts: [m27c010, m27c020, m27c040, ...header(16), cable(16), resistor, ...parts], cards, versions });
  const wiring = planWiring(catalogue, combination(modes, Object.keys(cards ?? {})), { safest });
  if (wiring.kind !== "wiring") throw new Error(wiring.says);
  return wiring.plan;
}

describe("two firmwares on a one-pole toggle", () => {
  const plan = planOf([rotary(1, 2, "toggle")], {}, [{ firmware: "R4" }, { firmware: "R5" }], "m2");
  it("passes through no state but the two modes, whichever contact comes first", () => {
    const transits = plan.proof.cases.filter((c) => c.kind === "transit");
    expect(transits.map((c) => [c.manner, c.fitted, c.safe])).toEqual([
      ["break-before-make", true, true],
      ["make-before-break", false, true],
    ]);
  });
  it("falls into the safest mode with any wire open and with the plug pulled", () => {
    for (const c of plan.proof.cases.filter((c) => c.kind === "open-wire" || c.kind === "pulled-plug")) {
      expect(c.states.map((s) => s.version)).toContain("R5");
      expect(c.safe).toBe(true);
    }
    expect(plan.proof.unsafe).toEqual([]);
  });
});

describe("a change-over card", () => {
  const modes = [{ firmware: "R4", on: ["eider"] }, { firmware: "R5" }];
  const plan = planOf([rotary(2, 2, "toggle")], { eider: changeOver }, modes, "m2");
  it("is neither on nor off between two positions of a break-before-make switch", () => {
    const transit = plan.proof.cases.find((c) => c.kind === "transit" && c.manner === "break-before-make")!;
    expect(transit.safe).toBe(false);
    expect(transit.states.some((s) => s.cards[0]!.state === "undefined")).toBe(true);
    expect(transit.cure).toContain("power off");
  });
  it("is neither with the plug pulled, and the cure is a spare plug with the contact linked", () => {
    const pulled = plan.proof.cases.find((c) => c.kind === "pulled-plug")!;
    expect(pulled.states[0]!.verdict).toBe("undefined");
    expect(pulled.cure).toContain("eider is neither on nor off: keep a spare plug");
  });
});

it("closed-enables fails to off and open-enables fails to on when its wire breaks", () => {
  const modes = [
    { firmware: "R4", on: ["a"] },
    { firmware: "R4", on: ["b"] },
  ];
  const plan = planOf([rotary(2, 2, "toggle")], { a: grounding(true), b: grounding(false) }, modes, "m1");
  const pulled = plan.proof.cases.find((c) => c.kind === "pulled-plug")!;
  expect(pulled.states.map((s) => s.cards.map((c) => `${c.card} ${c.state}`))).toEqual([["a off", "b on"]]);
  expect(plan.device).toBeUndefined();
  expect(plan.banks).toEqual([]);
});

describe("poles that move one after the other", () => {
  const groups = [new Set([2, 3, 4]), new Set([5, 6, 7])];
  it("break before make: old, open or new on each of two poles", () => {
    const states = between(
      [
        [2, 3],
        [5, 6],
      ],
      [
        [2, 4],
        [5, 7],
      ],
      "break-before-make",
      groups,
    );
    expect(states).toHaveLength(9);
    expect(states).toContainEqual([]);
    expect(states).toContainEqual([
      [2, 3],
      [5, 7],
    ]);
  });
  it("make before break: old, both or new", () => {
    const states = between([[2, 3]], [[2, 4]], "make-before-break", [groups[0]!]);
    expect(states.map((s) => s.length).sort()).toEqual([1, 1, 2]);
  });
});

describe("copies of an image", () => {
  // Positions of a coded switch close in twos and threes: 16 positions for three modes reach every bank, so some images lie twice.
  const plan = planOf([coded(16)], {}, [{ firmware: "R4" }, { firmware: "R5" }, { firmware: "R6" }], "m3");
  it("fill every bank a position reaches with a planned version", () => {
    expect(plan.contacts).toHaveLength(16);
    expect(plan.contacts.every((r) => plan.modes.some((m) => m.id === r.mode && m.firmware === r.version))).toBe(true);
    const copies = plan.banks.filter((b) => b.use === "copy");
    expect(copies).toHaveLength(1);
    expect(plan.optimality).toMatchObject({ poles: 1, lines: 2 });
  });
});

it("one pole gives one image more than it has lines, and the runner-up trades a pole for a line", () => {
  const modes = [{ firmware: "R4" }, { firmware: "R5" }, { firmware: "R6" }, { firmware: "R7" }];
  const plan = planOf([rotary(1, 12), rotary(2, 6)], {}, modes, "m1");
  expect([plan.switch.part, plan.optimality.poles, plan.optimality.lines]).toEqual(["rotary-2x6", 1, 3]);
  expect(plan.runnerUp).toMatchObject({
    switchPart: "rotary-2x6",
    poles: 2,
    lines: 2,
    saves: ["1 bank line", "1 pin to work on"],
    costs: ["1 pole"],
  });
});

it("a rotary with positions to spare is stopped at the last mode, and the position beyond is shown", () => {
  const plan = planOf([rotary(2, 6)], { a: pair(true) }, [{ firmware: "R4", on: ["a"] }, { firmware: "R5" }], "m2");
  expect(plan.contacts).toHaveLength(2);
  const beyond = plan.proof.cases.filter((c) => c.kind === "position" && c.says.includes("beyond"));
  expect(beyond).toHaveLength(4);
  expect(plan.toDo.some((n) => n.includes("stop ring"))).toBe(true);
  expect(plan.benchTest.some((s) => s.does.includes("Turn the knob"))).toBe(true);
});

describe("the order of the modes round the knob", () => {
  const versions = ["R4", "R5", "R6"];
  const cards = { a: pair(true), b: pair(true) };
  const inOrder = (order: readonly (readonly [string, readonly string[]])[]) =>
    planOf(
      [rotary(4, 3)],
      cards,
      order.map(([firmware, on]) => ({ firmware, on })),
      `m${order.findIndex(([, on]) => on.length === 0) + 1}`,
    );
  it("is named when another passes through fewer states nobody planned", () => {
    // From "a alone" to "b alone" both may be off or both on for a moment; by way of "neither" only one card moves at a time.
    const same = versions[0]!;
    const plan = inOrder([
      [same, ["a"]],
      [same, ["b"]],
      [same, []],
    ]);
    const transit = plan.proof.unsafe.find((u) => u.says.startsWith("Moving"))!;
    expect(transit.cure).toContain("With the modes in the order m1, m3, m2 only 0 of 2 steps would do so, not 1.");
  });
  it("is left alone when it is the best", () => {
    const plan = inOrder([
      ["R4", ["a"]],
      ["R4", []],
      ["R4", ["b"]],
    ]);
    expect(plan.proof.unsafe.filter((u) => u.says.startsWith("Moving"))).toEqual([]);
  });
});
