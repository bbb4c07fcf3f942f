// Planning and wiring together: a switch that is impossible for the combination that planning ranks first, and possible for a later one.
import { describe, expect, it } from "vitest";
import { combinationsToWire, findWays, plan as planBuild } from "../../src/planning/index.js";
import type { Build, Card } from "../../src/records/index.js";
import { type BestBuilt, type BestWiring, bestWiring, planWiring, wiringOptions } from "../../src/wiring/index.js";
import { card, firmware, type Records, smallClub, tested } from "../planning/support/small-club.js";
import { m27c010, m27c020, m27c040, pair, resistor, rotary, socket32 } from "./support/world.js";

const parts = [m27c010, m27c020, m27c040, rotary(4, 3), resistor];
const under = (...versions: readonly string[]): Card["needs"] => ({
  firmware: versions.map((v) => ({ family: "line", from: v, upTo: v })),
});
const enable: Card["enable"] = { ...pair(true), releases: ["io", "firmware"] };
const settings = undefined;

/** One card on in each of two ways; the second wants V3. */
const cards = [card("a", { enable, settings, needs: under("V1", "V2") }), card("b", { enable, settings, needs: under("V3") })];

const two: Build = {
  id: "two",
  name: "Two",
  board: "board",
  cards: [{ card: "a" }, { card: "b" }],
  modes: [
    { id: "one", cards: ["a"] },
    { id: "other", cards: ["b"] },
  ],
  stands: { revision: "C", firmware: "V1", cards: [] },
};

const clubOf = (records: Records) => smallClub({ cards, parts, ...records, board: { firmware_sockets: [socket32], ...records.board } });

function asked(records: Records, build: Build = two) {
  const catalogue = clubOf(records);
  const answer = planBuild(catalogue, build);
  if (answer.kind !== "answer") throw new Error(answer.faults[0]!.says);
  const options = wiringOptions(build, { tables: false });
  const first = planWiring(catalogue, answer.combinations[0]!, options);
  const best = bestWiring(catalogue, [{ rounds: combinationsToWire(catalogue, build), told: answer.combinations, options }]);
  return { first, best, ranked: answer.combinations };
}

function found(best: BestWiring | undefined): BestBuilt {
  if (best?.kind !== "best") throw new Error(JSON.stringify(best));
  return best;
}

const versions = ({ combination }: BestBuilt) => combination.modes.map((m) => m.firmware).join(" ");

describe("where the first ranked combination cannot be wired", () => {
  it("for its firmware, whose image nobody knows the size of, another version is taken", () => {
    const unknown = firmware.versions.map((v) => (v.id === "V1" ? { ...v, image: { size: "unknown", crc32: "unknown" } as const } : v));
    const { first, best, ranked } = asked({ firmware: { versions: unknown } });
    expect(first.kind === "refused" && first.reasons[0]!.code).toBe("image-unknown");
    expect(ranked[0]!.modes[0]!.firmware).toBe("V1");
    expect(versions(found(best))).toBe("V2 V3");
    expect(found(best)).toMatchObject({ proven: true, wiring: { kind: "wiring" }, figures: { cards: 2, versions: 1 } });
    expect(found(best).refused).toBeGreaterThan(0);
  });

  it("for its board revision, whose socket no device fits, another revision is taken", () => {
    const sockets = [
      { ...socket32, revisions: ["C"], wired_for: "27C999" },
      { ...socket32, revisions: ["D1"] },
    ];
    const { first, best } = asked({ board: { firmware_sockets: sockets } });
    expect(first.kind === "refused" && first.reasons[0]!.code).toBe("no-device");
    expect(found(best).combination.revision).toBe("D1");
    expect(found(best).figures.changes).toBeGreaterThan(0);
  });

  it("for a division that switches a card off by software, another division is taken", () => {
    const soft: Card["enable"] = { by: "setting", setting: "S", off: "off", releases: ["io", "firmware"] };
    const software: Card["settings"] = [{ id: "S", name: "on", by: "software", positions: [{ id: "on" }, { id: "off" }] }];
    // Any two of the three fit under one version, all three under none: each division leaves another card out of one of its ways.
    const three = [
      card("a", { enable: soft, settings: software, needs: under("V1", "V2") }),
      card("b", { enable, settings, needs: under("V2", "V3") }),
      card("c", { enable, settings, needs: under("V1", "V3") }),
    ];
    const build: Build = { id: "q", name: "Q", board: "board", cards: [{ card: "a" }, { card: "b" }, { card: "c" }] };
    const catalogue = clubOf({ cards: three });
    const ways = findWays(catalogue, { ...build, wishes: { always: [] } });
    if (ways?.kind !== "ways") throw new Error("no ways");
    const toBuild = ways.divisions.map((d) => ({
      rounds: combinationsToWire(catalogue, d.build),
      options: wiringOptions(d.build, { tables: false }),
    }));
    const wired = ways.divisions.map((d, at) => planWiring(catalogue, d.combination!, toBuild[at]!.options).kind);
    expect(new Set(wired)).toEqual(new Set(["refused", "wiring"]));
    const best = found(bestWiring(catalogue, toBuild));
    expect(wired[best.of]).toBe("wiring");
    expect(ways.divisions[best.of]!.switched).not.toContain("a");
  });
});

