// Seeded random numbers and small random problems of every rule kind, for tests that compare the engine with a slow, obvious twin.
import type { Constraint, Literal, Problem, Variable } from "../../../src/solver/index.js";

/** A small counter-based generator (mulberry32): the same seed gives the same sequence everywhere. */
export class Random {
  private state: number;
  constructor(seed: number) {
    this.state = seed >>> 0;
  }
  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(this.state ^ (this.state >>> 15), 1 | this.state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }
  /** A whole number from..to, both ends included. */
  int(from: number, to: number): number {
    return from + Math.floor(this.next() * (to - from + 1));
  }
  pick<T>(from: readonly T[]): T {
    return from[this.int(0, from.length - 1)]!;
  }
  some<T>(from: readonly T[], chance: number): T[] {
    return from.filter(() => this.next() < chance);
  }
  shuffle<T>(from: readonly T[]): T[] {
    const out = [...from];
    for (let i = out.length - 1; i > 0; i--) {
      const j = this.int(0, i);
      [out[i], out[j]] = [out[j]!, out[i]!];
    }
    return out;
  }
}

export const range = (n: number): number[] => Array.from({ length: n }, (_, i) => i);

/** Up to 6 variables, at most about 5,000 assignments, so that brute force can follow. */
export function randomProblem(random: Random): Problem {
  const variables: Variable[] = [];
  let space = 1;
  for (const v of range(random.int(1, 6))) {
    const size = random.next() < 0.03 ? random.int(33, 40) : random.int(1, 6);
    if (space * size > 5000) break;
    space *= size;
    variables.push({ name: `v${v}`, size });
  }
  const rules = range(random.int(0, 9)).map(() => randomRule(random, variables));
  return { variables, rules };
}

export function randomRule(random: Random, variables: readonly Variable[]): Constraint {
  const some = (least: number): number[] => {
    const all = random.shuffle(range(variables.length));
    return all.slice(0, Math.max(Math.min(least, all.length), random.int(1, all.length)));
  };
  const values = (v: number, chance: number) => random.some(range(variables[v]!.size), chance);
  const literals = (chance: number): Literal[] =>
    some(1)
      .slice(0, 4)
      .map((variable) => ({ variable, values: values(variable, chance) }));
  const widest = Math.max(...variables.map((v) => v.size));
  const id = random.next() < 0.7 ? { id: `r${random.int(0, 9)}` } : {};
  switch (random.int(0, 7)) {
    case 0: {
      const variable = random.int(0, variables.length - 1);
      return { ...id, kind: "unary", variable, values: values(variable, 0.8) };
    }
    case 1:
      return { ...id, kind: "forbid", literals: literals(0.4) };
    case 2:
      return { ...id, kind: "clause", literals: literals(0.4) };
    case 3: {
      const among = some(1).slice(0, 3);
      const rows = range(random.int(0, 30)).map(() => among.map((v) => random.int(0, variables[v]!.size - 1)));
      return { ...id, kind: "table", variables: among, rows };
    }
    case 4:
      return {
        ...id,
        kind: "allDifferent",
        variables: some(2),
        ...(random.next() < 0.5 ? { except: random.some(range(widest), 0.3) } : {}),
      };
    case 5: {
      const among = some(2);
      const min = random.next() < 0.5 ? { min: random.int(0, 2) } : {};
      const max = random.next() < 0.7 ? { max: random.int(0, among.length) } : {};
      return { ...id, kind: "cardinality", variables: among, values: random.some(range(widest), 0.5), ...min, ...max };
    }
    case 6: {
      const terms = some(2).map((variable) => ({ variable, weights: range(variables[variable]!.size).map(() => random.int(-3, 9)) }));
      const min = random.next() < 0.4 ? { min: random.int(-2, 8) } : {};
      return { ...id, kind: "linear", terms, ...min, max: random.int(2, 18) };
    }
    default: {
      const occupiers = some(2).map((variable) => ({
        variable,
        windows: range(variables[variable]!.size).map(() =>
          range(random.int(0, 2)).map((): readonly [number, number] => {
            const from = random.int(0, 12);
            return [from, from + random.int(0, 3)];
          }),
        ),
      }));
      return { ...id, kind: "disjoint", occupiers };
    }
  }
}
