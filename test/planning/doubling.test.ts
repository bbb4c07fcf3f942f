// Two copies of one card are two cards: a machine with copies answers as one in which each copy has an id and an equal record of its own.
import { describe, expect, it } from "vitest";
import { cardsOn, copyName, gather } from "../../src/catalogue/index.js";
import { fillBuild } from "../../src/machine/index.js";
import { type Answer, plan } from "../../src/planning/index.js";
import type { Build, BuildCard, Card, Conflict, Loaded } from "../../src/records/index.js";
import { Random } from "../support/solver/random.js";
import { loadedOf } from "./support/loaded.js";
import { randomSetup } from "./support/world.js";

const worlds = process.env.LONG ? 10_000 : 1_000;
const first = Number(process.env.SEED ?? 1);

interface Club {
  readonly loaded: readonly Loaded[];
  readonly build: Build;
}

const load = (kind: Loaded["kind"], record: unknown) => ({ kind, record, file: "" }) as Loaded;

/** A random machine that has a card twice at least, sometimes with a name for every copy, and with some of its ways tested. */
function withCopies(seed: number): Club | undefined {
  const { catalogue, build: drawn } = randomSetup(seed);
  const random = new Random(seed + 5);
  const build = random.next() < 0.4 ? oneInEachMode(drawn) : drawn;
  const twice = build.cards.find((c) => c.as !== undefined)?.card;
  if (twice === undefined) return undefined;
  const named = random.next() < 0.5 ? allNamed(build, twice, random) : build;
  const bare = plan(catalogue, named, { brief: true, most: 2 });
  const ways = bare.kind === "answer" && random.next() < 0.5 ? bare.combinations : [];
  const tested = ways.map((c, i): Build => {
    const full = fillBuild(named, c);
    const cards = random.next() < 0.5 ? full.cards.toReversed() : full.cards;
    return {
      ...full,
      id: `tested-${i}`,
      cards,
      result: { by: "Ada", date: "2019-05", outcome: random.next() < 0.8 ? "worked" : "failed" },
    };
  });
  return { loaded: [...loadedOf(catalogue), ...tested.map((t) => load("build", t))], build: named };
}

/** The machine's first card twice and nothing else, each copy on in a mode of its own. */
function oneInEachMode(build: Build): Build {
  const cards = build.cards.slice(0, 1).flatMap(({ card }): BuildCard[] => [{ card }, { card, as: "second" }]);
  const modes = cards.map((c, i) => ({ id: `m${i}`, cards: [copyName(c)] }));
  return { ...build, cards, modes: [...modes, { id: "off", cards: [] }] };
}

/** Every copy of the card with a name of its own; where a mode has all of them on, it may say so by the card's id. */
function allNamed(build: Build, card: string, random: Random): Build {
  const as = (c: BuildCard) => (c.card === card && c.as === undefined ? `${card}-left` : copyName(c));
  const copies = build.cards.filter((c) => c.card === card).length;
  const modes = build.modes?.map((mode) => {
    if (!mode.cards) return mode;
    const on = cardsOn(build.cards, mode);
    const whole = on.filter((c) => c.card === card).length === copies && random.next() < 0.7;
    const names = on.filter((c) => !whole || c.card !== card).map(as);
    return { ...mode, cards: whole ? [...names, card] : names };
  });
  return { ...build, cards: build.cards.map((c) => ({ ...c, as: as(c) })), ...(modes ? { modes } : {}) };
}

/** The same club in which each copy is a card of its own, with its own record, and whatever named the card names each of them. */
function withRecords({ loaded, build }: Club): Club {
  const ids = new Map<string, string[]>();
  const own = new Map<string, string>();
  for (const c of build.cards) {
    const known = ids.get(c.card) ?? [];
    const id = known.length === 0 ? c.card : `${c.card}-record-${known.length + 1}`;
    ids.set(c.card, [...known, id]);
    own.set(copyName(c), id);
  }
  const idsOf = (card: string) => ids.get(card) ?? [card];
  const records = loaded.flatMap((l): Loaded[] => {
    if (l.kind === "card") return idsOf(l.record.id).map((id) => load("card", cardWith(l.record as Card, id, idsOf)));
    if (l.kind === "conflict") return eachOf(l.record as Conflict, idsOf).map((record) => load("conflict", record));
    return l.kind === "build" ? testsOf(l.record as Build, idsOf).map((record) => load("build", record)) : [l];
  });
  return { loaded: records, build: withIds(build, (c) => own.get(copyName(c)) ?? c.card) };
}

