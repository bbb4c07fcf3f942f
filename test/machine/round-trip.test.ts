// One meaning all the way round: a build as the planner's address, as the file it downloads, as the question a command asks, filled with
// the best way, tested, written down, and checked among the club's records. Every demo build, board and card, and random builds.

import { describe, expect, it } from "vitest";
import { cardsOn, cardsOnOrOff, copyName, link, mainMemory, modesOf } from "../../src/catalogue/index.js";
import { holesOf, testedBuild } from "../../src/cli/reading/bench-result.js";
import { addressOf, asStanding, buildFrom, fillBuild } from "../../src/machine/index.js";
import { readBuild, writeBuild } from "../../src/planner/worker/files.js";
import { type Answer, auditBench, plan } from "../../src/planning/index.js";
import { type Build, type BuildCard, bytes, type Loaded, readRecords } from "../../src/records/index.js";
import { demo, demoFiles } from "../support/demo.js";
import { tidy } from "../support/loose.js";
import { Random } from "../support/solver/random.js";

const club = demo();
const { records } = readRecords(demoFiles());
const many = process.env.LONG ? 1_000 : 25;
const first = Number(process.env.SEED ?? 1);

/** What a build means: amounts in bytes, each mode with the copies that are on in it. */
function meaning({ cards, modes, memory, revision, stands, ...build }: Build) {
  const { notes: _n, summary: _s, result: _r, sources: _o, ...rest } = build as Record<string, unknown>;
  const amount = (size: Build["memory"]) => (size === undefined ? undefined : bytes(size));
  const bare = {
    ...rest,
    memory: amount(memory),
    revision: revision === undefined ? [] : [revision].flat(),
    cards: cards.map((c) => ({ ...c, settings: c.settings && Object.keys(c.settings).length > 0 ? c.settings : undefined })),
    modes: modesOf(modes ? { modes } : {}).map((m) => ({
      ...m,
      safest: m.safest ?? false,
      cards: cardsOn(cards, m).map(copyName),
      on_or_off: cardsOnOrOff(cards, m).map(copyName),
    })),
    stands: stands && { ...stands, memory: amount(stands.memory) },
  };
  return JSON.parse(JSON.stringify(bare)) as object;
}

function answer(build: Build, catalogue = club): Answer {
  const a = plan(catalogue, build, { brief: true, most: 3 });
  if (a.kind !== "answer") throw new Error(`${build.id}: ${a.faults[0]?.says}`);
  return a;
}

const told = (a: Answer) => [a.verdict, a.combinations.map((c) => [c.verdict, c.evidence, c.revision, c.memory, c.cards, c.modes])];

/** The build after an address and a file; both must mean what went in. */
function carried(build: Build): Build {
  const opened = buildFrom(addressOf(build));
  expect(opened && meaning(opened), `${build.id}: the address`).toEqual(meaning(build));
  const { result: _, ...question } = opened ?? build;
  const file = readBuild(club, { text: writeBuild({ build: question }), file: "builds/question.yaml" });
  if (file.kind !== "read") throw new Error(`${build.id}: ${file.findings.map((f) => f.says).join(" ")}`);
  expect(meaning(file.build), `${build.id}: the file`).toEqual(meaning(build));
  return file.build;
}