describe("of combinations that can all be wired", () => {
  const free = [card("a", { enable, settings }), card("b", { enable, settings, needs: under("V3") })];

  it("the one that changes least between its ways is best, and the next says what it saves and costs", () => {
    const { best, ranked } = asked({ cards: free });
    // Planning keeps the firmware that is in the machine where it can; a switch has nothing to do with the firmware where it is one.
    expect(ranked[0]!.modes.map((m) => m.firmware)).toEqual(["V1", "V3"]);
    expect(versions(found(best))).toBe("V3 V3");
    expect(found(best).figures).toMatchObject({ cards: 2, versions: 0 });
    const { runnerUp, proven } = found(best);
    expect(proven).toBe(true);
    expect(runnerUp!.saves).toEqual([{ what: "changes", by: 1 }]);
    expect(runnerUp!.costs.map((c) => c.what)).toEqual(["versions", "toGet", "poles", "wires"]);
  });

  it("none is needed where every way may run the same with the same cards on", () => {
    const modes = [
      { id: "one", cards: ["a"] },
      { id: "other", cards: ["a"] },
    ];
    const { best } = asked({ cards: free }, { ...two, modes });
    expect(found(best)).toMatchObject({ wiring: { kind: "not-needed" }, figures: { cards: 0, versions: 0 } });
  });

  it("a better proven one comes before one that is less work, where both change as much", () => {
    const modes = [
      { id: "one", firmware: "V1", cards: ["a"] },
      { id: "other", firmware: "V3", cards: ["b"] },
    ];
    const at = {
      cards: [
        { card: "a", slot: "S1" },
        { card: "b", slot: "S2" },
      ].map((c) => ({ ...c, settings: {} })),
    };
    const test = tested("was", [], { ...at, revision: "D1", modes });
    const { best } = asked({ cards, builds: [test] });
    expect(found(best)).toMatchObject({ figures: { evidence: "bench" }, combination: { revision: "D1" } });
  });
});

describe("where none can be wired", () => {
  it("it says why, and how many were tried", () => {
    const { best } = asked({ parts: [m27c010, m27c020, resistor] });
    expect(best).toMatchObject({ kind: "refused", proven: true });
    expect(best?.kind === "refused" && best.reasons[0]!.code).toBe("no-switch");
    expect(best?.refused).toBeGreaterThan(3);
  });

  it("there is nothing to say where nothing works", () => {
    const never = [card("a", { needs: under("V9") }), card("b", { enable, settings })];
    expect(bestWiring(clubOf({ cards: never }), [{ rounds: combinationsToWire(clubOf({ cards: never }), two) }])).toBeUndefined();
  });
});
