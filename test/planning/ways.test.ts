// The fewest ways against brute force: how many, which divisions, and what the proof claims, on random small machines.
import { describe, expect, it } from "vitest";
import { findWays, type Ways, type Wish } from "../../src/planning/index.js";
import type { Build } from "../../src/records/index.js";
import { size } from "./support/twin.js";
import { dividedBy, fullest, runsOf, type Wanted } from "./support/ways-reference.js";
import { setupOf, wantedOf } from "./support/ways-world.js";
import type { Setup } from "./support/world.js";

const worlds = process.env.LONG ? 4_000 : 120;
const first = Number(process.env.SEED ?? 1);
/** Machines times sets of cards that are judged for one world at most. */
const most = 6_000;

const keyOf = (build: Build, ways: readonly { readonly on: readonly string[] }[]) =>
  ways
    .map(({ on }) => build.cards.reduce((bits, c, at) => (on.includes(c.as ?? c.card) ? bits | (1 << at) : bits), 0))
    .sort((a, b) => a - b)
    .join(",");

function expected({ world, build }: Setup, enough: number) {
  const wanted = wantedOf(build);
  let perhaps: number | undefined;
  for (let count = 1; count <= enough; count++) {
    const divided = dividedBy(build, wanted, runsOf(world, build, count), count);
    if (divided.size > 0) perhaps ??= count;
    const at = (level: number) => fullest([...divided].filter(([, l]) => l <= level).map(([key]) => key));
    if (at(8).length > 0) return { outcome: "found", fewest: count, perhaps, divisions: [...new Set([...at(1), ...at(8)])].sort() };
  }
  if (perhaps === undefined) return { outcome: "none" };
  const divided = dividedBy(build, wanted, runsOf(world, build, perhaps), perhaps);
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
  return claims.every((c) => dividedBy(build, named(build, wishes, c.wishes), runsOf(world, build, c.ways), c.ways).size === 0);
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
      // One world in a hundred has these: the short run may miss them.
      ...(process.env.LONG ? ["proof not-proven", "several divisions"] : []),
    ])
      expect(seen[what] ?? 0, `${what}: ${JSON.stringify(seen)}`).toBeGreaterThan(0);
  });
});
