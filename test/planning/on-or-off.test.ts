// Cards of which it does not matter whether they are on in a mode. The answer is held against every way to settle it, each asked of the
// brute-force twin as a machine of its own.
import { describe, expect, it } from "vitest";
import { cardsOn, copyName, switchable } from "../../src/catalogue/index.js";
import { addressOf, buildFrom, fillBuild, withCard, withChoice, withoutCard } from "../../src/machine/index.js";
import { plan } from "../../src/planning/index.js";
import type { Build, Mode } from "../../src/records/index.js";
import { demo } from "../support/demo.js";
import { Random } from "../support/solver/random.js";
import { size, twin } from "./support/twin.js";
import { setupOf } from "./support/ways-world.js";
import { randomSetup } from "./support/world.js";

const catalogue = demo();
const [tracer, gannet, plover] = ["tallow-bus-tracer", "gannet-fixed-disk-controller", "plover-tape-interface"] as const;
const machine = (modes: readonly Mode[]): Build => ({
  id: "q",
  name: "Question",
  board: "skerry-16t",
  cards: [{ card: tracer }, { card: gannet }, { card: plover }],
  modes: [...modes],
});
const answerTo = (build: Build, of = catalogue) => {
  const answer = plan(of, build);
  if (answer.kind !== "answer") throw new Error(answer.faults[0]?.says);
  return answer;
};

const changing = (b: Build, as: string) =>
  new Set((b.modes ?? []).map((m) => cardsOn(b.cards, m).some((c) => copyName(c) === as))).size > 1;
const switchableIn = (of: typeof catalogue, b: Build, as: string) => {
  const card = of.cards.get(b.cards.find((c) => copyName(c) === as)?.card ?? "");
  return card !== undefined && switchable(card);
};

