// Copies of a card as values: names, what a mode has on, putting in and taking out, filling.
import { describe, expect, it } from "vitest";
import { cardsOn, copyName, labelCopies, pairCopies } from "../../src/catalogue/index.js";
import { addressOf, asStanding, buildFrom, fillBuild, withCard, withChoice, withoutCard, withSecondMode } from "../../src/machine/index.js";
import type { Build, BuildCard, Mode } from "../../src/records/index.js";

const machine = (cards: readonly BuildCard[], modes?: readonly Mode[]): Build => ({
  id: "m",
  name: "M",
  board: "b",
  cards: [...cards],
  ...(modes ? { modes: [...modes] } : {}),
});
const on = (build: Build, mode: number) => cardsOn(build.cards, build.modes![mode]!).map(copyName);

const unnamed = machine(
  [{ card: "loop" }, { card: "loop", as: "second" }],
  [{ id: "one", cards: ["loop"] }, { id: "two", cards: ["second"] }, { id: "off", cards: [] }, { id: "all" }],
);
const named = machine(
  [
    { card: "loop", as: "left" },
    { card: "loop", as: "right" },
  ],
  [{ id: "both", cards: ["loop"] }],
);

describe("a name in a mode", () => {
  it("is a copy's first, and means every copy only when no copy is called so", () => {
    expect(unnamed.modes!.map((_, m) => on(unnamed, m))).toEqual([["loop"], ["second"], [], ["loop", "second"]]);
    expect(on(named, 0)).toEqual(["left", "right"]);
    // A copy that bears another card's id is what that name means.
    const crossed = machine(
      [
        { card: "a", as: "b" },
        { card: "b", as: "a" },
      ],
      [{ id: "m", cards: ["a"] }],
    );
    expect(cardsOn(crossed.cards, crossed.modes![0]!)).toEqual([{ card: "b", as: "a" }]);
  });
});

describe("a copy taken out", () => {
  it("leaves the others on where they were", () => {
    const first = withoutCard(unnamed, "second");
    expect([0, 1, 2, 3].map((m) => on(first, m))).toEqual([["loop"], [], [], ["loop"]]);
    const second = withoutCard(unnamed, "loop");
    expect([0, 1, 2, 3].map((m) => on(second, m))).toEqual([[], ["second"], [], ["second"]]);
  });

  it("leaves a list that means every copy as it was written, and an empty one when none is left", () => {
    const right = withoutCard(named, "left");
    expect(right.modes).toEqual([{ id: "both", cards: ["loop"] }]);
    expect(on(right, 0)).toEqual(["right"]);
    expect(withoutCard(right, "right").modes).toEqual([{ id: "both", cards: [] }]);
  });
});

describe("one more copy", () => {
  it("gets a name no other bears, however often it is asked for, and after one was taken out", () => {
    const three = ["loop", "loop", "loop"].reduce((build, card) => withCard(build, card), machine([]));
    expect(three.cards.map(copyName)).toEqual(["loop", "loop-2", "loop-3"]);
    expect(withCard(withoutCard(three, "loop-2"), "loop").cards.map(copyName)).toEqual(["loop", "loop-3", "loop-2"]);
    expect(withCard(named, "loop").cards.map(copyName)).toEqual(["left", "right", "loop-2"]);
    const long = "l".repeat(60);
    const names = [long, long, long].reduce((build, card) => withCard(build, card), machine([])).cards.flatMap((c) => c.as ?? []);
    expect(new Set(names).size).toBe(2);
    expect(names.every((name) => name.length <= 40)).toBe(true);
  });

  it("is on where some card is on, and a mode in which all is off stays so", () => {
    const more = withCard(unnamed, "disk");
    expect([0, 1, 2, 3].map((m) => on(more, m))).toEqual([["loop", "disk"], ["second", "disk"], [], ["loop", "second", "disk"]]);
    expect(on(withCard(named, "loop"), 0)).toEqual(["left", "right", "loop-2"]);
    // A new copy called by its card's id would take the name that meant both: they stay on.
    expect(new Set(on(withCard(named, "loop", "loop"), 0))).toEqual(new Set(["left", "right", "loop"]));
  });
});

