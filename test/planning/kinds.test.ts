// Counts by verdict and by evidence against the brute-force twin: every machine judged one by one, in random worlds with random tested builds
// and random papers. Ways of one kind are of that kind, and there are some whenever the count says so.
import { describe, expect, it } from "vitest";
import { type Catalogue, gather } from "../../src/catalogue/index.js";
import { type Compiled, compile } from "../../src/encoding/index.js";
import { resolveBuild } from "../../src/machine/index.js";
import { countsOf, grades, waysOf, workables } from "../../src/planning/index.js";
import type { Build, Card, Loaded } from "../../src/records/index.js";
import { Random } from "../support/solver/random.js";
import { judge, type Machine, type World } from "./support/checker/index.js";
import { withTests } from "./support/exactly-tested.js";
import { type Grade, gradeOf } from "./support/grader.js";
import { machineOf, machines, pinnedTo, size, verdictFor } from "./support/twin.js";
import { randomSetup } from "./support/world.js";

const worlds = process.env.LONG ? 3_000 : 200;
const first = Number(process.env.SEED ?? 1);

interface Told {
  readonly world: World;
  readonly catalogue: Catalogue;
  readonly build: Build;
  readonly tested: readonly Build[];
  readonly judged: readonly { readonly machine: Machine; readonly verdict: string; readonly evidence: Grade }[];
}

/** A random world with papers for some cards and with builds that were tested: some whole, some of fewer cards, some failed. */
function withBench(seed: number): Told | undefined {
  const { world: bare, catalogue: before, build: whole } = randomSetup(seed);
  const random = new Random(seed + 77);
  // A card alone can rest on its papers; cards together only on the bench.
  const build = random.next() < 0.4 ? onlyFirst(whole) : whole;
  if (size(bare, build) > 6000) return undefined;
  const papered = (card: Card): Card => ({
    ...card,
    ...(random.next() < 0.5 ? { needs: { ...card.needs, boards: [{ board: bare.board.id }] } } : {}),
    sources:
      random.next() < 0.6 ? [{ id: "s", kind: random.pick(["manual", "forum"]), says: "s" } as NonNullable<Card["sources"]>[number]] : [],
  });
  const world: World = { ...bare, cards: new Map([...bare.cards].map(([id, c]) => [id, papered(c)])) };
  const all = [...machines(world, build)];
  const sound = all.filter((m) => judge(world, build, m).bad.length === 0);
  const tested = Array.from({ length: sound.length === 0 ? 0 : random.int(0, 4) }, (_, i): Build => {
    const full = pinnedTo(world, build, random.pick(sound));
    const cards = random.next() < 0.6 ? full.cards : full.cards.slice(random.int(0, full.cards.length - 1));
    const names = cards.flatMap((c) => [c.as ?? c.card, c.card]);
    const modes = (full.modes ?? []).map((m) => (m.cards ? { ...m, cards: m.cards.filter((c) => names.includes(c)) } : m));
    const outcome = random.next() < 0.8 ? "worked" : "failed";
    return { ...full, id: `tested-${i}`, cards, modes, result: { by: "Ada", date: "2019-05", outcome } };
  });
  const kinds = {
    bus: [world.bus],
    board: [world.board],
    firmware: [world.family],
    card: [...world.cards.values()],
    conflict: before.conflicts.values(),
  };
  const records = Object.entries({ ...kinds, build: tested }).flatMap(([kind, list]) =>
    [...list].map((record) => ({ kind, record, file: "" }) as unknown as Loaded),
  );
  const judged = sound.map((machine) => ({
    machine,
    verdict: verdictFor(withTests(world, build, machine, judge(world, build, machine), tested)),
    evidence: gradeOf(world, build, machine, tested),
  }));
  return { world, catalogue: gather(records), build, tested, judged };
}

/** The build with its first card alone, on in every mode. */
function onlyFirst(build: Build): Build {
  const modes = build.modes?.map(({ cards: _, ...mode }) => mode);
  return { ...build, cards: build.cards.slice(0, 1), ...(modes ? { modes } : {}) };
}

