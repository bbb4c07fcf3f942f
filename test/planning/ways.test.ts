// The fewest ways against brute force: how many, which divisions, and what the proof claims, on random small machines.
import { describe, expect, it } from "vitest";
import { findWays, type Ways, type Wish } from "../../src/planning/index.js";
import type { Build, Card, Wishes } from "../../src/records/index.js";
import { Random } from "../support/solver/random.js";
import { size } from "./support/twin.js";
import { dividedBy, fullest, runsOf, type Wanted } from "./support/ways-reference.js";
import { randomSetup, type Setup } from "./support/world.js";

const worlds = process.env.LONG ? 4_000 : 120;
const first = Number(process.env.SEED ?? 1);
/** Machines times sets of cards that are judged for one world at most. */
const most = 6_000;

/** A random world whose cards fit, can mostly be switched off, and mostly fight over ports and firmware, and wishes over them. */
function setupOf(seed: number): Setup & { readonly build: Build } {
  const setup = randomSetup(seed);
  const random = new Random(seed + 77_777);
  const versions = setup.world.family.versions.map((v) => v.id);
  const everything = ["io", "memory", "interrupts", "dma", "firmware", "features", "memory-size", "cards", "clock", "chain"] as const;
  for (const card of setup.world.cards.values() as Iterable<Card & { settings?: unknown; claims?: unknown; enable?: unknown }>) {
    if (random.next() < 0.15) continue;
    if (random.next() < 0.5) delete card.settings;
    Object.assign(card, { room: {}, edge: "short", bus: "bus", power: [], impossible: undefined });
    if (random.next() < 0.6) Object.assign(card, { claims: [{ io: [{ base: random.int(50, 53), size: random.int(1, 2) }] }] });
    const from = random.next() < 0.5 ? { from: random.pick(versions) } : { upTo: random.pick(versions) };
    Object.assign(card, { needs: random.next() < 0.6 ? { firmware: [{ family: "fw", ...from }] } : undefined });
    if (random.next() < 0.9)
      Object.assign(card, { enable: { ...(card.enable ?? {}), by: "contacts", releases: random.some(everything, 0.9).concat(["io"]) } });
  }
  const names = setup.build.cards.map((c) => c.as ?? c.card);
  const some = (chance: number) => random.next() < chance;
  const together = Array.from({ length: random.pick([0, 0, 1, 2]) }, () => ({
    ...(some(0.7) ? { cards: random.some(names, 0.6) } : {}),
    ...(some(0.5) ? { firmware: random.pick(versions) } : {}),
  }));
  const wishes: Wishes = {
    ...(together.length > 0 ? { together } : {}),
    ...(some(0.2) ? { always: [random.pick(names)] } : {}),
    ...(some(0.2) ? { alone: [random.pick(names)] } : {}),
    ...(some(0.3) ? { ways_at_most: random.int(1, 2) } : {}),
  };
  // In most worlds nothing but ports, firmware, conflicts and jumpers stands in the way, so that dividing helps.
  const { board } = setup.world;
  if (random.next() < 0.85) {
    Object.assign(board, { rails: [{ rail: "+5", limit_A: 99 }], total_W: undefined, chain: undefined, clock_MHz: 4, memory: undefined });
    Object.assign(board, { slots: board.slots.map(({ id, position }) => ({ id, position, edge: "long" })), firmware_sockets: [] });
    for (const conflict of setup.world.conflicts) if (!conflict.when.cards) Object.assign(conflict, { status: "disproved" });
    for (const version of setup.world.family.versions) Object.assign(version, { memory_at_least: undefined, boards: undefined });
  }
  // What the cards lost is pinned no more.
  const cards = setup.build.cards.map(({ settings, ...c }) =>
    setup.world.cards.get(c.card)?.settings && settings ? { ...c, settings } : c,
  );
  const { modes: _, ...rest } = setup.build;
  const build = { ...rest, cards, memory: board.memory ? rest.memory : undefined };
  return { ...setup, build: Object.keys(wishes).length > 0 ? { ...build, wishes } : build };
}

function wantedOf(build: Build): Wanted {
  const places = (names: readonly string[] = []) =>
    build.cards.flatMap((c, at) =>
      names.some((n) => (build.cards.some((o) => (o.as ?? o.card) === n) ? (c.as ?? c.card) === n : c.card === n)) ? [at] : [],
    );
  return {
    cards: build.cards.map((_, at) => at),
    together: (build.wishes?.together ?? []).map((w) => ({ ...w, cards: places(w.cards) })),
    always: places(build.wishes?.always),
    alone: places(build.wishes?.alone),
  };
}

const keyOf = (build: Build, ways: readonly { readonly on: readonly string[] }[]) =>
  ways
    .map(({ on }) => build.cards.reduce((bits, c, at) => (on.includes(c.as ?? c.card) ? bits | (1 << at) : bits), 0))
    .sort((a, b) => a - b)
    .join(",");