describe("a mode with no card on", () => {
  const build = { ...unnamed, stands: { firmware: "R1" } };
  it("stays empty through every edit, the address, and filling", () => {
    const filling = {
      revision: "A",
      firmwareFamily: "line",
      cards: build.cards.map((c) => ({ as: copyName(c), revision: "", slot: "S1", settings: {} })),
      modes: build.modes!.map((m) => ({ id: m.id, firmware: "R1" })),
    };
    const edited: readonly Build[] = [
      withChoice(build, "slot:second", "S3"),
      withChoice(build, "firmware:off", "R2"),
      withCard(build, "disk"),
      withoutCard(build, "loop"),
      withSecondMode(build, "one", ["loop"], []),
      asStanding(build),
      fillBuild(build, filling),
      buildFrom(addressOf(build))!,
    ];
    for (const after of edited) expect(after.modes!.find((m) => m.id === "off")?.cards).toEqual([]);
    expect(withSecondMode(build, "off", ["loop"], ["second"]).modes!.map((m) => m.cards)).toContainEqual([]);
  });

  it("is told in an address from a copy whose name is a dash", () => {
    const dash = machine(
      [{ card: "loop", as: "-" }],
      [
        { id: "one", cards: ["-"] },
        { id: "off", cards: [] },
      ],
    );
    expect(buildFrom(addressOf(dash))!.modes).toEqual(dash.modes);
  });
});

describe("a mode split in two", () => {
  it("turns off the copies named and keeps what else it was", () => {
    const split = withSecondMode(
      { ...named, modes: [{ id: "both", name: "Both", firmware: "R1", cards: ["loop"], safest: true }] },
      "both",
      ["left"],
      ["right"],
    );
    expect(split.modes).toEqual([
      { id: "both", name: "Both", cards: ["right"], safest: true },
      { id: "second", name: "Second mode", cards: ["left"] },
    ]);
  });
});

describe("labels", () => {
  const labels = (...cards: BuildCard[]) => [...labelCopies(cards, (id) => `The ${id}`).values()];
  it("tell copies apart, and call one copy alone by its plain name", () => {
    expect(labels({ card: "loop", as: "left" }, { card: "disk" })).toEqual(["The loop", "The disk"]);
    expect(labels({ card: "loop", as: "left" }, { card: "loop", as: "right" })).toEqual(["The loop (left)", "The loop (right)"]);
    expect(labels({ card: "loop" }, { card: "loop", as: "spare" })).toEqual(["The loop (first)", "The loop (spare)"]);
    // A number that nobody gave it is no name.
    expect(labels({ card: "loop" }, { card: "loop", as: "loop-2" })).toEqual(["The loop (first)", "The loop (second)"]);
    expect(labels({ card: "loop", as: "loop-3" }, { card: "loop", as: "second" }, { card: "loop", as: "loop-5" })).toEqual([
      "The loop (first)",
      "The loop (second)",
      "The loop (third)",
    ]);
    expect(labels({ card: "loop", as: "second" }, { card: "loop", as: "loop-2" })).toEqual(["The loop (second)", "The loop (loop-2)"]);
    const odd = labels({ card: "loop" }, { card: "loop", as: "first" });
    expect(new Set(odd).size).toBe(2);
  });
});

describe("copies of two machines", () => {
  it("are paired by name first, then in order, each once", () => {
    const wanted = [{ card: "loop" }, { card: "loop", as: "second" }, { card: "loop", as: "third" }];
    expect([
      ...pairCopies(wanted, [
        { card: "loop", as: "second" },
        { card: "loop", as: "old" },
      ]),
    ]).toEqual([
      ["second", { card: "loop", as: "second" }],
      ["loop", { card: "loop", as: "old" }],
    ]);
    // The same name on another card is another thing.
    expect(pairCopies([{ card: "loop", as: "x" }], [{ card: "disk", as: "x" }]).size).toBe(0);
  });
});
