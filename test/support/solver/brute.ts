// The slow, obvious twin: tries every assignment and asks each rule whether it holds. Its reading of the rules is its own, so that a
// mistake in the engine's cannot hide here.
import type { Choice, Constraint, Cost, Problem, Solution } from "../../../src/solver/index.js";

export function bruteSolutions(problem: Problem): Solution[] {
  const out: Solution[] = [];
  const current: number[] = [];
  const go = (v: number): void => {
    if (v === problem.variables.length) {
      if (problem.rules.every((rule) => keeps(rule, current))) out.push([...current]);
      return;
    }
    for (let value = 0; value < problem.variables[v]!.size; value++) {
      current[v] = value;
      go(v + 1);
    }
  };
  go(0);
  return out;
}

function keeps(rule: Constraint, s: Solution): boolean {
  switch (rule.kind) {
    case "unary":
      return rule.values.indexOf(s[rule.variable]!) >= 0;
    case "forbid": {
      for (const l of rule.literals) if (!new Set(l.values).has(s[l.variable]!)) return true;
      return false;
    }
    case "clause": {
      for (const l of rule.literals) if (new Set(l.values).has(s[l.variable]!)) return true;
      return false;
    }
    case "table":
      return new Set(rule.rows.map((r) => r.join())).has(rule.variables.map((v) => s[v]).join());
    case "allDifferent": {
      const private_ = rule.variables.map((v) => s[v]!).filter((value) => !(rule.except ?? []).includes(value));
      return new Set(private_).size === private_.length;
    }
    case "cardinality": {
      let n = 0;
      for (const v of rule.variables) if (rule.values.includes(s[v]!)) n++;
      return n >= (rule.min ?? 0) && n <= (rule.max ?? rule.variables.length);
    }
    case "linear": {
      let n = 0;
      for (const t of rule.terms) n += t.weights[s[t.variable]!]!;
      return (rule.min === undefined || n >= rule.min) && (rule.max === undefined || n <= rule.max);
    }
    case "disjoint": {
      const taken = new Map<number, number>();
      for (const [i, o] of rule.occupiers.entries()) {
        for (const [from, to] of o.windows[s[o.variable]!]!) {
          for (let x = from; x <= to; x++) {
            if (taken.has(x) && taken.get(x) !== i) return false;
            taken.set(x, i);
          }
        }
      }
      return true;
    }
  }
}

/**
 * The costs of the k cheapest solutions that differ on `project`, by trying everything: variable by variable, each rule asked as soon as
 * its last variable has a value. Follows where writing down all solutions would not.
 */
export function bruteLeast(problem: Problem, cost: Cost, k = 1, project = problem.variables.map((_, v) => v)): number[] {
  const due = problem.variables.map((_, v) => problem.rules.filter((rule) => Math.max(...variablesOf(rule), 0) === v));
  const weight = problem.variables.map((_, v) => cost.terms.filter((t) => t.variable === v));
  const sure = problem.variables.map((_, v) =>
    weight
      .slice(v + 1)
      .flat()
      .reduce((n, t) => n + Math.min(...t.weights), 0),
  );
  const best = new Map<string, number>();
  const current: number[] = [];
  let enough = Number.POSITIVE_INFINITY;
  const go = (v: number, soFar: number): void => {
    if (v === problem.variables.length) {
      const key = project.map((p) => current[p]).join();
      best.set(key, Math.min(soFar, best.get(key) ?? soFar));
      if (best.size >= k) enough = [...best.values()].sort((a, b) => a - b)[k - 1]!;
      return;
    }
    for (let value = 0; value < problem.variables[v]!.size; value++) {
      current[v] = value;
      const cost = weight[v]!.reduce((n, t) => n + t.weights[value]!, soFar);
      if (cost + sure[v]! < enough && due[v]!.every((rule) => keeps(rule, current))) go(v + 1, cost);
    }
  };
  go(0, 0);
  return [...best.values()].sort((a, b) => a - b).slice(0, k);
}

function variablesOf(rule: Constraint): number[] {
  switch (rule.kind) {
    case "unary":
      return [rule.variable];
    case "forbid":
    case "clause":
      return rule.literals.map((l) => l.variable);
    case "linear":
      return rule.terms.map((t) => t.variable);
    case "disjoint":
      return rule.occupiers.map((o) => o.variable);
    default:
      return [...rule.variables];
  }
}

export function bruteCost(cost: Cost, s: Solution): number {
  return cost.terms.reduce((n, t) => n + t.weights[s[t.variable]!]!, 0);
}

/** All minimal sets of choices that cannot stand together, and all minimal sets to give up, by trying every subset. */
export function bruteSets(problem: Problem, choices: readonly Choice[]): { reasons: string[][]; repairs: string[][] } {
  const n = choices.length;
  const solutions = bruteSolutions(problem);
  const kept = solutions.map((s) => choices.reduce((mask, c, i) => (c.rules.every((r) => keeps(r, s)) ? mask | (1 << i) : mask), 0));
  const stands = (mask: number) => kept.some((k) => (k & mask) === mask);
  const reasons: number[] = [];
  const repairs: number[] = [];
  for (let mask = 0; mask < 1 << n; mask++) {
    const smaller = [...Array(n).keys()].filter((i) => mask & (1 << i)).map((i) => mask & ~(1 << i));
    if (!stands(mask) && smaller.every(stands)) reasons.push(mask);
    const rest = (1 << n) - 1 - mask;
    if (stands(rest) && smaller.every((m) => !stands((1 << n) - 1 - m))) repairs.push(mask);
  }
  const names = (mask: number) => choices.filter((_, i) => mask & (1 << i)).map((c) => c.id);
  return { reasons: reasons.map(names), repairs: repairs.map(names) };
}
