// The change-over by hand: fewest ways and fewest things to do against brute force, and the order of the steps in cases made by hand.
import { describe, expect, it } from "vitest";
import type { Catalogue } from "../../src/catalogue/index.js";
import { resolveBuild } from "../../src/machine/index.js";
import { type ChangeOver, type ChangeOverResult, changeOver } from "../../src/planning/index.js";
import type { Build, Card } from "../../src/records/index.js";
import { between, grantedBy, keeps, type State, sameThings, statesOf } from "./support/hand-reference.js";
import { card, smallClub } from "./support/small-club.js";
import { setupOf, wantedOf } from "./support/ways-world.js";
import type { Setup } from "./support/world.js";

const worlds = process.env.LONG ? 1_500 : 60;
const first = Number(process.env.SEED ?? 1);

function handOf(catalogue: Catalogue, build: Build): ChangeOverResult {
  const request = resolveBuild(catalogue, build);
  if (request.kind !== "question") throw new Error(JSON.stringify(request));
  return changeOver(request.question);
}

function foundBy(catalogue: Catalogue, build: Build): ChangeOver {
  const hand = handOf(catalogue, build);
  if (hand.kind !== "change-over") throw new Error(hand.kind);
  return hand;
}

/** One way or two that do, and how many things lie between two at least; undefined when more ways are needed. */
function expected(states: readonly State[], { build }: Setup): { readonly ways: number; readonly things: number } | undefined {
  const wanted = wantedOf(build);
  const fit = states.filter((s) => keeps(s, wanted));
  for (const sure of [1, 8]) if (fit.some((s) => s.level <= sure && grantedBy([s], wanted))) return { ways: 1, things: 0 };
  const least = (most: number) => {
    const some = fit.filter((s) => s.level <= most);
    return some.reduce(
      (best, a, i) =>
        some
          .slice(i + 1)
          .reduce((b, other) => (sameThings(a, other) && grantedBy([a, other], wanted) ? Math.min(b, between(a, other)) : b), best),
      Number.POSITIVE_INFINITY,
    );
  };
  for (const sure of [1, 8]) if (Number.isFinite(least(sure))) return { ways: 2, things: least(sure) };
  return undefined;
}

describe("the change-over by hand", () => {
  it(`has the fewest ways and the fewest things to do in ${worlds} random worlds`, () => {
    const seen: Record<string, number> = {};
    let tried = 0;
    for (let seed = first; tried < worlds; seed++) {
      const setup = setupOf(seed);
      const { world, catalogue, build } = setup;
      if (build.cards.length < 2 || world.board.slots.length > 3) continue;
      const states = statesOf(world, build, 900);
      if (!states) continue;
      tried++;
      const hand = handOf(catalogue, build);
      const want = expected(states, setup);
      const got = hand.kind === "change-over" && hand.ways.every((w) => w.verdict !== "unknown") && hand.ways.length < 3 ? hand : undefined;
      expect(got?.ways.length, `seed ${seed}`).toBe(want?.ways);
      const kind = got ? `${got.ways.length} ways` : hand.kind;
      seen[kind] = (seen[kind] ?? 0) + 1;
      if (!got || !want) continue;
      expect(got.stepsProven, `seed ${seed}`).toBe(true);
      for (const { steps } of got.changes) expect(steps.length - 2, `seed ${seed}`).toBe(want.things);
    }
    if (process.env.SHOW) console.log(seen);
    for (const kind of ["1 ways", "2 ways", "none"]) expect(seen[kind] ?? 0, JSON.stringify(seen)).toBeGreaterThan(1);
  });
});

