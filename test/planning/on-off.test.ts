// What is on in which way: each cell against the machine with that one card switched over, asked by itself.
import { describe, expect, it } from "vitest";
import { compile } from "../../src/encoding/index.js";
import { resolveBuild, withChoice } from "../../src/machine/index.js";
import { findWhyNot } from "../../src/planner/worker/why-not.js";
import { findOnOff, verdictOf } from "../../src/planning/index.js";
import type { Build, Mode } from "../../src/records/index.js";
import { demo } from "../support/demo.js";
import { Random } from "../support/solver/random.js";
import { setupOf } from "./support/ways-world.js";
import type { Setup } from "./support/world.js";

const catalogue = demo();
const question = (of: Setup["catalogue"], build: Build) => {
  const request = resolveBuild(of, build);
  if (request.kind !== "question") throw new Error(`cannot be asked: ${request.kind}`);
  return request.question;
};
const judged = (of: Setup["catalogue"], build: Build) => {
  const verdict = verdictOf(compile(question(of, build)));
  return verdict === "conditional" ? "workable" : verdict;
};
const [tracer, gannet, plover] = ["tallow-bus-tracer", "gannet-fixed-disk-controller", "plover-tape-interface"];
const three: Build = {
  id: "q",
  name: "Question",
  board: "skerry-16t",
  cards: [{ card: tracer }, { card: gannet }, { card: plover }],
  modes: [
    { id: "way-1", name: "Way 1", cards: [tracer] },
    { id: "way-2", name: "Way 2", cards: [gannet, plover] },
  ],
};

describe("a choice of what is on in a mode", () => {
  it("switches that one card, and names the cards that are on in the order of the build", () => {
    const on = (build: Build) => build.modes?.map((m) => m.cards);
    expect(on(withChoice(three, `on:way-1:${plover}`, "on"))).toEqual([
      [tracer, plover],
      [gannet, plover],
    ]);
    expect(on(withChoice(three, `on:way-2:${gannet}`, "off"))).toEqual([[tracer], [plover]]);
    const { modes: _, ...single } = three;
    expect(withChoice(single, `on:always:${tracer}`, "off").modes).toMatchObject([{ id: "always", cards: [gannet, plover] }]);
  });
});

describe("what is on in which way", () => {
  it("of the three demo cards: the tracer beside the disk is ruled out in either way, and why is told", () => {
    expect(findOnOff(question(catalogue, three)).map((c) => [c.mode, c.card, c.now, c.other])).toEqual([
      ["way-1", tracer, "on", "workable"],
      ["way-1", gannet, "off", "ruled-out"],
      ["way-1", plover, "off", "ruled-out"],
      ["way-2", tracer, "off", "ruled-out"],
      ["way-2", gannet, "on", "workable"],
      ["way-2", plover, "on", "workable"],
    ]);
    const why = findWhyNot(catalogue, three, `on:way-1:${gannet}`, "on");
    if (why.kind !== "why-not") throw new Error("misasked");
    expect(why.reasons[0]?.facts.map((f) => f.says).join(" ")).toMatch(/Tallow bus tracer needs Skerry Monitor up to R4A/);
    // Neither the card nor the way it is wanted in is given up for it.
    expect(why.repairs.flatMap((r) => r.gives.map((g) => g.id))).not.toContain(`card:${gannet}`);
    expect(why.repairs.flatMap((r) => r.gives.map((g) => g.id))).not.toContain("mode:way-1");
    // The nearest way out: the other one off there, which leaves a machine that works.
    const [first] = why.repairs;
    expect(first).toMatchObject({ kind: "change", says: "Switch Tallow bus tracer off in Way 1.", gives: [] });
    expect((first!.build as Build).modes?.map((m) => m.cards)).toEqual([[gannet], [gannet, plover]]);
    expect(judged(catalogue, first!.build as Build)).toBe("workable");
  });

  it("a card that nothing switches off runs in every way", () => {
    const build = { ...three, cards: [...three.cards, { card: "samphire-network-card" }] };
    const cells = findOnOff(question(catalogue, build)).filter((c) => c.card === "samphire-network-card");
    expect(cells).toEqual(["way-1", "way-2"].map((mode) => ({ mode, card: "samphire-network-card", now: "always" })));
  });

  it("nothing is claimed of what the budget did not reach", () => {
    // What the facts exclude without any search is excluded all the same.
    const cells = findOnOff(question(catalogue, three), { stop: () => true });
    expect(cells.map((c) => c.other)).toEqual([undefined, "ruled-out", "ruled-out", "ruled-out", undefined, undefined]);
  });

  it("agrees with the machine asked by itself, on random machines in two ways", () => {
    const seen = new Map<string, number>();
    for (let seed = 1; seed <= (process.env.LONG ? 1500 : 150); seed++) {
      const { catalogue: of, build } = setupOf(seed);
      const r = new Random(seed);
      const modes = ["m1", "m2"].map((id): Mode => ({ id, cards: build.cards.map((c) => c.as ?? c.card).filter(() => r.next() < 0.5) }));
      const { wishes: _, ...rest } = build;
      const two = { ...rest, modes };
      for (const cell of findOnOff(question(of, two))) {
        if (cell.now === "always") continue;
        const flipped = withChoice(two, `on:${cell.mode}:${cell.card}`, cell.now === "on" ? "off" : "on");
        expect([seed, cell.mode, cell.card, cell.other]).toEqual([seed, cell.mode, cell.card, judged(of, flipped)]);
        const key = `${cell.now} ${cell.other}`;
        seen.set(key, (seen.get(key) ?? 0) + 1);
      }
    }
    expect([...seen.keys()].sort()).toEqual(["off ruled-out", "off unknown", "off workable", "on ruled-out", "on unknown", "on workable"]);
  });
});
