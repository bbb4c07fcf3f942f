// Records that could not be read: an answer one could bear on is not known, names the file, and is never better than it was.
import { describe, expect, it } from "vitest";
import type { Catalogue } from "../../src/catalogue/index.js";
import { compile } from "../../src/encoding/index.js";
import { resolveBuild } from "../../src/machine/index.js";
import { type Answer, beforeYouBuy, cell, countsOf, matrix, openFacts, plan, whatWouldFit as wouldFit } from "../../src/planning/index.js";
import type { Build, Unread } from "../../src/records/index.js";
import { demo, demoWith } from "../support/demo.js";
import { Random } from "../support/solver/random.js";
import { catalogueOf, filesOf, spoil } from "./support/files.js";
import { asked, card, smallClub, tested } from "./support/small-club.js";
import { randomSetup } from "./support/world.js";

function answer(catalogue: Catalogue, build: Build): Answer {
  const given = plan(catalogue, build);
  if (given.kind !== "answer") throw new Error(given.faults.map((f) => f.says).join(" "));
  return given;
}

function whatWouldFit(catalogue: Catalogue, build: Build, most: number) {
  const given = wouldFit(catalogue, build, most);
  if ("kind" in given) throw new Error(given.faults.map((f) => f.says).join(" "));
  return given;
}

const question = (board: string, cards: readonly string[], more: Partial<Build> = {}): Build => ({
  id: "q",
  name: "q",
  board,
  cards: cards.map((id) => ({ card: id })),
  ...more,
});

const badWord = (text: string) => text.replace("effect: blocks", "effect: block");
/** Nothing of it can be read any more. */
const broken = (text: string) => `${text}other: [\n`;

describe("a known problem that could not be read", () => {
  const file = "conflicts/skerry-16-supply-trips.yaml";
  const cards = ["gannet-fixed-disk-controller", "gurnard-stepper-drive"];
  const spoiled = demoWith({ [file]: badWord });

  it("makes the answer unknown, with the place, what is wrong there and what to do", () => {
    expect(answer(demo(), question("skerry-16", cards)).verdict).toBe("conditional");
    const after = answer(spoiled, question("skerry-16", cards));
    expect([after.verdict, after.count]).toEqual(["unknown", "0"]);
    expect(BigInt(after.hanging) > 0n).toBe(true);
    expect(after.says).toContain(`${file}:10:9 could not be read`);
    expect(after.unread).toEqual([
      expect.objectContaining({ kind: "conflict", id: "skerry-16-supply-trips", file, line: 10, column: 9, bears: true }),
    ]);
    const missing = after.unknowns.find((u) => u.says.includes(file));
    expect(missing?.how).toMatch(/^Mend it, then ask again\. effect should be one of: blocks, degrades, cosmetic\. Did you mean blocks\?$/);
  });

  it("does not bear on a machine that what can be read of it leaves out", () => {
    for (const [board, some] of [
      ["skerry-16t", cards],
      ["skerry-16", cards.slice(0, 1)],
    ] as const) {
      const [before, after] = [answer(demo(), question(board, some)), answer(spoiled, question(board, some))];
      expect([after.verdict, after.count]).toEqual([before.verdict, before.count]);
      expect(after.unread.map((u) => u.bears)).toEqual([false]);
    }
  });

  it("bears on every machine when nothing of it can be read", () => {
    const after = answer(demoWith({ [file]: broken }), question("skerry-24", ["plover-tape-interface"]));
    expect([after.verdict, after.count, after.unread[0]?.bears]).toEqual(["unknown", "0", true]);
  });

  it("does not bear when it says that it was disproved", () => {
    const disproved = "conflicts/tracer-hurts-skerry-16.yaml";
    const catalogue = demoWith({ [disproved]: (text) => text.replace(/^cause:.*$/m, "cause: [1]") });
    expect(catalogue.unread.map((u) => u.file)).toEqual([disproved]);
    const q = question("skerry-16", ["tallow-bus-tracer"]);
    expect(answer(catalogue, q).verdict).toBe(answer(demo(), q).verdict);
    expect(answer(catalogue, q).unread[0]?.bears).toBe(false);
  });

  it("is no way that counts as certain, and a fact worth finding out", () => {
    const read = resolveBuild(spoiled, question("skerry-16", cards));
    if (read.kind !== "question") throw new Error(read.kind);
    const counts = countsOf(compile(read.question));
    expect(counts.count).toBe("0");
    expect(counts.kinds.filter((k) => k.verdict !== "unknown" && k.count !== "0")).toEqual([]);
    const all = demoWith({ [file]: broken });
    const q = { board: "skerry-16t", revision: "D1", family: "skerry-monitor", firmware: "R6", card: cards[0] as string };
    expect(cell(all, q).verdict).toBe("unknown");
    const worth = openFacts(all, [q]);
    expect(worth.map((f) => f.says)).toEqual([expect.stringContaining(file)]);
    expect(worth[0]?.settles).toEqual([q]);
  });

  it("holds back what would fit, and what one thinks of buying", () => {
    const all = demoWith({ [file]: broken });
    const machine = question("skerry-16", ["gannet-fixed-disk-controller"], { revision: "B" });
    expect(new Set(whatWouldFit(all, machine, 0).map((f) => f.verdict))).toEqual(new Set(["unknown"]));
    const bought = beforeYouBuy(spoiled, machine, "gurnard-stepper-drive");
    if (bought.kind !== "purchase") throw new Error("misasked");
    expect([bought.verdict, bought.unread[0]?.bears]).toEqual(["unknown", true]);
    expect(bought.risks.join(" ")).toContain(file);
    expect(bought.versions.filter((v) => v.verdict === "workable" || v.verdict === "conditional")).toEqual([]);
  });
});