function cardWith(card: Card, id: string, idsOf: (card: string) => string[]): Card {
  const needs = card.needs?.cards?.map((n) => ({ ...n, any_of: n.any_of.flatMap(idsOf) }));
  return { ...card, id, ...(needs ? { needs: { ...card.needs, cards: needs } } : {}) };
}

/** Names stay; each copy gets an id, and what is on is said copy by copy. */
function withIds(build: Build, idOf: (copy: BuildCard, at: number) => string): Build {
  const modes = build.modes?.map((m) => (m.cards ? { ...m, cards: cardsOn(build.cards, m).map(copyName) } : m));
  return { ...build, cards: build.cards.map((c, at) => ({ ...c, as: copyName(c), card: idOf(c, at) })), ...(modes ? { modes } : {}) };
}

/** The conflict once for each way to say which of the equal records it is about. */
function eachOf(conflict: Conflict, idsOf: (card: string) => string[]): Conflict[] {
  const cards = conflict.when.cards ?? [];
  const ways = cards.reduce<string[][]>((all, c) => all.flatMap((head) => idsOf(c.card).map((id) => [...head, id])), [[]]);
  return ways.map((way, n) => ({
    ...conflict,
    id: `${conflict.id}-${n}`,
    when: { ...conflict.when, ...(conflict.when.cards ? { cards: cards.map((c, i) => ({ ...c, card: way[i] ?? c.card })) } : {}) },
  }));
}

/** The test once for each way to say which of the equal records each of its copies was. */
function testsOf(build: Build, idsOf: (card: string) => string[]): Build[] {
  const ways = build.cards.reduce<string[][]>(
    (all, c) =>
      all.flatMap((head) =>
        idsOf(c.card)
          .filter((id) => !head.includes(id))
          .map((id) => [...head, id]),
      ),
    [[]],
  );
  return ways.map((way, n) => ({ ...withIds(build, (c, at) => way[at] ?? c.card), id: `${build.id}-${n}` }));
}

function answer({ loaded, build }: Club): Answer {
  const a = plan(gather(loaded), build);
  if (a.kind !== "answer") throw new Error(a.faults[0]?.says);
  return a;
}

/** What an answer says, apart from what the cards are called. */
const plain = (a: Answer) => ({
  verdict: a.verdict,
  evidence: a.combinations[0]?.evidence,
  counts: [a.count, a.exact, a.hanging, a.hangingExact],
  possible: a.possible.map((p) => [p.id, p.chosen, p.values.map((v) => [v.value, v.verdict])]),
  reasons: a.reasons
    .map((r) =>
      r.choices
        .map((c) => c.id)
        .sort()
        .join(),
    )
    .sort(),
  repairs: a.repairs
    .map((r) =>
      [
        r.gives
          .map((g) => g.id)
          .sort()
          .join(),
        r.verdict,
        r.count,
        modesIn(r.build as Build | undefined),
      ].join(),
    )
    .sort(),
  complete: [a.reasonsComplete, a.repairsComplete],
});
const modesIn = (build: Build | undefined) =>
  JSON.stringify(build?.modes?.map((m) => [m.id, cardsOn(build.cards, m).map(copyName).sort()]) ?? null);

describe("two copies", () => {
  it(`are two cards of equal records, in ${worlds} random worlds`, () => {
    const seen: Record<string, number> = {};
    for (let seed = first; seed < first + worlds; seed++) {
      const club = withCopies(seed);
      if (!club) continue;
      const before = answer(club);
      expect(plain(answer(withRecords(club))), `seed ${seed}`).toEqual(plain(before));
      for (const key of ["any", before.verdict, before.combinations[0]?.evidence ?? "none", club.build.cards[0]?.as ? "named" : "unnamed"])
        seen[key] = (seen[key] ?? 0) + 1;
      if (club.build.modes?.some((m) => m.cards?.length === 0)) seen.off = (seen.off ?? 0) + 1;
    }
    if (process.env.SHOW) console.log(seen);
    const least = worlds / 300;
    for (const key of ["workable", "conditional", "unknown", "ruled-out", "bench", "inferred", "named", "unnamed", "off"])
      expect(seen[key] ?? 0, key).toBeGreaterThan(least);
  });
});
