// What things are called changes no answer: every id, copy, mode and word of a club renamed, over random worlds and the demo club.
import { describe, expect, it } from "vitest";
import { gather } from "../../src/catalogue/index.js";
import { fillBuild } from "../../src/machine/index.js";
import { type Answer, beforeYouBuy, plan } from "../../src/planning/index.js";
import type { Build, Conflict, Loaded } from "../../src/records/index.js";
import { planWiring, wiringOptions } from "../../src/wiring/index.js";
import { demo } from "../support/demo.js";
import { loadedOf } from "./support/loaded.js";
import { type Renaming, renamingOf } from "./support/renaming.js";
import { smallClub } from "./support/small-club.js";
import { randomSetup } from "./support/world.js";

const worlds = process.env.LONG ? 2_000 : 150;
const first = Number(process.env.SEED ?? 1);

function answer(loaded: readonly Loaded[], build: Build): Answer {
  const a = plan(gather(loaded), build);
  if (a.kind !== "answer") throw new Error(a.faults[0]?.says);
  return a;
}

/** The random world with what worked in it tested, so that evidence has names to lose. */
function world(seed: number): { readonly loaded: readonly Loaded[]; readonly build: Build } {
  const { catalogue, build } = randomSetup(seed);
  const bare = plan(catalogue, build, { most: 2 });
  const tested = (bare.kind === "answer" && seed % 3 !== 0 ? bare.combinations : []).map(
    (c, i): Build => ({ ...fillBuild(build, c), id: `tested-${i}`, result: { by: "Ada", date: "2019-05", outcome: "worked" } }),
  );
  return { loaded: [...loadedOf(catalogue), ...tested.map((record) => ({ kind: "build" as const, record, file: "" }))], build };
}

const renamed = (loaded: readonly Loaded[], by: Renaming) => loaded.map((l) => ({ ...l, record: by.rename(l.record) }) as Loaded);
const lowered = (value: unknown) => JSON.stringify(value).toLowerCase();

describe("names and words", () => {
  it(`change nothing in an answer but themselves, in ${worlds} random worlds`, () => {
    const seen = new Set<string>();
    for (let seed = first; seed < first + worlds; seed++) {
      const { loaded, build } = world(seed);
      const before = answer(loaded, build);
      const by = renamingOf(loaded, [build]);
      const after = answer(renamed(loaded, by), by.rename(build));
      expect(by.back(after), `seed ${seed}`).toBe(lowered(before));
      seen.add(before.verdict).add(before.combinations[0]?.evidence ?? "none");
    }
    expect(["workable", "conditional", "unknown", "ruled-out", "bench"].filter((s) => !seen.has(s))).toEqual([]);
  });

  it("that sort the other way round change no verdict, no count and no list but in the order of equals", () => {
    const plain = (by: Renaming | undefined, a: Answer) => {
      const told = (value: unknown) => (by ? by.back(value) : lowered(value));
      const set = (values: readonly unknown[]) => values.map(told).sort();
      return {
        verdict: a.verdict,
        counts: [a.count, a.exact, a.hanging, a.hangingExact],
        possible: told(a.possible),
        combinations: a.combinations.map((c) => [told([c.verdict, c.evidence, c.revision, c.memory, c.modes, c.cards]), set(c.conditions)]),
        reasons: set(a.reasons.map((r) => r.choices)),
        repairs: set(a.repairs.map((r) => [r.gives, r.verdict, r.count])),
        unknowns: set(a.unknowns),
      };
    };
    for (let seed = first; seed < first + worlds; seed++) {
      const { loaded, build } = world(seed);
      const by = renamingOf(loaded, [build], true);
      const after = answer(renamed(loaded, by), by.rename(build));
      expect(plain(by, after), `seed ${seed}`).toEqual(plain(undefined, answer(loaded, build)));
    }
  });
});

describe("two losses of which one must be borne", () => {
  const loses = (id: string, position: string): Conflict => ({
    id,
    name: "A loss",
    class: "timing",
    when: { cards: [{ card: "a", settings: { J1: position } }] },
    effect: "degrades",
    loss: "It is slower.",
    symptoms: ["s"],
    cause: "c",
    status: "confirmed",
    evidence: [{ grade: "reported", says: "e" }],
  });
  const shown = (conflicts: readonly Conflict[]) => {
    const open: Build = { id: "q", name: "q", board: "board", cards: [{ card: "a" }], modes: [{ id: "always" }] };
    const answered = plan(smallClub({ conflicts }), open, { most: 1 });
    if (answered.kind !== "answer") throw new Error("misasked");
    return answered.combinations.map((c) => [c.verdict, c.cards.map((x) => x.settings)]);
  };

  it("are weighed by what they are about, whatever they are called and whichever is read first", () => {
    const told = [
      shown([loses("k1", "x"), loses("k2", "y")]),
      shown([loses("k2", "y"), loses("k1", "x")]),
      shown([loses("k1", "y"), loses("k2", "x")]),
    ];
    expect(told[0]).toEqual([["conditional", [{ J1: expect.stringMatching(/^[xy]$/) }]]]);
    expect(told).toEqual([told[0], told[0], told[0]]);
  });
});

describe("the demo club renamed", () => {
  const loaded = loadedOf(demo());
  const by = renamingOf(loaded);
  const others = gather(renamed(loaded, by));
  const builds = [...demo().builds.values()];

  it("answers every build alike, and wires and burns it alike", () => {
    let wired = 0;
    for (const build of builds) {
      const [a, b] = [plan(demo(), build, { brief: true, most: 2 }), plan(others, by.rename(build), { brief: true, most: 2 })];
      expect(by.back(b), build.id).toBe(lowered(a));
      const [best, other] = [a, b].map((x) => (x.kind === "answer" ? x.combinations[0] : undefined));
      if (!best || !other || best.modes.length < 2) continue;
      const [w, v] = [planWiring(demo(), best, wiringOptions(build)), planWiring(others, other, wiringOptions(by.rename(build)))];
      const burned = (x: typeof w) =>
        x.kind === "wiring" ? { banks: x.plan.banks, contacts: x.plan.contacts, device: x.plan.device, lines: x.plan.lines } : x.kind;
      expect(by.back(burned(v)), build.id).toBe(lowered(burned(w)));
      wired++;
    }
    expect(wired).toBeGreaterThan(5);
  });

  it("says the same of a card before it is bought", () => {
    for (const build of builds.filter((_, i) => i % 25 === 0)) {
      const card = build.cards[0]?.card ?? "gannet-fixed-disk-controller";
      const told = (x: ReturnType<typeof beforeYouBuy>) => (x.kind === "purchase" ? { ...x, best: x.best?.cards } : x);
      expect(by.back(told(beforeYouBuy(others, by.rename(build), by.rename(card)))), build.id).toBe(
        lowered(told(beforeYouBuy(demo(), build, card))),
      );
    }
  });
});
