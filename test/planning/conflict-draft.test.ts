// A conflict drafted from a failed test holds for exactly that machine: for it, and for none that differs in one respect.
import { describe, expect, it } from "vitest";
import { cardsOn, mainMemory, modesOf } from "../../src/catalogue/index.js";
import { compile, withRules } from "../../src/encoding/compile.js";
import { occurrences } from "../../src/encoding/rules/conflicts.js";
import { resolveBuild } from "../../src/machine/resolve.js";
import { draftConflict } from "../../src/planning/index.js";
import { type Build, bytes, type Conflict, readOne, writeRecord } from "../../src/records/index.js";
import { decide } from "../../src/solver/index.js";
import { demo } from "../support/demo.js";

/** Whether the conditions can hold in the machine with every choice as the build has it; undefined for a build that is no question. */
function holdsIn(build: Build, conflict: Conflict): boolean | undefined {
  const asked = resolveBuild(demo(), build);
  if (asked.kind !== "question") return undefined;
  const { facts, choices, frame } = compile(asked.question);
  const pinned = { variables: facts.variables, rules: choices.flatMap((c) => c.rules) };
  return occurrences(frame, conflict).some((when) => {
    const rules = when.map((l) => ({ kind: "unary" as const, ...l }));
    return decide(withRules(pinned, rules)).kind === "found";
  });
}

/** The modes the draft is about: those that did not work, or all of them. */
function failing(build: Build): readonly string[] {
  const bad = (build.result?.modes ?? []).filter((m) => m.outcome !== "worked").map((m) => m.mode);
  return bad.length > 0 ? bad : modesOf(build).map((m) => m.id);
}

/** The same machine with one thing otherwise. */
function* variants(build: Build): Generator<readonly [string, Build]> {
  const { boards, cards, firmware } = demo();
  const board = boards.get(build.board);
  const family = firmware.get(build.firmware ?? board?.firmware[0] ?? "");
  const bad = failing(build);
  for (const { id } of board?.revisions ?? []) if (id !== build.revision) yield [`revision ${id}`, { ...build, revision: id }];
  for (const memory of (board && mainMemory(board))?.options ?? [])
    if (build.memory !== undefined && bytes(memory) !== bytes(build.memory)) yield [`memory ${memory}`, { ...build, memory }];
  const ran = new Set(build.modes?.filter((m) => bad.includes(m.id)).map((m) => m.firmware));
  for (const { id } of family?.versions ?? []) {
    if (ran.has(undefined) || ran.has(id) || !build.modes) continue;
    yield [`firmware ${id}`, { ...build, modes: build.modes.map((m) => (bad.includes(m.id) ? { ...m, firmware: id } : m)) }];
  }
  if (build.modes && build.modes.length > 1) yield ["one mode alone", { ...build, modes: build.modes.filter((m) => m.id === bad[0]) }];
  for (const [at, copy] of build.cards.entries()) {
    const card = cards.get(copy.card);
    const otherwise = (change: object) => ({ ...build, cards: build.cards.map((c, i) => (i === at ? { ...c, ...change } : c)) });
    if (copy.slot) for (const { id } of board?.slots ?? []) if (id !== copy.slot) yield [`${copy.card} in ${id}`, otherwise({ slot: id })];
    if (copy.revision)
      for (const { id } of card?.revisions ?? []) if (id !== copy.revision) yield [`${copy.card} ${id}`, otherwise({ revision: id })];
    for (const [setting, position] of Object.entries(copy.settings ?? {}))
      for (const { id } of card?.settings?.find((s) => s.id === setting)?.positions ?? [])
        if (id !== position) yield [`${copy.card} ${setting}=${id}`, otherwise({ settings: { ...copy.settings, [setting]: id } })];
  }
}

const failed = [...demo().builds.values()].filter((b) => b.result && b.result.outcome !== "worked");

describe.each(failed.map((b) => [b.id, b] as const))("%s", (_, build) => {
  const draft = draftConflict(demo(), build);

  it("drafts a record that can be written and read", () => {
    const { record, findings } = readOne("conflict", writeRecord("conflict", draft));
    expect(findings).toEqual([]);
    expect(record).toEqual(JSON.parse(JSON.stringify(draft)));
  });

  it("holds for the machine as it stood, and for none that differs in one respect", () => {
    expect(holdsIn(build, draft)).toBe(true);
    // Two copies of one card may change places: the conditions name cards, not copies.
    const single = (id: string) => build.cards.filter((c) => c.card === id).length === 1;
    const wrong = [...variants(build)].filter(([, b]) => b.cards.every((c) => single(c.card)) && holdsIn(b, draft) === true);
    expect(wrong.map(([title]) => title)).toEqual([]);
  });
});

it("keeps that a card was off in the mode that failed, and how many modes there were", () => {
  const several = failed.filter((b) => modesOf(b).length > 1);
  expect(several.length).toBeGreaterThan(0);
  for (const build of several) {
    const { when } = draftConflict(demo(), build);
    expect(when.modes_at_least).toBe(modesOf(build).length);
    const modes = modesOf(build).filter((m) => failing(build).includes(m.id));
    for (const [i, c] of build.cards.entries())
      expect(when.cards?.[i]?.even_disabled ?? false).toBe(modes.some((m) => !cardsOn(build.cards, m).includes(c)));
  }
});

it("names the board's own firmware family when the build leaves it out", () => {
  const [build] = failed.filter((b) => b.modes?.every((m) => m.firmware !== undefined));
  if (!build) throw new Error("no failed build names its firmware versions");
  const { firmware: _, ...rest } = build;
  expect(draftConflict(demo(), rest as Build).when.firmware).toEqual(draftConflict(demo(), build).when.firmware);
  expect(draftConflict(demo(), rest as Build).when.firmware).toHaveLength(1);
});
