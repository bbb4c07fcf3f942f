// Reasons and repairs from one run: on builds of real size against an independent dualization and the engine's own decisions, on choices
// of clauses against brute force, and cut short.
import { expect, test } from "vitest";
import { dualize } from "../../src/solver/explain/duality.js";
import { Subsets } from "../../src/solver/explain/subsets.js";
import {
  type Choice,
  type Constraint,
  decide,
  explainAll,
  type Literal,
  type Problem,
  reasons,
  reasonsAndRepairs,
  repairs,
} from "../../src/solver/index.js";
import { generateBuild, sizes, strains } from "../bench/generate.js";
import { bruteSets } from "../support/solver/brute.js";
import { Random, randomProblem, range } from "../support/solver/random.js";

type Sets = readonly (readonly string[])[];

/** Minimal sets that meet every given one, the plain way: one given set after another, what is not minimal thrown out (Berge 1989). */
function hitting(sets: Sets): string[] {
  let found: ReadonlySet<string>[] = [new Set()];
  for (const set of sets) {
    const meets = found.filter((f) => set.some((id) => f.has(id)));
    const misses = found.filter((f) => !set.some((id) => f.has(id)));
    const grown = misses.flatMap((f) => set.map((id) => new Set([...f, id])));
    found = [...meets, ...grown.filter((f) => !meets.some((m) => [...m].every((id) => f.has(id))))];
  }
  return [...new Set(found.map((f) => [...f].sort().join()))].sort();
}

const flat = (sets: Sets) => sets.map((set) => [...set].sort().join()).sort();

const cases = strains.flatMap((strain) => range(6).map((seed) => ({ strain, seed: 7000 + seed })));

test("builds: every set proven by deciding, each list all that meets the other, the same from either single task", () => {
  let refused = 0;
  for (const { strain, seed } of cases) {
    const { problem, choices, whole } = generateBuild(sizes.medium, strain, seed);
    const found = reasonsAndRepairs(problem, choices);
    expect(found.reasons).toEqual(reasons(problem, choices));
    expect(found.repairs).toEqual(repairs(problem, choices));
    expect(found.reasons.complete && found.repairs.complete).toBe(true);
    if (decide(whole).kind === "found") {
      expect(found).toMatchObject({ reasons: { sets: [] }, repairs: { sets: [[]] } });
      continue;
    }
    refused++;
    const stands = (ids: readonly string[]) =>
      decide({ ...problem, rules: [...problem.rules, ...choices.filter((c) => ids.includes(c.id)).flatMap((c) => c.rules)] }).kind ===
      "found";
    const all = choices.map((c) => c.id);
    for (const reason of found.reasons.sets) {
      expect(stands(reason)).toBe(false);
      for (const id of reason) expect(stands(reason.filter((other) => other !== id))).toBe(true);
    }
    for (const repair of found.repairs.sets) {
      const kept = all.filter((id) => !repair.includes(id));
      expect(stands(kept)).toBe(true);
      for (const id of repair) expect(stands([...kept, id])).toBe(false);
    }
    expect(hitting(found.reasons.sets)).toEqual(flat(found.repairs.sets));
    expect(hitting(found.repairs.sets)).toEqual(flat(found.reasons.sets));
  }
  expect(refused).toBeGreaterThan(5);
});

test("large builds: each list is all that meets the other", () => {
  for (const seed of [2000, 2004]) {
    const { problem, choices } = generateBuild(sizes.large, "over", seed);
    const found = reasonsAndRepairs(problem, choices);
    expect(found.reasons.complete).toBe(true);
    expect(hitting(found.repairs.sets)).toEqual(flat(found.reasons.sets));
  }
});

test("choices made of clauses agree with brute force", () => {
  let refused = 0;
  for (const seed of range(300)) {
    const random = new Random(40_000 + seed);
    const problem: Problem = randomProblem(random);
    const literal = (): Literal => {
      const variable = random.int(0, problem.variables.length - 1);
      return { variable, values: range(problem.variables[variable]!.size).filter(() => random.next() < 0.4) };
    };
    const rule = (): Constraint => {
      const kind = random.pick(["unary", "clause", "forbid"] as const);
      return kind === "unary" ? { kind, ...literal() } : { kind, literals: range(random.int(1, 3)).map(literal) };
    };
    const choices: Choice[] = range(random.int(1, 7)).map((i) => ({ id: `c${i}`, rules: range(random.int(1, 2)).map(rule) }));
    const truth = bruteSets(problem, choices);
    if (truth.reasons.length > 0) refused++;
    const found = reasonsAndRepairs(problem, choices);
    expect(flat(found.reasons.sets)).toEqual(flat(truth.reasons));
    expect(flat(found.repairs.sets)).toEqual(flat(truth.repairs));
  }
  expect(refused).toBeGreaterThan(60);
});

test("questions put off change nothing once all are answered", () => {
  for (const seed of [2000, 2004]) {
    const { problem, choices } = generateBuild(sizes.large, "over", seed);
    const lists = [1, 30, Number.POSITIVE_INFINITY].map((share) => {
      const groups = choices.map((c) => c.rules);
      const found = dualize(new Subsets(problem, groups), Number.POSITIVE_INFINITY, share);
      expect(found.complete).toBe(true);
      return [found.reasons, found.repairs].map((sets) => sets.map((set) => set.join()).sort());
    });
    for (const list of lists) expect(list).toEqual(lists[0]);
  }
});

test("cut short: what is listed belongs to the full lists, and not complete is said", () => {
  const { problem, choices } = generateBuild(sizes.large, "over", 2004);
  const full = reasonsAndRepairs(problem, choices);
  const [why, cure] = [flat(full.reasons.sets), flat(full.repairs.sets)];
  expect(why.length).toBeGreaterThan(20);
  let [cuts, shown] = [0, 0];
  for (const steps of [0, 1, 100, 1000, 3000, 6000, 100_000]) {
    const cut = reasonsAndRepairs(problem, choices, { steps });
    expect(cut.reasons.complete).toBe(cut.repairs.complete);
    for (const set of flat(cut.reasons.sets)) expect(why).toContain(set);
    for (const set of flat(cut.repairs.sets)) expect(cure).toContain(set);
    if (cut.reasons.complete) expect(cut).toEqual(full);
    else cuts++;
    shown += cut.reasons.sets.length;
  }
  expect(cuts).toBeGreaterThan(1);
  expect(shown).toBeGreaterThan(0);
});

test("a limit gives the shortest explanations first", () => {
  const { problem, choices } = generateBuild(sizes.large, "over", 2004);
  const named = choices.flatMap((c) => c.rules.map((r): Constraint => ({ ...r, id: c.id })));
  const ruled: Problem = { ...problem, rules: [...named, ...problem.rules.map(({ id: _, ...rule }): Constraint => rule)] };
  const full = explainAll(ruled).sets.map((set) => set.length);
  expect(full.length).toBeGreaterThan(20);
  for (const limit of [1, 2, 10, full.length - 1]) {
    const some = explainAll(ruled, [], { limit });
    expect(some.sets.map((set) => set.length)).toEqual(full.slice(0, limit));
    expect(some.complete).toBe(false);
  }
});
