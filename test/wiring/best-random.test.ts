// The best of all combinations against brute force: every one that the rules allow is put together and wired by itself.
import { describe, expect, it } from "vitest";
import { type Catalogue, cardsOn, copyName, modesOf } from "../../src/catalogue/index.js";
import { compile } from "../../src/encoding/index.js";
import { resolveBuild, withChoice } from "../../src/machine/index.js";
import { combinationOf } from "../../src/planning/answer/combination.js";
import { provenModes } from "../../src/planning/answer/evidence.js";
import { type Combination, combinationsToWire } from "../../src/planning/index.js";
import type { Build } from "../../src/records/index.js";
import { list } from "../../src/solver/index.js";
import { bestWiring, planWiring, type Wiring, wiringOptions } from "../../src/wiring/index.js";
import { evidenceOrder } from "../../src/words/index.js";
import { bestWorld } from "./support/best-world.js";

const worlds = process.env.LONG ? 1_000 : 80;
/** Machines that are put together for one world at most. */
const most = 3_000;

function everyCombination(catalogue: Catalogue, build: Build): readonly Combination[] | undefined {
  const request = resolveBuild(catalogue, build);
  if (request.kind !== "question") throw new Error(request.kind);
  const compiled = compile(request.question);
  const { frame } = compiled;
  const { solutions, complete } = list(compiled.possible, { limit: most });
  if (!complete) return undefined;
  const proven = provenModes(compiled.question);
  return solutions.map((s) =>
    combinationOf(
      compiled,
      s,
      frame.cards.map((c) => new Set([s[c.slot]!])),
      proven,
    ),
  );
}

/** What counts, in order; less is better. */
function rankOf(c: Combination, wiring: Exclude<Wiring, { kind: "refused" }>): readonly number[] {
  const kinds = c.conditions.map((k) => k.kind);
  const switched = c.cards.filter((card) => {
    const on = c.modes.filter((m) => m.enabled.includes(card.as)).length;
    return on > 0 && on < c.modes.length;
  });
  const plan = wiring.kind === "wiring" ? wiring.plan : undefined;
  const lacking = (plan?.parts ?? []).filter((p) => !p.atHand).map((p) => p.count);
  const owed = c.conditions.flatMap((k) => (k.get ? [k.get.count ?? 1] : []));
  return [
    c.verdict === "unknown" ? 1 : 0,
    kinds.includes("remedy") ? 2 : kinds.includes("loss") ? 1 : 0,
    switched.length + new Set(c.modes.map((m) => m.firmware)).size - 1,
    evidenceOrder.indexOf(c.evidence),
    ...(["remedy", "loss", "cosmetic"] as const).map((kind) => kinds.filter((k) => k === kind).length),
    [...lacking, ...owed].reduce((sum, n) => sum + n, 0),
    plan ? plan.optimality.poles : 0,
    plan ? plan.wires.length : 0,
    c.changes.length,
  ];
}

const before = (a: readonly number[], b: readonly number[]) => {
  const at = a.findIndex((n, i) => n !== b[i]);
  return at >= 0 && a[at]! < b[at]!;
};

const toWire = (catalogue: Catalogue, build: Build) => ({
  rounds: combinationsToWire(catalogue, build),
  options: wiringOptions(build, { tables: false }),
});

/** What every combination that can be wired comes to. */
function ranksOf(catalogue: Catalogue, build: Build, all: readonly Combination[]): readonly (readonly number[])[] {
  const options = wiringOptions(build, { tables: false });
  // What stands where makes no difference to a switch.
  const wirings = new Map<string, Wiring>();
  return all.flatMap((c) => {
    const key = JSON.stringify([c.revision, c.modes, c.cards.map((p) => p.revision)]);
    const wiring = wirings.get(key) ?? planWiring(catalogue, c, options);
    wirings.set(key, wiring);
    return wiring.kind === "refused" ? [] : [rankOf(c, wiring)];
  });
}

