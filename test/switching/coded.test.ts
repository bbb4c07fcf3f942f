// Coded switches, whose contacts close in several positions each: as many versions as the positions can show, agreement with brute
// force on random codes of up to ten positions, and a switch that no plan can be drawn for. LONG=1 tries 5,000 of them.
import { describe, expect, it } from "vitest";
import type { Part, Switch } from "../../src/records/index.js";
import { contactPlans } from "../../src/switching/contacts/contacts.js";
import { demandsOf } from "../../src/switching/demand/demands.js";
import { planWiring, type Wiring } from "../../src/wiring/index.js";
import { type BruteInput, unusualWorks } from "../wiring/support/brute-force.js";
import { plainState } from "../wiring/support/plain-simulation.js";
import { Random } from "../wiring/support/random.js";
import {
  changeOver,
  coded,
  combination,
  grounding,
  m27c010,
  m27c080,
  pair,
  resistor,
  socket32,
  switchOf,
  world,
} from "../wiring/support/world.js";

const names = Array.from({ length: 16 }, (_, i) => `V${i + 1}`);
const sockets = [{ ...socket32, upper_pins: [1, 2, 30, 31].map((pin) => ({ pin, carries: "open" as const })) }];
type Enable = typeof changeOver;

/** As a code says: position by position the figures that the common meets. */
function codedBy(id: string, codes: readonly number[], figures: number): Switch {
  const closes = Object.fromEntries(
    codes.map((code, p) => [
      `${p}`,
      Array.from({ length: figures }, (_, f) => f).flatMap((f): [string, string][] => ((code >> f) & 1 ? [["C", `${2 ** f}`]] : [])),
    ]),
  );
  const terminals = ["C", ...Array.from({ length: figures }, (_, f) => `${2 ** f}`)];
  return { ...switchOf(id, "coded-rotary", 1, closes), terminals };
}

interface Asked {
  readonly part: Switch;
  readonly modes: readonly { readonly firmware: string; readonly on: readonly string[] }[];
  readonly cards: Readonly<Record<string, Enable>>;
  readonly safest?: string;
}

function catalogueOf({ part, cards }: Asked) {
  const parts: Part[] = [m27c010, m27c080, part, resistor];
  return world({ parts, cards, versions: Object.fromEntries(names.map((n) => [n, 0x10000])), sockets });
}

const plan = (asked: Asked): Wiring =>
  planWiring(catalogueOf(asked), combination(asked.modes, Object.keys(asked.cards)), {
    ...(asked.safest === undefined ? {} : { safest: asked.safest }),
    tables: false,
  });

function expectPlanned(asked: Asked, wiring: Wiring): void {
  if (wiring.kind !== "wiring") throw new Error(`${wiring.kind}: ${wiring.says}`);
  expect(wiring.plan.contacts.map((row) => row.position)).toEqual(asked.part.positions);
  const enables = Object.fromEntries(wiring.plan.nets.flatMap((n) => (n.card ? [[n.card, asked.cards[n.card]!]] : [])));
  for (const row of wiring.plan.contacts) {
    const mode = asked.modes[Number(row.mode.slice(1)) - 1]!;
    const state = plainState(wiring.plan, asked.part, enables, row.position);
    expect([state.short, ...(wiring.plan.device ? [state.version] : [])]).toEqual([false, ...(wiring.plan.device ? [mode.firmware] : [])]);
    for (const [card, is] of Object.entries(state.cards)) expect([card, is]).toEqual([card, mode.on.includes(card) ? "on" : "off"]);
  }
  expect(new Set(wiring.plan.contacts.map((row) => row.mode)).size).toBe(asked.modes.length);
}

const versions = (count: number) => names.slice(0, count).map((firmware) => ({ firmware, on: [] }));

describe("as many versions as positions", () => {
  it.each([8, 9, 10])("%i of ten positions in binary", (count) => {
    const asked = { part: coded(10), modes: versions(count), cards: {} };
    const wiring = plan(asked);
    expectPlanned(asked, wiring);
    if (wiring.kind === "wiring") expect(wiring.plan.switch.sections[0]).toMatchObject({ hub: "C", hubNet: "GND" });
  });

  it.each([12, 16])("%i of sixteen positions in binary", (count) => {
    const asked = { part: coded(16), modes: versions(count), cards: {} };
    expectPlanned(asked, plan(asked));
  });

  it("are refused when two positions that differ in nothing the lines see would need two of them", () => {
    const asked = { part: codedBy("two-figures", [0, 1, 2, 3, 0], 2), modes: versions(5), cards: {} };
    const wiring = plan(asked);
    expect(wiring).toMatchObject({ kind: "refused", reasons: [{ code: "no-switch" }] });
  });
});

it("a switch whose contacts meet without a common terminal is refused by name, and says in which position", () => {
  const closes = { a: [["1", "2"]], b: [["2", "3"]], c: [["1", "3"]] } satisfies Record<string, [string, string][]>;
  const ring = switchOf("ring", "slide", 1, closes);
  const wiring = planWiring(catalogueOf({ part: ring, modes: [], cards: {} }), combination(versions(2), []), {
    switch: { switch: "ring" },
  });
  if (wiring.kind !== "refused") throw new Error(wiring.kind);
  expect(wiring.reasons[0]).toMatchObject({ code: "switch-unfit" });
  expect(wiring.says).toMatch(/ring joins terminals in position b that do not meet its common one/);
});

