// The club's headline machine from data/: three modes, one knob, one device, and a lead to the outside.
import { describe, expect, it } from "vitest";
import { plan as planBuild } from "../../src/planning/index.js";
import type { Switch } from "../../src/records/index.js";
import { planWiring, type WiringPlan, wiringOptions } from "../../src/wiring/index.js";
import { demo } from "./support/demo.js";
import { plainState } from "./support/plain-simulation.js";

const catalogue = demo();
const build = catalogue.builds.get("saltmarsh-three-mode-skerry")!;
const answer = planBuild(catalogue, build);
if (answer.kind !== "answer") throw new Error("the headline build is not understood");
const combination = answer.combinations[0]!;
const wiring = planWiring(catalogue, combination, wiringOptions(build, { length_m: 0.4 }));
if (wiring.kind !== "wiring") throw new Error(wiring.says);
const { plan } = wiring;

describe("the Saltmarsh three-mode Skerry", () => {
  it("uses the 27C020 and the 4 x 3 rotary from the drawer", () => {
    expect([plan.device?.part, plan.switch.part]).toEqual(["27c020", "rotary-4x3"]);
    expect([plan.device?.atHand, plan.switch.atHand]).toEqual([true, true]);
  });

  it("needs three poles for three enables and one for two bank lines", () => {
    expect(plan.optimality).toMatchObject({ poles: 4, lines: 2, lifted: 0, proven: true });
  });

  it("falls into daily use when every line is open", () => {
    expect(plan.modes.find((m) => m.safest)?.id).toBe("daily");
    expect(plan.banks.at(-1)).toMatchObject({ index: 3, offset: 0x30000, version: "R6" });
  });

  it("puts R4A twice into its 64K bank", () =>
    expect(plan.banks.find((b) => b.version === "R4A")).toMatchObject({ repeats: 2, modes: ["trace"] }));

  it("shows at every position what was planned, by an independent simulation of its tables", () => {
    const part = catalogue.parts.get(plan.switch.part) as Switch;
    const enables = Object.fromEntries(
      plan.nets.flatMap((n) => (n.kind === "enable" ? [[n.card!, catalogue.cards.get(n.card!)!.enable!]] : [])),
    );
    expect(Object.keys(enables)).toHaveLength(3);
    for (const row of plan.contacts) {
      const mode = combination.modes.find((m) => m.id === row.mode)!;
      const state = plainState(plan, part, enables, row.position);
      expect(state).toEqual({
        short: false,
        version: mode.firmware,
        cards: Object.fromEntries(Object.keys(enables).map((card) => [card, mode.enabled.includes(card) ? "on" : "off"])),
      });
    }
    expect(plan.contacts.map((r) => [r.position, r.mode])).toEqual([
      ["1", "daily"],
      ["2", "trace"],
      ["3", "tape"],
    ]);
  });

  it("brings the hand unit's eight conductors out through the eight-way round connector", () => {
    const lead = plan.connectors.find((c) => c.purpose === "lead")!;
    expect(lead).toMatchObject({ part: "din-8-270-socket", spare: [], panel: true });
    expect(plan.wires.filter((w) => w.from.at === "lead")).toHaveLength(8);
  });

  it("numbers every wire once, with both ends and a current or the word unknown", () => {
    expect(plan.wires.map((w) => w.number)).toEqual(plan.wires.map((_, i) => i + 1));
    for (const w of plan.wires)
      expect([w.fromText !== "", w.toText !== "", w.current_mA === "unknown" || w.current_mA >= 0]).toEqual([true, true, true]);
    const loom = plan.wires.filter((w) => w.run === "cable");
    expect(loom).toHaveLength(9);
    expect(loom.every((w) => w.length_m === 0.4 && typeof w.drop_mV === "number")).toBe(true);
  });

  it("says that pulling the plug leaves a mode nobody planned, and what to do", () => {
    const pulled = plan.proof.cases.find((c) => c.kind === "pulled-plug")!;
    expect(pulled.states.map((s) => [s.version, s.verdict])).toEqual([["R6", "unplanned"]]);
    expect(pulled.cure).toContain("power off");
    expect(plan.proof.holds).toBe(true);
  });

  it("orders the bench test: power off, continuity, power without cards, device, cards", () => {
    const stages = [...new Set(plan.benchTest.map((s) => s.stage))];
    expect(stages).toEqual(["power-off", "continuity", "no-cards", "device", "cards", "soak"]);
    expect(plan.benchTest.find((s) => s.power === "on")!.stage).toBe("no-cards");
    for (const stage of ["device", "cards"]) {
      const step = plan.benchTest.find((s) => s.stage === stage && s.power === "on")!;
      expect(step.expect.map((e) => e.position)).toEqual(["1", "2", "3"]);
    }
  });

  it("cautions for every step are there in full", () => {
    const ids = new Set(plan.cautions.map((c) => c.id));
    for (const step of plan.benchTest) for (const id of step.cautions) expect(ids).toContain(id);
    expect(ids).toContain("power-off-to-switch");
    expect(ids).toContain("uv-c");
  });

  it("simulates every kind of fault that such a build can have", () => {
    const all = [...plan.faults.groups.flatMap((g) => g.faults), ...plan.faults.silent];
    const kinds = new Set(all.map((f) => f.kind));
    for (const kind of [
      "throws-swapped",
      "terminals-swapped",
      "wires-swapped",
      "wire-open",
      "wire-to-ground",
      "wire-to-supply",
      "contacts-bridged",
      "terminals-bridged",
      "plug-mirrored",
      "halves-swapped",
      "image-not-repeated",
      "banks-reversed",
      "banks-exchanged",
      "pull-up-missing",
      "knob-offset",
      "knob-reversed",
      "contact-stuck",
    ]) {
      expect(kinds).toContain(kind);
    }
    expect(new Set(all.map((f) => f.id)).size).toBe(all.length);
    expect(plan.doubleFaults.groups.flatMap((g) => g.faults).every((f) => f.kind === "two-swaps")).toBe(true);
    expect(plan.doubleFaults.faults).toBeGreaterThan(20);
  });

  it("knows the mirrored plug by what is seen", () => {
    const mirrored = plan.faults.groups.filter((g) => g.faults.some((f) => f.kind === "plug-mirrored"));
    expect(mirrored.length).toBeGreaterThan(0);
    for (const g of mirrored) expect(g.seen.some((o) => o.differs)).toBe(true);
  });

  it("suggests no start with the plug pulled, since that is no planned mode", () => {
    expect(plan.faults.suggestion?.says ?? "").not.toContain("plug pulled");
  });

  it("tells every fault of the table apart, or names the twins that stay", () => checkTable(plan));
});

function checkTable({ faults }: WiringPlan): void {
  expect(faults.groups.flatMap((g) => g.faults).length + faults.silent.length).toBe(faults.faults);
  expect(faults.groups.length).toBeGreaterThan(40);
  const twins = faults.groups.flatMap((g) => g.twins.flat());
  expect(faults.apart).toBe(faults.faults - faults.silent.length - twins.length);
  for (const group of faults.groups) {
    expect(group.seen.some((o) => o.differs)).toBe(true);
    const twin = (x: string, y: string) => group.twins.some((t) => t.includes(x) && t.includes(y));
    for (const x of group.faults) {
      for (const y of group.faults) {
        if (x.id >= y.id || twin(x.id, y.id)) continue;
        const apart = group.measurements.some((m) => m.outcomes.some((o) => o.faults.includes(x.id) && !o.faults.includes(y.id)));
        expect([x.id, y.id, apart]).toEqual([x.id, y.id, true]);
      }
    }
  }
}
