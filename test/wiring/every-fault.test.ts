// Every fault in every table, and every meter reading that tells two apart, against the plan's own tables with that fault made in them:
// machines of the demo club, and random ones with one socket, a pair and a row. LONG=1 takes 1,000 random machines.
import { describe, expect, it } from "vitest";
import type { Catalogue } from "../../src/catalogue/index.js";
import { plan as planBuild } from "../../src/planning/index.js";
import type { Connector, Switch } from "../../src/records/index.js";
import { type FaultTable, type Observation, planWiring, type WiringPlan, wiringOptions } from "../../src/wiring/index.js";
import { demo } from "./support/demo.js";
import { meterAt, reading, type Seen, seenAt } from "./support/plain-bench.js";
import { type Broken, brokenBuild, goodBuild, type Setting } from "./support/plain-faults.js";
import { type Layout, machine, Random } from "./support/random.js";

const tally = { machines: 0, faults: 0, states: 0, readings: 0, beeps: 0, found: 0 };

function settingOf(plan: WiringPlan, part: Switch, catalogue: Catalogue, cardOf: (as: string) => string): Setting {
  const named = plan.nets.flatMap((n) => (n.kind === "enable" ? [n.card!] : []));
  return {
    plan,
    part,
    enables: Object.fromEntries(named.map((as) => [as, catalogue.cards.get(cardOf(as))!.enable!])),
    connectors: new Map([...catalogue.parts.values()].flatMap((p): [string, Connector][] => (p.type === "connector" ? [[p.id, p]] : []))),
  };
}

const written = ({ position, shows, answers, unsure }: Observation | Seen) =>
  JSON.stringify([position, shows, [...answers].sort(), [...unsure].sort()]);

function checkTable(setting: Setting, table: FaultTable): void {
  const positions = setting.plan.contacts.map((row) => row.position);
  const look = (id: string) => {
    const broken = brokenBuild(setting, id);
    if (!broken) throw new Error(`what is ${id}?`);
    tally.faults += 1;
    tally.states += positions.length;
    return positions.map((position) => written(seenAt(setting, broken, position)));
  };
  const good = positions.map((position) => written(seenAt(setting, goodBuild(setting), position)));
  for (const fault of table.silent) expect(look(fault.id), fault.id).toEqual(good);
  for (const group of table.groups) {
    const seen = group.seen.map(written);
    expect(seen).not.toEqual(good);
    for (const fault of group.faults) expect(look(fault.id), fault.id).toEqual(seen);
    for (const { says, outcomes } of group.measurements)
      for (const { sees, faults } of outcomes)
        for (const id of faults) {
          tally.readings += 1;
          expect(reading(setting, brokenBuild(setting, id)!, says), `${id}: ${says}`).toBe(sees);
        }
    // What no measurement tells apart reads alike in all of them.
    for (const twins of group.twins)
      for (const { says } of group.measurements)
        expect(new Set(twins.map((id) => reading(setting, brokenBuild(setting, id)!, says))).size, says).toBe(1);
  }
}

/** The list holds of the sound build, and finds by itself what the plan says a meter finds. */
function checkContinuity(setting: Setting): void {
  const { plan } = setting;
  const rows = plan.continuity.flatMap((r) => (r.position === undefined ? [] : [{ ...r, position: r.position }]));
  const positions = [...new Set(rows.map((r) => r.position))];
  const wrong = (b: Broken) =>
    positions.flatMap((position) => {
      const beeps = meterAt(setting, b, position);
      return rows.filter((r) => r.position === position && beeps(r.from, r.to) !== (r.must === "beep"));
    });
  expect(wrong(goodBuild(setting))).toEqual([]);
  tally.beeps += rows.length;
  const wires = plan.continuity.filter((r) => r.kind === "wire").map((r) => r.wire);
  expect(wires).toEqual(plan.wires.map((w) => w.number));
  const told = plan.finding.flatMap((row) => row.faults);
  expect([...told].sort()).toEqual([...plan.faults.groups.flatMap((g) => g.faults), ...plan.faults.silent].map((f) => f.id).sort());
  for (const row of plan.finding)
    for (const id of row.faults) {
      const broken = brokenBuild(setting, id)!;
      const amiss = wrong(broken).length > 0;
      // Wires end to end, lifted pins and the bare switch are measured besides.
      if (row.at !== "meter" && row.at !== "resistance") expect(amiss, `${id} is found at ${row.at}`).toBe(false);
      if (amiss) tally.found += 1;
    }
}

function check(setting: Setting): void {
  checkContinuity(setting);
  for (const row of setting.plan.contacts) {
    const on = row.cards.flatMap((c) => (c.state === "on" ? [c.card] : []));
    const shows = setting.plan.device ? row.version : "starts";
    expect(written(seenAt(setting, goodBuild(setting), row.position))).toBe(
      written({ position: row.position, shows, answers: on, unsure: [] }),
    );
  }
  checkTable(setting, setting.plan.faults);
  checkTable(setting, setting.plan.doubleFaults);
  tally.machines += 1;
}

const catalogue = demo();

describe("every fault of the demo club's machines", () => {
  for (const build of [...catalogue.builds.values()].filter((b) => (b.modes?.length ?? 1) > 1))
    it(`${build.id} shows what the table says, and the meter too`, () => {
      const answer = planBuild(catalogue, build, { most: 1 });
      const combination = answer.kind === "answer" ? answer.combinations[0] : undefined;
      if (!combination) return expect(answer.kind).toBe("answer");
      const wiring = planWiring(catalogue, combination, wiringOptions(build));
      if (wiring.kind !== "wiring") throw new Error(wiring.kind);
      const cardOf = (as: string) => combination.cards.find((c) => c.as === as)!.card;
      check(settingOf(wiring.plan, catalogue.parts.get(wiring.plan.switch.part) as Switch, catalogue, cardOf));
    });
});

describe("every fault of random machines", () => {
  const wanted = process.env.LONG ? 1_000 : 45;
  for (const [n, layout] of (["one", "pair", "row"] as const satisfies readonly Layout[]).entries())
    it(`with ${layout === "one" ? "one socket" : layout === "pair" ? "a pair of sockets" : "two sockets in a row"}`, () => {
      let looked = 0;
      for (let seed = 1 + 10_000 * n; looked < wanted / 3; seed += 1) {
        const m = machine(new Random(seed), layout);
        const wiring = planWiring(m.catalogue, m.combination, m.options);
        if (wiring.kind !== "wiring") continue;
        looked += 1;
        const part = m.switches.find((s) => s.id === wiring.plan.switch.part)!;
        try {
          check(settingOf(wiring.plan, part, m.catalogue, (as) => as));
        } catch (error) {
          throw new Error(`machine ${seed}: ${error instanceof Error ? error.message : error}`);
        }
      }
    });

  it("are many", () => {
    expect(tally.machines).toBeGreaterThan(wanted);
    expect(tally.faults).toBeGreaterThan(100 * wanted);
    expect(tally.readings).toBeGreaterThan(10 * wanted);
    expect(tally.beeps).toBeGreaterThan(100 * wanted);
    expect(tally.found).toBeGreaterThan(50 * wanted);
  });
});