function expected({ world, build }: Setup, enough: number) {
  const wanted = wantedOf(build);
  let perhaps: number | undefined;
  for (let count = 1; count <= enough; count++) {
    const divided = dividedBy(world, build, wanted, runsOf(world, build, count), count);
    if (divided.size > 0) perhaps ??= count;
    const at = (level: number) => fullest([...divided].filter(([, l]) => l <= level).map(([key]) => key));
    if (at(8).length > 0) return { outcome: "found", fewest: count, perhaps, divisions: [...new Set([...at(1), ...at(8)])].sort() };
  }
  if (perhaps === undefined) return { outcome: "none" };
  const divided = dividedBy(world, build, wanted, runsOf(world, build, perhaps), perhaps);
  return { outcome: "perhaps", fewest: perhaps, perhaps, divisions: fullest([...divided.keys()]).sort() };
}

/** The wishes a proof names, and no others: what is only ever granted is left out, what every way keeps stays. */
function named(build: Build, wishes: readonly Wish[], ids: readonly string[]): Wanted {
  const place = (as: string) => build.cards.findIndex((c) => (c.as ?? c.card) === as);
  const of = <K extends Wish["kind"]>(kind: K) =>
    wishes.filter((w): w is Extract<Wish, { kind: K }> => w.kind === kind && ids.includes(w.id));
  return {
    cards: of("card").map((w) => place(w.card)),
    together: of("together").map((w) => ({ cards: w.cards.map(place), ...(w.firmware === undefined ? {} : { firmware: w.firmware }) })),
    always: of("always").map((w) => place(w.card)),
    alone: of("alone").map((w) => place(w.card)),
  };
}

/** Nothing that is claimed not to be granted is, in any machine. */
function holdsGood({ world, build }: Setup, { wishes, fewer, against, fewest = 0 }: Ways): boolean {
  const claims = [
    ...(against ? [against] : []),
    ...(fewer?.kind === "apart" ? fewer.pairs : []),
    ...(fewer?.kind === "searched" ? [fewer.against] : []),
  ];
  if (fewer?.kind === "apart" && (fewer.wishes.length !== fewest || fewer.pairs.length !== (fewest * (fewest - 1)) / 2)) return false;
  return claims.every((c) => dividedBy(world, build, named(build, wishes, c.wishes), runsOf(world, build, c.ways), c.ways).size === 0);
}

function waysOf({ catalogue, build }: Setup): Ways {
  const ways = findWays(catalogue, build, { most: 40 });
  if (ways?.kind !== "ways") throw new Error(JSON.stringify(ways));
  return ways;
}

describe("the fewest ways", () => {
  it(`are those of brute force in ${worlds} random worlds`, () => {
    const seen: Record<string, number> = {};
    const saw = (what: string) => {
      seen[what] = (seen[what] ?? 0) + 1;
    };
    let tried = 0;
    for (let seed = first; tried < worlds; seed++) {
      const setup = setupOf(seed);
      const { world, build } = setup;
      // With one card, or too few slots, there is nothing to divide.
      if (build.cards.length < 2 || world.board.slots.length < build.cards.length) continue;
      if (size(world, { ...build, modes: [{ id: "m" }] }) * 2 ** build.cards.length > most) continue;
      tried++;
      const got = waysOf(setup);
      const granted = got.wishes.filter((w) => w.kind === "card" || w.kind === "together").length;
      const want = expected(setup, Math.max(1, granted));
      const where = `seed ${seed}`;
      expect([got.outcome, got.fewest], where).toEqual([want.outcome, want.fewest]);
      saw(`${got.outcome} ${got.fewest ?? ""}`);
      expect(holdsGood(setup, got), where).toBe(true);
      if (got.outcome !== "none") {
        expect(got.divisionsComplete, where).toBe(true);
        expect(got.divisions.map((d) => keyOf(build, d.ways)).sort(), where).toEqual(want.divisions);
        expect(got.fewer?.kind === "not-proven", where).toBe(want.perhaps !== want.fewest);
        saw(`proof ${got.fewer?.kind}`);
        if (got.divisions.length > 1) saw("several divisions");
      }
      expect(got.tooMany, where).toBe(got.fewest !== undefined && got.fewest > (build.wishes?.ways_at_most ?? 99));
    }
    if (process.env.SHOW) console.log(seen);
    for (const what of [
      "found 1",
      "found 2",
      "perhaps 1",
      "none ",
      "proof apart",
      "proof one-way",
      "proof not-proven",
      "several divisions",
    ])
      expect(seen[what] ?? 0, `${what}: ${JSON.stringify(seen)}`).toBeGreaterThan(0);
  });
});
