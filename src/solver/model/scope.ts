// The scope of a rule: the variables it speaks of. A variable in no scope may take any value without changing an answer.
import type { Constraint } from "./problem.js";

export function scopeOf(rule: Constraint): readonly number[] {
  switch (rule.kind) {
    case "unary":
      return [rule.variable];
    case "forbid":
    case "clause":
      return rule.literals.map((l) => l.variable);
    case "table":
    case "allDifferent":
    case "cardinality":
      return rule.variables;
    case "linear":
      return rule.terms.map((t) => t.variable);
    case "disjoint":
      return rule.occupiers.map((o) => o.variable);
    default:
      return rule satisfies never;
  }
}