describe("a question that names a record which could not be read", () => {
  const board = "skerry-16t";
  const named: readonly [string, string, Build, (text: string) => string][] = [
    ["card", "cards/plover-tape-interface.yaml", question(board, ["plover-tape-interface"]), (t) => t.replace("does: [", "does: tape #[")],
    ["board", "boards/skerry-16t.yaml", question(board, []), (t) => t.replace("slots:", "slotes:")],
    ["bus", "buses/skb.yaml", question(board, []), broken],
    ["firmware of the board", "firmware/skerry-monitor.yaml", question(board, []), broken],
    [
      "firmware",
      "firmware/skerry-monitor.yaml",
      question(board, [], { firmware: "skerry-monitor" }),
      (t) => t.replace("versions:", "version:"),
    ],
  ];

  it.each(named)("%s: is not known, and names the file", (_, file, build, spoil) => {
    expect(answer(demo(), build).verdict).not.toBe("unknown");
    const catalogue = demoWith({ [file]: spoil });
    const after = answer(catalogue, build);
    expect([after.verdict, after.count, after.combinations, after.finished]).toEqual(["unknown", "0", [], true]);
    expect(after.says).toMatch(
      new RegExp(`^Not known\\. It hangs on this: ${file}:\\d+:\\d+ could not be read, and the question names it\\.$`),
    );
    expect(after.unread[0]).toMatchObject({ file, bears: true });
    expect(after.unknowns[0]?.how).toMatch(/^Mend it, then ask again\. ./);
  });

  const plover = demoWith({ "cards/plover-tape-interface.yaml": broken });

  it("and so are its cell, its row of the matrix, its purchase and its place among the cards that fit", () => {
    const q = { board, revision: "D1", family: "skerry-monitor", firmware: "R6", card: "plover-tape-interface" };
    expect(cell(plover, q)).toMatchObject({ verdict: "unknown", says: expect.stringContaining("cards/plover-tape-interface.yaml") });
    const row = [...matrix(plover, { boards: [board], revisions: ["D1"], versions: ["R6"] })].filter((c) => c.card === q.card);
    expect(row.map((c) => c.verdict)).toEqual(["unknown"]);
    expect(beforeYouBuy(plover, question(board, []), q.card)).toMatchObject({ kind: "purchase", verdict: "unknown" });
    expect(whatWouldFit(plover, question(board, [], { revision: "D1" }), 0).find((f) => f.card === q.card)?.verdict).toBe("unknown");
    expect(new Set(whatWouldFit(plover, question(board, [q.card]), 0).map((f) => f.verdict))).toEqual(new Set(["unknown"]));
  });

  it("but nothing else is: a question without it is answered as before", () => {
    const q = question(board, ["gannet-fixed-disk-controller"]);
    const [before, after] = [answer(demo(), q), answer(plover, q)];
    expect([after.verdict, after.count]).toEqual([before.verdict, before.count]);
    expect(after.unread.map((u) => [u.id, u.bears])).toEqual([["plover-tape-interface", false]]);
  });

  it("a card nobody ever heard of is still no card", () => {
    expect(plan(plover, question(board, ["plover-tape-interfaces"])).kind).toBe("misasked");
  });

  it("knows a part by its file", () => {
    const device = "parts/27c020.yaml";
    const catalogue = demoWith({ [device]: broken });
    const after = answer(catalogue, question(board, [], { switch: { device: "27c020" } }));
    expect([after.verdict, after.unread[0]?.file]).toEqual(["unknown", device]);
  });
});

