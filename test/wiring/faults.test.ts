// The fault table against the build itself: a wire put in the wrong place is found by what is seen, every time.
import { describe, expect, it } from "vitest";
import { endText } from "../../src/wiring/harness/wires.js";
import { type Observation, planWiring, type WiringPlan } from "../../src/wiring/index.js";
import { type PlainState, plainState } from "./support/plain-simulation.js";
import { machine, Random } from "./support/random.js";

type Wire = WiringPlan["wires"][number];

/** What somebody at the bench would write down. */
function seen(plan: WiringPlan, state: PlainState, position: string): string {
  const of = (is: string) =>
    Object.keys(state.cards)
      .filter((card) => state.cards[card] === is)
      .sort();
  if (state.short) return JSON.stringify([position, "supply shorted", [], []]);
  const shows = plan.device ? (state.version ?? "not certain which firmware") : "starts";
  return JSON.stringify([position, shows, of("on"), of("undefined")]);
}

const written = (o: Observation) => JSON.stringify([o.position, o.shows, [...o.answers].sort(), [...o.unsure].sort()]);

/** Exchanges one end of two wires in the wire table. */
function swapped(wires: readonly Wire[], x: Wire, y: Wire, side: "from" | "to"): Wire[] {
  return wires.map((w) => (w === x ? { ...w, [side]: y[side] } : w === y ? { ...w, [side]: x[side] } : w));
}

describe("two wires swapped in the build", () => {
  it("are found by what is seen, every time, in random machines", () => {
    let found = 0;
    let silent = 0;
    for (let seed = 5001; found < 350 && seed < 5600; seed += 1) {
      const random = new Random(seed);
      const m = machine(random);
      const wiring = planWiring(m.catalogue, m.combination, m.options);
      if (wiring.kind !== "wiring") continue;
      const { plan } = wiring;
      const part = m.switches.find((s) => s.id === plan.switch.part)!;
      const enables = Object.fromEntries(plan.nets.flatMap((n) => (n.card ? [[n.card, m.catalogue.cards.get(n.card)!.enable!]] : [])));
      const look = (wires: readonly Wire[]) =>
        plan.contacts.map((r) => seen(plan, plainState({ ...plan, wires }, part, enables, r.position), r.position));
      const planned = look(plan.wires);
      // A wire of one pin or resistor has no place in common with those of the switch.
      const switched = plan.wires.filter((w) => plan.nets.some((net) => net.id === w.net));
      for (let n = 0; n < 12 && found < 350; n += 1) {
        const x = random.pick(switched);
        const others = switched.filter((w) => w !== x && w.run === x.run && w.net !== x.net);
        if (others.length === 0) continue;
        const y = random.pick(others);
        // In the machine and at the connector an exchange of either end of two wires is the same.
        const side = x.run === "jumper" || random.flip() ? "to" : "from";
        if (x.run === "jumper" && (x.to.at !== "switch" || y.to.at !== "switch")) continue;
        const now = look(swapped(plan.wires, x, y, side));
        const names = new Set([x.number, y.number]);
        const is = (id: string) =>
          id.startsWith("wires-swapped:") &&
          JSON.stringify(
            id
              .match(/\d+(?=[ab])/g)
              ?.map(Number)
              .sort(),
          ) === JSON.stringify([...names].sort());
        if (JSON.stringify(now) === JSON.stringify(planned)) {
          expect(
            plan.faults.silent.some((f) => is(f.id)),
            `seed ${seed}: wires ${[...names]} change nothing`,
          ).toBe(true);
          silent += 1;
          continue;
        }
        const group = plan.faults.groups.find((g) => JSON.stringify(g.seen.map(written)) === JSON.stringify(now));
        expect(
          group?.faults.some((f) => is(f.id)),
          `seed ${seed}: wires ${[...names]}, ${side}, ${endText(x.to, (as) => as)}: ${now}`,
        ).toBe(true);
        found += 1;
      }
    }
    expect(found).toBe(350);
    expect(silent).toBeGreaterThan(10);
  });
});