function compiled({ catalogue, build }: Told): Compiled {
  const asked = resolveBuild(catalogue, build);
  if (asked.kind !== "question") throw new Error(JSON.stringify(asked));
  return compile(asked.question);
}

describe("kinds of combination", () => {
  it(`are counted as the twin counts them, in ${worlds} random worlds`, () => {
    const seen: Record<string, number> = {};
    for (let seed = first; seed < first + worlds; seed++) {
      const told = withBench(seed);
      if (!told) continue;
      const question = compiled(told);
      const { kinds, count, hanging } = countsOf(question);
      expect([count, hanging], `seed ${seed}`).toEqual(
        [false, true].map((open) => String(told.judged.filter((j) => (j.verdict === "unknown") === open).length)),
      );
      if (told.judged.some((j) => j.evidence === "documented" || j.evidence === "reported")) seen.papers = (seen.papers ?? 0) + 1;
      for (const verdict of workables)
        for (const [g, evidence] of grades.entries()) {
          const want = told.judged.filter((j) => j.verdict === verdict && grades.indexOf(j.evidence) <= g);
          const got = kinds.find((k) => k.verdict === verdict && k.evidence === evidence)!;
          expect([got.count, got.exact], `seed ${seed}: ${verdict}, ${evidence}`).toEqual([String(want.length), true]);
          if (want.length > 0 && want.length < told.judged.length)
            seen[`${verdict} ${evidence}`] = (seen[`${verdict} ${evidence}`] ?? 0) + 1;
          if (want.length === 0 || g === 3) continue;
          const ways = waysOf(question, { verdict, evidence }, 4);
          expect(ways.length, `seed ${seed}: ways of ${verdict}, ${evidence}`).toBeGreaterThan(0);
          for (const way of ways) {
            const machine = machineOf(told.world, told.build, way);
            const judgement = judge(told.world, told.build, machine);
            const withBenches = withTests(told.world, told.build, machine, judgement, told.tested);
            if (withBenches.open.length < judgement.open.length) seen.outweighed = (seen.outweighed ?? 0) + 1;
            expect(way.exactTest !== undefined && way.exactTest.notWritten.length > 0, `seed ${seed}`).toBe(
              withBenches !== judgement && judgement.open.length > 0,
            );
            expect(verdictFor(withBenches), `seed ${seed}`).toBe(verdict);
            expect(grades.indexOf(gradeOf(told.world, told.build, machine, told.tested)), `seed ${seed}`).toBeLessThanOrEqual(g);
            expect(way.evidence, `seed ${seed}`).toBe(gradeOf(told.world, told.build, machine, told.tested));
          }
        }
    }
    if (process.env.SHOW) console.log(seen);
    expect(seen.papers ?? 0).toBeGreaterThan(worlds / 20);
    expect(seen.outweighed ?? 0).toBeGreaterThan(worlds / 20);
    // Every kind occurs, often enough to mean something.
    for (const verdict of workables)
      for (const evidence of grades) expect(seen[`${verdict} ${evidence}`] ?? 0, `${verdict} ${evidence}`).toBeGreaterThan(worlds / 100);
  });

  it("say at least so many, never more, when the budget ends first", () => {
    let cut = 0;
    for (let seed = first; seed < first + 60; seed++) {
      const told = withBench(seed);
      if (!told) continue;
      for (const k of countsOf(compiled(told), () => ({ steps: 3 })).kinds) {
        const g = grades.indexOf(k.evidence);
        const want = told.judged.filter((j) => j.verdict === k.verdict && grades.indexOf(j.evidence) <= g).length;
        if (k.exact) expect(k.count, `seed ${seed}: ${k.verdict}, ${k.evidence}`).toBe(String(want));
        else expect(Number(k.count), `seed ${seed}: ${k.verdict}, ${k.evidence}`).toBeLessThanOrEqual(want);
        if (!k.exact) cut += 1;
      }
    }
    expect(cut).toBeGreaterThan(20);
  });
});