describe("a bench result that could not be read", () => {
  const inS1 = { card: "a", slot: "S1" };
  const records = { cards: [card("a", { power: [{ rail: "+5", worst_A: "unknown" }] })], builds: [tested("ran", [inS1])] };
  const unread = (test: Unread["test"]): Unread => ({
    kind: "build",
    id: "lost",
    file: "builds/lost.yaml",
    line: 3,
    column: 1,
    says: "x",
    ...(test ? { test } : {}),
  });
  const withLost = (lost: Unread, more = records): Catalogue => ({ ...smallClub(more), unread: [lost] });

  it("makes no verdict worse than the rules alone give", () => {
    const sound = { cards: [card("a")], builds: [tested("ran", [inS1])] };
    const after = asked(withLost(unread({ worked: false }), sound), [inS1]);
    expect([after.verdict, after.unread]).toEqual(["workable", [expect.objectContaining({ file: "builds/lost.yaml", bears: false })]]);
  });

  it.each<[string, Unread["test"], string]>([
    ["another board", { board: "other", worked: false }, "workable"],
    ["other cards", { board: "board", cards: ["a", "b"], worked: false }, "workable"],
    ["a machine that worked", { worked: true }, "workable"],
    ["no test at all", undefined, "workable"],
    ["this machine, and may say that it failed", { board: "board", cards: ["a"], worked: false }, "unknown"],
    ["nobody knows which machine", { worked: false }, "unknown"],
  ])("of %s: a test outweighs a missing figure only while no other may speak against it", (_, test, verdict) => {
    const after = asked(withLost(unread(test)), [inS1]);
    expect([after.verdict, after.unread[0]?.bears]).toEqual([verdict, verdict === "unknown"]);
  });
});

describe("in random worlds", () => {
  const worlds = process.env.LONG ? 2_000 : 150;

  it("a spoiled problem never makes an answer better, and adds no certain way", () => {
    let [looked, open, untouched] = [0, 0, 0];
    for (let seed = 70_001; seed < 70_001 + worlds; seed++) {
      const setup = randomSetup(seed);
      const random = new Random(seed);
      const files = filesOf(setup);
      const whole = catalogueOf(files);
      expect(whole.unread, `seed ${seed}`).toEqual([]);
      const problems = files.filter(({ file }) => file.startsWith("conflicts/"));
      if (problems.length === 0) continue;
      const before = answer(whole, setup.build);
      const victim = random.pick(problems);
      const spoiled = { ...victim, content: spoil(victim.content, random) };
      const catalogue = catalogueOf(files.map((f) => (f === victim ? spoiled : f)));
      if (catalogue.unread.length === 0) continue;
      const after = answer(catalogue, setup.build);
      const told = `seed ${seed}\n${spoiled.content}`;
      const stronger = { workable: ["workable"], conditional: ["workable", "conditional"] } as const;
      if (after.verdict === "workable" || after.verdict === "conditional") {
        expect(stronger[after.verdict], told).toContain(before.verdict);
        untouched++;
      }
      if (before.exact) expect(BigInt(after.count) <= BigInt(before.count), told).toBe(true);
      if (before.verdict !== "unknown" && after.verdict === "unknown") open++;
      looked++;
    }
    expect(looked).toBeGreaterThan(worlds / 2);
    expect(open).toBeGreaterThan(worlds / 20);
    expect(untouched).toBeGreaterThan(worlds / 100);
  });
});