describe("a card of which it does not matter whether it is on", () => {
  it("is taken as what works: the tracer and the disk exclude each other", () => {
    const answer = answerTo(
      machine([
        { id: "trace", cards: [tracer], on_or_off: [gannet] },
        { id: "work", cards: [gannet], on_or_off: [tracer, plover] },
      ]),
    );
    expect(answer.verdict).not.toBe("ruled-out");
    const off = answer.taken.filter((t) => !t.on).map((t) => [t.mode, t.card]);
    expect(off).toContainEqual(["trace", gannet]);
    expect(off).toContainEqual(["work", tracer]);
    for (const { modes } of answer.combinations)
      for (const { mode, card, on } of answer.taken) expect(modes.find((m) => m.id === mode)?.enabled.includes(card)).toBe(on);
  });

  it("is taken as it is in the other mode where both work, so that nothing has to switch it", () => {
    const taken = (cards: readonly string[]) =>
      answerTo(
        machine([
          { id: "trace", cards: [tracer], on_or_off: [plover] },
          { id: "work", cards: [gannet, ...cards] },
        ]),
      ).taken;
    // Beside the tracer the tape interface does not run under any firmware: what works comes before what changes least.
    expect(taken([plover])).toEqual([{ mode: "trace", card: plover, on: false }]);
    expect(taken([])).toEqual([{ mode: "trace", card: plover, on: false }]);
    const disk = (cards: readonly string[]) =>
      answerTo(
        machine([
          { id: "disk", cards: [gannet], on_or_off: [plover] },
          { id: "tape", cards: [gannet, ...cards] },
        ]),
      ).taken;
    expect(disk([plover])).toEqual([{ mode: "disk", card: plover, on: true }]);
    expect(disk([])).toEqual([{ mode: "disk", card: plover, on: false }]);
  });

  it("is on or off in the way that is taken, and open in none", () => {
    const build = machine([
      { id: "trace", cards: [tracer], on_or_off: [gannet] },
      { id: "work", on_or_off: [tracer] },
    ]);
    const [best] = answerTo(build).combinations;
    const filled = fillBuild(build, best!);
    expect(filled.modes?.map((m) => [m.on_or_off, cardsOn(filled.cards, m).map(copyName)])).toEqual([
      [undefined, [tracer]],
      [undefined, [gannet, plover]],
    ]);
    expect(answerTo(filled).taken).toEqual([]);
    expect(answerTo(filled).verdict).toBe(answerTo(build).verdict);
  });

  it("stays open through the address, another card put in, and one taken out", () => {
    const build = machine([{ id: "trace", cards: [], on_or_off: [gannet, plover] }, { id: "work" }]);
    expect(buildFrom(addressOf(build))?.modes).toEqual(build.modes);
    expect(withoutCard(build, gannet).modes).toEqual([{ id: "trace", cards: [], on_or_off: [plover] }, { id: "work" }]);
    expect(withCard(build, gannet).modes).toEqual(build.modes);
    const none = withoutCard(withoutCard(build, gannet), plover);
    expect(none.modes).toEqual([{ id: "trace", cards: [] }, { id: "work" }]);
    const changed = (value: string) => withChoice(build, `on:trace:${gannet}`, value).modes?.[0];
    expect(changed("on")).toEqual({ id: "trace", cards: [gannet], on_or_off: [plover] });
    expect(changed("off")).toEqual({ id: "trace", cards: [], on_or_off: [plover] });
    expect(withChoice(build, `on:work:${tracer}`, "on-or-off").modes?.[1]).toEqual({
      id: "work",
      cards: [gannet, plover],
      on_or_off: [tracer],
    });
  });

  it("agrees with every way to settle it, on random machines", () => {
    const seen: Record<string, number> = {};
    const worlds = process.env.LONG ? 6_000 : 400;
    const first = Number(process.env.SEED ?? 1);
    for (let seed = first; seed < first + worlds; seed++) {
      const { world, catalogue: of, build } = randomSetup(seed);
      const r = new Random(seed);
      const names = build.cards.map(copyName);
      const places = (build.modes ?? []).flatMap((m) => names.map((as) => ({ mode: m.id, as }))).filter(() => r.next() < 0.5);
      if (places.length === 0 || places.length > 4 || size(world, build) > 4_000) continue;
      const settle = (value: (at: number) => string) =>
        places.reduce((b, { mode, as }, at) => withChoice(b, `on:${mode}:${as}`, value(at)), build);
      const got = answerTo(
        settle(() => "on-or-off"),
        of,
      );
      const settled = Array.from({ length: 2 ** places.length }, (_, bits) => settle((at) => ((bits >> at) & 1 ? "on" : "off")));
      const judged = settled.map((b) => ({ build: b, ...twin(world, b) }));
      const best = (["workable", "conditional", "unknown", "ruled-out"] as const).find((v) => judged.some((j) => j.verdict === v))!;
      expect(got.verdict, `seed ${seed}`).toBe(best);
      seen[best] = (seen[best] ?? 0) + 1;
      if (best === "ruled-out") {
        expect(got.taken, `seed ${seed}`).toEqual([]);
        expect(got.reasons.length, `seed ${seed}`).toBeGreaterThan(0);
        continue;
      }
      // What was taken is one of them, as good as the best; nothing else of the answer speaks of another.
      const open = places.filter((p) => got.taken.some((t) => t.mode === p.mode && t.card === p.as));
      const on = (p: (typeof places)[number]) => got.taken.some((t) => t.mode === p.mode && t.card === p.as && t.on);
      const own = settle((at) => (on(places[at]!) || !open.includes(places[at]!) ? "on" : "off"));
      const mine = twin(world, own);
      expect(mine.verdict, `seed ${seed}`).toBe(best);
      expect([got.count, got.hanging], `seed ${seed}`).toEqual([String(mine.certain), String(mine.open)]);
      if (best !== "workable") continue;
      const changed = (b: Build) => names.filter((as) => changing(b, as)).length;
      const fewest = Math.min(...judged.filter((j) => j.verdict === "workable").map((j) => changed(j.build)));
      const least = open.length === places.length ? changed(own) : fewest;
      expect(least, `seed ${seed}: fewest cards that change`).toBe(fewest);
      seen.least = (seen.least ?? 0) + 1;
    }
    if (process.env.SHOW) console.log(seen);
    for (const kind of ["workable", "conditional", "unknown", "ruled-out", "least"]) expect(seen[kind] ?? 0, kind).toBeGreaterThan(0);
  });

  it("changes the fewest cards between the modes that any way to settle it changes, on random machines in two ways", () => {
    const seen: Record<string, number> = {};
    const first = Number(process.env.SEED ?? 1);
    for (let seed = first; seed < first + (process.env.LONG ? 1_500 : 150); seed++) {
      const { catalogue: of, build } = setupOf(seed);
      const r = new Random(seed);
      const { wishes: _, ...rest } = build;
      const names = build.cards.map(copyName);
      const places = ["m1", "m2"].flatMap((mode) => names.map((as) => ({ mode, as })));
      const fixed = places.map(() => r.pick(["on", "off", "on-or-off"] as const));
      const open = places.filter((_p, at) => fixed[at] === "on-or-off");
      if (open.length === 0 || open.length > 5) continue;
      const two: Build = { ...rest, modes: [{ id: "m1" }, { id: "m2" }] };
      const settle = (value: (at: number) => string) =>
        places.reduce((b, { mode, as }, at) => withChoice(b, `on:${mode}:${as}`, value(at)), two);
      const got = answerTo(
        settle((at) => fixed[at] ?? "off"),
        of,
      );
      const settled = Array.from({ length: 2 ** open.length }, (_n, bits) => {
        const own = settle((at) => {
          const among = open.indexOf(places[at]!);
          return among < 0 ? (fixed[at] ?? "off") : (bits >> among) & 1 ? "on" : "off";
        });
        const { verdict } = answerTo(own, of);
        // A card that nothing switches off changes nothing, whatever the build says of it.
        const changes = names.filter((as) => switchableIn(of, build, as) && changing(own, as)).length;
        return { verdict, changes };
      });
      const best = (["workable", "conditional", "unknown", "ruled-out"] as const).find((v) => settled.some((s) => s.verdict === v))!;
      expect(got.verdict, `seed ${seed}`).toBe(best);
      seen[best] = (seen[best] ?? 0) + 1;
      if (best !== "workable") continue;
      const fewest = Math.min(...settled.filter((s) => s.verdict === "workable").map((s) => s.changes));
      const [combination] = got.combinations;
      const on = (as: string) => new Set(combination?.modes.map((m) => m.enabled.includes(as))).size > 1;
      expect(names.filter((as) => switchableIn(of, build, as) && on(as)).length, `seed ${seed}`).toBe(fewest);
      if (fewest > 0) seen.changing = (seen.changing ?? 0) + 1;
    }
    if (process.env.SHOW) console.log(seen);
    for (const kind of ["workable", "ruled-out", "changing"]) expect(seen[kind] ?? 0, kind).toBeGreaterThan(2);
  });
});