it("a search that stops at its limit says that not every assignment was tried, and looked at no more than the limit allows", () => {
  const levers = Array.from({ length: 8 }, (_, lever) => lever);
  const closes = Object.fromEntries(
    Array.from({ length: 256 }, (_, code) => [
      `${code}`,
      levers.filter((lever) => (code >> lever) & 1).map((lever): [string, string] => [`a${lever}`, `b${lever}`]),
    ]),
  );
  const cards = Object.fromEntries(levers.slice(0, 4).map((i) => [`card-${i}`, i % 2 ? pair(true) : grounding(true)]));
  const modes = Array.from({ length: 16 }, (_, m) => ({
    firmware: names[m % 4]!,
    on: Object.keys(cards).filter((_, i) => (m >> i) & 1),
  }));
  const asked = { part: switchOf("dip", "dip", 8, closes), modes, cards };
  const wiring = planWiring(catalogueOf(asked), combination(modes, Object.keys(cards)), { switch: { switch: "dip" }, tables: false });
  expect(wiring).toMatchObject({ kind: "refused", reasons: [{ code: "switch-unfit" }] });
  if (wiring.kind === "refused") expect(wiring.says).toContain("Not every assignment was tried");
  const demands = demandsOf(catalogueOf(asked), combination(modes, Object.keys(cards)), {});
  if (demands.kind !== "demands") throw new Error("refused");
  expect(contactPlans(asked.part, demands.demands, 4).looked).toBeLessThan(100_000);
});

/** Two to ten positions in real, complement, Gray or no particular code; up to as many modes, some of them alike. */
function randomCoded(random: Random): Asked {
  const positions = 2 + random.whole(9);
  const figures = Math.max(2, Math.ceil(Math.log2(positions))) - (random.whole(6) === 0 && positions > 4 ? 1 : 0);
  const all = 2 ** figures - 1;
  const kind = random.whole(4);
  const codes = Array.from({ length: positions }, (_, p) =>
    kind === 0 ? p & all : kind === 1 ? ~p & all : kind === 2 ? (p ^ (p >> 1)) & all : random.whole(all + 1),
  );
  const kinds = Array.from({ length: random.whole(3) }, () =>
    random.pick([grounding(true), grounding(false), grounding(true), pair(true), changeOver]),
  );
  const cards = Object.fromEntries(kinds.map((enable, i) => [`card-${i + 1}`, enable]));
  const count = 2 + random.whole(positions - 1);
  const firmware = names.slice(0, 1 + random.whole(count));
  const modes = Array.from({ length: count }, (_, m) => ({
    firmware: random.whole(3) === 0 ? random.pick(firmware) : firmware[m % firmware.length]!,
    on: Object.keys(cards).filter(() => random.flip()),
  }));
  return {
    part: codedBy("coded", codes, figures),
    modes,
    cards,
    ...(random.flip() ? { safest: `m${1 + random.whole(count)}` } : {}),
  };
}

/** The question as brute force takes it: cards that never change are none of the switch's business. */
function bruteOf({ modes, cards, safest }: Asked): BruteInput {
  const switched = Object.keys(cards).filter((card) => new Set(modes.map((m) => m.on.includes(card))).size > 1);
  const named = modes.find((_, m) => `m${m + 1}` === safest);
  const fewest = modes.reduce((best, mode) => (mode.on.length < best.on.length ? mode : best));
  return {
    modes: modes.map((m) => ({ version: m.firmware, on: switched.map((card) => m.on.includes(card)) })),
    safestVersion: (named ?? fewest).firmware,
    enables: switched.map((card) => cards[card]!),
    lines: new Set(modes.map((m) => m.firmware)).size === 1 ? 0 : 4,
  };
}

const count = process.env.LONG ? 5_000 : 250;

it(`${count} random coded switches give what was asked, or brute force finds no wiring either`, () => {
  const seen = { wiring: 0, refused: 0, "not-needed": 0, many: 0 };
  for (let seed = 1; seed <= count; seed += 1) {
    const asked = randomCoded(new Random(seed));
    const wiring = plan(asked);
    seen[wiring.kind] += 1;
    try {
      if (wiring.kind === "wiring") {
        expectPlanned(asked, wiring);
        if (new Set(asked.modes.map((m) => m.firmware)).size > 4) seen.many += 1;
        const used = wiring.plan.optimality.lines;
        if (used > 0) expect(unusualWorks({ ...bruteOf(asked), lines: used - 1 }, asked.part)).toBe(false);
      } else if (wiring.kind === "refused") {
        expect(wiring.says).not.toContain("Not every assignment was tried");
        expect(unusualWorks(bruteOf(asked), asked.part)).toBe(false);
      }
    } catch (error) {
      throw new Error(`switch ${seed}: ${error instanceof Error ? error.message : error}`);
    }
  }
  expect(seen.wiring).toBeGreaterThan(count / 10);
  expect(seen.refused).toBeGreaterThan(count / 10);
  expect(seen.many).toBeGreaterThan(count / 50);
});