/** The best way, tested and put among the records: the check finds nothing wrong with it, and it is that way and no other. */
function provenBy(question: Build): string {
  const before = answer(question);
  const [best] = before.combinations;
  if (!best) return before.verdict;
  const filled = fillBuild(question, best);
  expect(holesOf(filled, club.boards.get(filled.board), (card) => (club.cards.get(card)?.settings ?? []).map((s) => s.id))).toEqual([]);
  const test = testedBuild(filled, club.boards.get(filled.board), "round-trip", "Round trip", {
    by: "A tester",
    date: "2020-01-01",
    outcome: "worked",
  });
  const read = readBuild(club, { text: writeBuild({ build: test }), file: "builds/round-trip.yaml" });
  if (read.kind !== "read") throw new Error(`${question.id}: ${read.findings.map((f) => f.says).join(" ")}`);
  expect(meaning(read.build), "the tested build").toEqual(meaning(test));
  const entry = { kind: "build", record: read.build, file: "builds/round-trip.yaml" } as Loaded;
  const { catalogue, findings } = link([...records, entry], {});
  const wrong = findings.filter((f) => f.at.file === "builds/round-trip.yaml" && f.level === "error");
  expect(wrong.map((f) => `${question.id}: ${f.says}`)).toEqual([]);
  const only = { ...catalogue, builds: new Map([["round-trip", read.build]]) };
  expect(
    auditBench(only).map((d) => d.says),
    question.id,
  ).toEqual([]);
  const after = answer(read.build, catalogue);
  // What was seen on a bench no missing fact holds back; what it takes or loses stays.
  expect(after.verdict, question.id).toBe(best.verdict === "unknown" ? after.verdict : best.verdict);
  expect(["workable", "conditional"], question.id).toContain(after.verdict);
  const machine = (c: typeof best | undefined) =>
    c && [
      c.revision,
      c.memory,
      c.cards.map((k) => [k.as, k.card, k.revision, k.slot, k.settings]),
      c.modes.map((m) => [m.id, m.firmware, m.enabled]),
    ];
  expect(machine(after.combinations[0]), question.id).toEqual(machine(best));
  return before.verdict;
}

/** A card by itself on each board that has its bus, and with a second copy. */
const alone: readonly Build[] = [...club.cards.values()].flatMap((card) =>
  [...club.boards.values()]
    .filter((b) => b.bus === card.bus)
    .flatMap((b): Build[] => [
      { id: "alone", name: "Alone", board: b.id, cards: [{ card: card.id }] },
      { id: "twice", name: "Twice", board: b.id, cards: [{ card: card.id }, { card: card.id, as: `${card.id}-2` }] },
    ]),
);