describe("the steps", () => {
  const port = (base: number) => [{ io: [{ base, size: 4 }] }];
  const needs = (only: string): NonNullable<Card["needs"]> => ({ firmware: [{ family: "line", only: [only] }] });
  const cards = (...names: string[]) => names.map((name) => ({ card: name }));
  const build = (names: Build["cards"], more: Partial<Build> = {}): Build => ({
    id: "q",
    name: "Q",
    board: "board",
    cards: names,
    ...more,
  });
  const stepsOf = (hand: ChangeOver, from: string, to: string) => hand.changes.find((c) => c.from === from && c.to === to)?.steps;

  it("take out a card that nothing can switch off, exchange the firmware, and put power on last", () => {
    const hand = foundBy(
      smallClub({ cards: [card("a", { needs: needs("V1"), settings: [] }), card("b")] }),
      build(cards("a", "b"), { wishes: { together: [{ cards: ["b"], firmware: "V2" }] } }),
    );
    expect(hand.ways.map((w) => [w.firmware, w.on, w.out])).toEqual([
      ["V1", expect.arrayContaining(["a"]), expect.not.arrayContaining(["a"])],
      ["V2", ["b"], ["a"]],
    ]);
    const slot = hand.ways[0]?.build.cards.find((c) => c.card === "a")?.slot;
    expect(stepsOf(hand, "way-1", "way-2")).toEqual([
      { kind: "power-off" },
      { kind: "take-out", card: "a", slot },
      { kind: "exchange-firmware", from: "V1", to: "V2" },
      { kind: "power-on", firmware: "V2" },
    ]);
    expect(stepsOf(hand, "way-2", "way-1")?.map((s) => s.kind)).toEqual(["power-off", "put-in", "exchange-firmware", "power-on"]);
    expect(hand).toMatchObject({ fewestProven: true, stepsProven: true });
  });

  it("set a jumper rather than take a card out, when that is as much work", () => {
    const at = (id: string, base: number) => ({ id, io: [{ base, size: 4 }] });
    const jumper: Card["settings"] = [{ id: "J2", name: "n", by: "jumper", positions: [at("300", 1), at("320", 8)] }];
    // c answers at 300 and d at 320, and both are only needed alone: b must get out of the way of each.
    const catalogue = smallClub({
      cards: [card("b", { settings: jumper }), card("c", { claims: port(1), settings: [] }), card("d", { claims: port(8), settings: [] })],
    });
    const hand = foundBy(catalogue, build(cards("b", "c", "d"), { wishes: { always: ["b"] } }));
    expect(hand.ways.length).toBe(2);
    const kinds = stepsOf(hand, "way-1", "way-2")?.map((s) => s.kind);
    expect(kinds?.sort()).toEqual(["power-off", "power-on", "put-in", "set", "take-out"]);
    expect(stepsOf(hand, "way-1", "way-2")).toContainEqual({
      kind: "set",
      card: "b",
      setting: "J2",
      from: expect.any(String),
      to: expect.any(String),
    });
  });

  it("open or close the contact of a card in its own sense, and leave software its own", () => {
    const enable = (more: Partial<NonNullable<Card["enable"]>>): Card["enable"] => ({
      by: "contacts",
      releases: ["io", "firmware"],
      ...more,
    });
    const points = [
      { id: "J9-1", role: "a" as const },
      { id: "J9-2", role: "b" as const },
      { id: "G", role: "ground" as const },
    ];
    const made = (enabled: Card["enable"], more: Partial<Card> = {}) => {
      const club = smallClub({
        cards: [
          card("a", { needs: needs("V1"), settings: [], enable: enabled, ...more }),
          card("b", { needs: needs("V2"), settings: [], enable: enable({ points: [] }) }),
        ],
      });
      return stepsOf(foundBy(club, build(cards("a", "b"))), "way-1", "way-2");
    };
    const off = (contact: object | undefined) => ({ kind: "switch-off", card: "a", ...(contact ? { contact } : {}) });
    expect(made(enable({ sense: "closed-enables", points }))).toContainEqual(off({ points: ["J9-1", "J9-2"], made: "open" }));
    expect(made(enable({ sense: "open-enables", points }))).toContainEqual(off({ points: ["J9-1", "J9-2"], made: "closed" }));
    expect(made(enable({ sense: "change-over", points }))).toContainEqual(off({ points: ["J9-1", "J9-2"], made: "to-off" }));
    const setting: Card["settings"] = [{ id: "EN", name: "n", by: "software", positions: [{ id: "on" }, { id: "off" }] }];
    const bySoftware = made({ by: "setting", setting: "EN", off: "off", releases: ["io", "firmware"] }, { settings: setting });
    expect(bySoftware?.at(-1)).toEqual(off(undefined));
  });

  it("put no card into a slot that another still holds", () => {
    // In way 1 only S1 and S2 will do, and each card must have the other's slot in way 2.
    const only = (slots: string[]) => ({ cards: [{ card: "a", slots }] });
    const conflict = (id: string, version: string, which: string, slots: string[]) => ({
      id,
      name: id,
      class: "timing" as const,
      when: { firmware: [{ family: "line", only: [version] }], cards: [{ ...only(slots).cards[0]!, card: which }] },
      effect: "blocks" as const,
      symptoms: ["s"],
      cause: "c",
      status: "confirmed" as const,
      evidence: [{ grade: "bench" as const, says: "e" }],
    });
    const elsewhere = (slot: string) => ["S1", "S2", "S3", "S4"].filter((s) => s !== slot);
    const conflicts = [
      conflict("k1", "V1", "a", elsewhere("S1")),
      conflict("k2", "V1", "b", elsewhere("S2")),
      conflict("k3", "V2", "a", elsewhere("S2")),
      conflict("k4", "V2", "b", elsewhere("S1")),
    ];
    const catalogue = smallClub({ cards: [card("a", { settings: [] }), card("b", { settings: [] })], conflicts });
    const together = ["V1", "V2"].map((firmware) => ({ cards: ["a", "b"], firmware }));
    const hand = foundBy(catalogue, build(cards("a", "b"), { wishes: { together } }));
    const steps = stepsOf(hand, "way-1", "way-2");
    expect(steps?.map((s) => s.kind)).toEqual(["power-off", "take-out", "move", "put-in", "exchange-firmware", "power-on"]);
  });

  it("are none where one way is enough, and there is no plan where nothing helps", () => {
    expect(foundBy(smallClub(), build(cards("a", "b"))).changes).toEqual([]);
    expect(handOf(smallClub({ cards: [card("a", { bus: "other" })] }), build(cards("a")))).toEqual({ kind: "none" });
  });
});
