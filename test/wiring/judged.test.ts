// States that no mode plans: what the rules say of them, and that nothing is told to answer that the records rule out.
import { describe, expect, it } from "vitest";
import { bestBuilt } from "../../src/pages/index.js";
import { plan as planBuild } from "../../src/planning/index.js";
import type { Build, Switch } from "../../src/records/index.js";
import { buildSheet } from "../../src/sheet/index.js";
import { demo } from "./support/demo.js";
import { plainState } from "./support/plain-simulation.js";

const catalogue = demo();
const build = catalogue.builds.get("saltmarsh-three-mode-skerry")!;
const best = bestBuilt(catalogue, [{ build }]);
if (best?.kind !== "best" || best.wiring.kind !== "wiring") throw new Error("the headline machine is not wired");
const { combination, wiring } = best;
const { plan } = wiring;
const part = catalogue.parts.get(plan.switch.part) as Switch;
const enables = Object.fromEntries(
  plan.nets.flatMap((n) => (n.kind === "enable" ? [[n.card!, catalogue.cards.get(n.card!)!.enable!]] : [])),
);

/** Read off the three card records by hand. */
const runsUnder: Readonly<Record<string, readonly string[]>> = {
  "tallow-bus-tracer": ["R4A"],
  "gannet-fixed-disk-controller": ["R5.1", "R6"],
  "plover-tape-interface": ["R5.1"],
};

/** The machine as it is built, running this. */
function running(firmware: string, on: readonly string[]): Build {
  const cards = combination.cards.map(({ as, card, revision, slot, settings }) => ({
    card,
    as,
    ...(revision === "" ? {} : { revision }),
    slot,
    ...(Object.keys(settings).length > 0 ? { settings: { ...settings } } : {}),
  }));
  const { revision, memory } = combination;
  return {
    id: "running",
    name: "Running",
    board: combination.board,
    revision,
    ...(memory === undefined ? {} : { memory }),
    cards,
    modes: [{ id: "it", firmware, cards: [...on] }],
  };
}

describe("what one open wire can leave", () => {
  const told = new Map<string, Set<number>>();
  for (const wire of plan.wires) {
    for (const { position } of plan.contacts) {
      const wires = plan.wires.filter((w) => w !== wire);
      const state = plainState({ ...plan, wires }, part, enables, position);
      const on = Object.keys(state.cards).filter((card) => state.cards[card] === "on");
      if (state.version === undefined || Object.values(state.cards).includes("undefined")) continue;
      const answer = planBuild(catalogue, running(state.version, on), { brief: true });
      if (answer.kind !== "answer") throw new Error("misasked");
      if (answer.verdict !== "ruled-out") continue;
      const key = `${state.version}: ${on.sort().join(" ")}`;
      told.set(key, (told.get(key) ?? new Set()).add(wire.number));
    }
  }

  it("is named with every wire, where the planner rules the machine out that runs so, and nowhere else", () => {
    expect(told.size).toBeGreaterThan(3);
    const called = (card: string) => plan.wires.find((w) => w.from.at === "card" && w.from.card === card)!.label.split(" ")[0]!;
    const found = plan.proof.hazards.filter((h) => h.verdict === "ruled-out");
    expect(found).toHaveLength(told.size);
    for (const [key, wires] of told) {
      const [version, on] = key.split(": ");
      const names = on!.split(" ").map(called);
      const hazard = found.find((h) => h.says.startsWith(`${version};`) && onOf(h.says).join() === names.sort().join());
      expect(hazard?.wires, key).toEqual([...wires].sort((a, b) => a - b));
      expect(hazard?.why.length).toBeGreaterThan(0);
    }
  });

  it("stands on the sheet with its reason", () => {
    const { hazards } = buildSheet(catalogue, combination, plan, "Headline");
    expect(hazards).toContainEqual({
      says: "R4A; Tallow, Gannet on; Plover off",
      why: "Cannot run so: Gannet fixed-disk controller needs Skerry Monitor from R5.",
      after: expect.stringMatching(/^wires \d+(, \d+)* open/),
    });
    expect(hazards.some((h) => h.after.endsWith("plug pulled"))).toBe(true);
  });
});

function onOf(says: string): string[] {
  return (/; ([^;]+) on/.exec(says)?.[1] ?? "").split(", ").sort();
}

describe("what one sees of a fault", () => {
  const rows = [...plan.faults.groups, ...plan.doubleFaults.groups].flatMap((g) => g.seen);

  it("never has a card answer under firmware that its record rules out", () => {
    expect(rows.length).toBeGreaterThan(100);
    const wrong = rows.filter((o) => o.answers.some((card) => o.shows in versions && !runsUnder[card]!.includes(o.shows)));
    expect(wrong).toEqual([]);
  });

  it("says which faults may look like the good build", () => {
    const right = plan.contacts.map((row) => ({ shows: row.version, on: row.cards.filter((c) => c.state === "on").map((c) => c.card) }));
    for (const group of plan.faults.groups) {
      const may = group.seen.every((o, i) => {
        const { shows, on } = right[i]!;
        return o.shows === shows && o.answers.every((c) => on.includes(c)) && on.every((c) => [...o.answers, ...o.unsure].includes(c));
      });
      expect([group.says, group.mayLookRight]).toEqual([group.says, may]);
      if (may) expect(group.seen.some((o) => o.unsure.length > 0)).toBe(true);
    }
    expect(plan.faults.groups.some((g) => g.mayLookRight)).toBe(true);
  });
});

const versions = Object.fromEntries(plan.modes.map((m) => [m.firmware, true]));