function bestOf(ranks: readonly (readonly number[])[]): readonly number[] | undefined {
  return ranks.reduce<readonly number[] | undefined>((a, b) => (a && !before(b, a) ? a : b), undefined);
}

describe("the best combination to build", () => {
  it(`is that of brute force in ${worlds} random worlds`, () => {
    const seen: Record<string, number> = {};
    const saw = (what: string) => {
      seen[what] = (seen[what] ?? 0) + 1;
    };
    let tried = 0;
    for (let seed = Number(process.env.SEED ?? 1); tried < worlds; seed++) {
      const { catalogue, build } = bestWorld(seed);
      const all = everyCombination(catalogue, build);
      if (!all) continue;
      tried++;
      const where = `seed ${seed}`;
      const got = bestWiring(catalogue, [toWire(catalogue, build)]);
      const best = bestOf(ranksOf(catalogue, build, all));
      expect(got?.kind, where).toBe(best ? "best" : all.length > 0 ? "refused" : undefined);
      saw(got?.kind ?? "nothing works");
      if (got?.kind !== "best") {
        if (got) expect(got.proven, where).toBe(true);
        continue;
      }
      expect(got.proven, where).toBe(true);
      expect(rankOf(got.combination, got.wiring), where).toEqual(best);
      saw(got.wiring.kind);
      saw(got.combination.verdict);
      saw(`evidence ${got.combination.evidence}`);
      if (got.refused > 0) saw("others refused");
      if (got.runnerUp && got.runnerUp.saves.length > 0) saw("runner-up saves");
    }
    if (process.env.SHOW) console.log(seen);
    for (const what of [
      "best",
      "refused",
      "nothing works",
      "wiring",
      "not-needed",
      "workable",
      "conditional",
      "unknown",
      "others refused",
      "runner-up saves",
    ])
      expect(seen[what] ?? 0, `${what}: ${JSON.stringify(seen)}`).toBeGreaterThan(0);
    expect((seen["evidence bench"] ?? 0) + (seen["evidence documented"] ?? 0), JSON.stringify(seen)).toBeGreaterThan(0);
  });

  it(`of several divisions is that of brute force over all of them, in ${worlds / 2} random worlds`, () => {
    const seen = { first: 0, later: 0, none: 0 };
    let tried = 0;
    for (let seed = Number(process.env.SEED ?? 1); tried < worlds / 2; seed++) {
      const { catalogue, build } = bestWorld(seed);
      // The same machine with one card switched over in one of its modes, each in turn.
      const cells = modesOf(build).flatMap((m) => build.cards.map((c) => [m, copyName(c)] as const));
      const others = cells.map(([mode, as]) => {
        const on = cardsOn(build.cards, mode).some((c) => copyName(c) === as);
        return withChoice(build, `on:${mode.id}:${as}`, on ? "off" : "on");
      });
      const builds = [...others.slice(0, 3), build];
      const all = builds.map((b) => everyCombination(catalogue, b));
      if (all.some((a) => a === undefined)) continue;
      tried++;
      const where = `seed ${seed}`;
      const ranks = builds.map((b, at) => bestOf(ranksOf(catalogue, b, all[at] ?? [])));
      const best = bestOf(ranks.flatMap((r) => (r ? [r] : [])));
      const got = bestWiring(
        catalogue,
        builds.map((b) => toWire(catalogue, b)),
      );
      if (got?.kind !== "best") {
        expect(best, where).toBe(undefined);
        seen.none++;
        continue;
      }
      expect(got.proven, where).toBe(true);
      expect(rankOf(got.combination, got.wiring), where).toEqual(best);
      expect(ranks[got.of], where).toEqual(best);
      if (got.of === 0) seen.first++;
      else seen.later++;
    }
    if (process.env.SHOW) console.log(seen);
    for (const [what, times] of Object.entries(seen)) expect(times, what).toBeGreaterThan(0);
  });
});
