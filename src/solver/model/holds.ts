// Whether a complete assignment keeps a rule: the meaning of each rule kind in its plainest form. Everything else in this room is a
// faster way to the same answer.
import type { Constraint, Literal, Occupier, Problem, Solution } from "./problem.js";

export function holds(rule: Constraint, solution: Solution): boolean {
  const is = ({ variable, values }: Literal) => values.includes(solution[variable]!);
  switch (rule.kind) {
    case "unary":
      return is(rule);
    case "forbid":
      return !rule.literals.every(is);
    case "clause":
      return rule.literals.some(is);
    case "table":
      return rule.rows.some((row) => row.every((value, i) => solution[rule.variables[i]!] === value));
    case "allDifferent":
      return rule.variables.every((v, i) =>
        rule.variables.slice(i + 1).every((w) => solution[v] !== solution[w] || (rule.except ?? []).includes(solution[v]!)),
      );
    case "cardinality":
      return within(rule.variables.filter((v) => rule.values.includes(solution[v]!)).length, rule.min, rule.max);
    case "linear":
      return within(
        rule.terms.reduce((sum, { variable, weights }) => sum + (weights[solution[variable]!] ?? 0), 0),
        rule.min,
        rule.max,
      );
    case "disjoint":
      return rule.occupiers.every((one, i) =>
        rule.occupiers.slice(i + 1).every((two) => !overlap(windowsOf(one, solution), windowsOf(two, solution))),
      );
  }
}

/** Whether every rule of a problem holds, every value being one the variable has. */
export function solves(problem: Problem, solution: Solution): boolean {
  return (
    problem.variables.every((v, i) => solution[i]! >= 0 && solution[i]! < v.size) && problem.rules.every((rule) => holds(rule, solution))
  );
}

type Windows = Occupier["windows"][number];

const windowsOf = (occupier: Occupier, solution: Solution): Windows => occupier.windows[solution[occupier.variable]!] ?? [];

const within = (n: number, min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY): boolean => n >= min && n <= max;

/** Whether two lists of runs have a whole number in common. */
export function overlap(one: Windows, two: Windows): boolean {
  for (const [from, to] of one) for (const [start, end] of two) if (from <= end && start <= to) return true;
  return false;
}