/** A random machine of the demo club: copies, holes, empty modes, amounts, parts of a switch, names with every sign an address uses. */
function randomBuild(seed: number): Build {
  const random = new Random(seed);
  const maybe = <T>(chance: number, make: () => T): T | undefined => (random.next() < chance ? make() : undefined);
  const board = random.pick([...club.boards.values()]);
  const cards = [...club.cards.values()].filter((c) => c.bus === board.bus);
  const chosen = Array.from({ length: random.int(1, 3) }, () => random.pick(cards));
  const again = random.next() < 0.4 ? chosen.slice(0, 1) : [];
  const copies = [...chosen, ...again].map((c, n) => {
    const earlier = [...chosen, ...again].slice(0, n).some((other) => other.id === c.id);
    return tidy<BuildCard>({
      card: c.id,
      as: earlier ? `copy-${n}` : maybe(0.2, () => `own-${n}`),
      revision: c.revisions && maybe(0.3, () => random.pick(c.revisions ?? []).id),
      slot: maybe(0.15, () => random.pick(board.slots).id),
      settings:
        c.settings && maybe(0.3, () => Object.fromEntries((c.settings ?? []).slice(0, 1).map((s) => [s.id, random.pick(s.positions).id]))),
    });
  });
  const family = club.firmware.get(random.pick(board.firmware));
  const versions = family?.versions.map((v) => v.id) ?? [];
  const mode = (n: number) => ({
    id: `m${n}`,
    name: maybe(0.5, () => random.pick(["Every day; with = and &", "100 % + more, or less", 'Ä "quoted" #1', "-", "a:b/c?d"])),
    firmware: maybe(0.4, () => random.pick(versions)),
    cards: maybe(0.7, () => random.some(copies.map(copyName), 0.5)),
    safest: n === 0 ? maybe(0.3, () => true) : undefined,
  });
  const withOpen = (m: ReturnType<typeof mode>) => {
    const left = copies.map(copyName).filter((name) => !m.cards?.includes(name));
    return left.length > 0 && random.next() < 0.3 ? { ...m, on_or_off: left.slice(0, random.int(1, left.length)) } : m;
  };
  const parts = [...club.parts.values()];
  const partOf = (type: string) => parts.filter((p) => p.type === type).map((p) => p.id);
  const revisions = board.revisions.map((r) => r.id);
  const build = {
    id: "random",
    name: random.pick(["My build", "A name: with, signs; = & + %2C #"]),
    board: board.id,
    revision: maybe(0.5, () => (random.next() < 0.5 ? random.pick(revisions) : revisions.slice(0, 2))),
    memory: mainMemory(board) && maybe(0.4, () => random.pick(mainMemory(board)?.options ?? [])),
    firmware: maybe(0.5, () => family?.id) ?? (board.firmware[0] === family?.id ? undefined : family?.id),
    cards: copies,
    modes: maybe(0.7, () => Array.from({ length: random.int(1, 3) }, (_, n) => withOpen(mode(n)))),
    wishes: maybe(0.4, () => ({
      together: maybe(0.5, () => [{ cards: maybe(0.7, () => copies.map(copyName)), firmware: random.pick(versions) }]),
      always: maybe(0.3, () => [copyName(random.pick(copies))]),
      alone: maybe(0.3, () => [copyName(random.pick(copies))]),
      ways_at_most: random.int(1, 3),
    })),
    at_hand: maybe(0.3, () => ({ firmware: versions.slice(0, 2), cards: [copies[0]?.card, { card: random.pick(cards).id, count: 2 }] })),
    switch: maybe(0.3, () => ({ device: random.pick(partOf("memory")), switch: maybe(0.5, () => random.pick(partOf("switch"))) })),
  };
  return JSON.parse(JSON.stringify(build)) as Build;
}

describe("the round trip", () => {
  it("carries every demo build, and the standing machine of each", { timeout: 3_600_000 }, () => {
    const builds = [...club.builds.values()];
    for (const build of builds) {
      const { result: _, ...question } = build;
      carried(question);
      carried(asStanding(question));
    }
    const tried = process.env.LONG ? builds : builds.filter((_, i) => i % 12 === 0);
    for (const { result: _, ...question } of tried) expect(told(answer(carried(question))), question.id).toEqual(told(answer(question)));
  });

  it("of every card on every board comes back as it went, and as the way that was tested", { timeout: 3_600_000 }, () => {
    const verdicts = new Set<string>();
    for (const [i, build] of alone.entries()) {
      const back = carried(build);
      if (!process.env.LONG && i % 19 !== 0) continue;
      expect(told(answer(back)), build.id).toEqual(told(answer(build)));
      verdicts.add(provenBy(back));
    }
    expect(verdicts.size).toBeGreaterThan(1);
  });

  it(`of ${many} random builds comes back as it went, and as the way that was tested`, { timeout: 3_600_000 }, () => {
    const seen = new Map<string, number>();
    const saw = (what: string, so: boolean) => so && seen.set(what, (seen.get(what) ?? 0) + 1);
    for (let seed = first; seed < first + many; seed++) {
      const build = randomBuild(seed);
      const back = carried(build);
      expect(told(answer(back)), `seed ${seed}`).toEqual(told(answer(build)));
      saw(provenBy({ ...back, id: `seed-${seed}` }), true);
      saw("empty mode", build.modes?.some((m) => m.cards?.length === 0) ?? false);
      saw("copies", new Set(build.cards.map((c) => c.card)).size < build.cards.length);
      saw("switch", build.switch !== undefined);
    }
    if (process.env.SHOW) console.log(seen);
    for (const what of ["empty mode", "copies", "switch", "ruled-out", "workable"]) expect(seen.get(what) ?? 0, what).toBeGreaterThan(1);
  });
});
