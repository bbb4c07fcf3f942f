// Divisions: which cards are on in which way. Of all that can be, only those in which no further card could be on in any way; two that
// differ in the order of their ways are one.
import { itemAt } from "../../records/index.js";
import { type Budget, type Constraint, cheapest, type Problem, type Solution } from "../../solver/index.js";
import { isOn, type OpenWays } from "./open-ways.js";

export interface Divided {
  /** One solution of each, most cards on first. */
  readonly solutions: readonly Solution[];
  /** There are no others. */
  readonly complete: boolean;
}

/** Orders of more ways than this are too many to rule out one by one. */
const mostWaysOrdered = 6;

/**
 * Up to `most` divisions, fullest first. The fullest that is left is no part of another: whatever holds more cards would be left too. Each
 * found is then ruled out with all that lies within it, in any order of its ways.
 */
export function divide(open: OpenWays, problem: Problem, most: number, budget?: Budget): Divided {
  const { modes, cards } = open.compiled.question;
  const solutions: Solution[] = [];
  let rules: readonly Constraint[] = problem.rules;
  while (solutions.length < most) {
    const { solutions: found, proven } = cheapest({ variables: problem.variables, rules }, [open.off], { k: 1 }, budget);
    const [best] = found;
    if (!best || !proven) return { solutions, complete: proven };
    solutions.push(best.solution);
    if (modes.length > mostWaysOrdered) return { solutions, complete: false };
    const rows = modes.map((_, way) => cards.map(({ as }) => holdsOn(open, best.solution, way, as)));
    const more = ordersOf(rows).map((order): Constraint => {
      const literals = order.flatMap((row, way) =>
        cards.flatMap(({ as }, at) => (row[at] ? [] : (isOn(open.compiled.frame, way, as) ?? []))),
      );
      return { kind: "clause", literals };
    });
    // Every card on in every way: nothing can hold more.
    if (more.some((rule) => rule.kind === "clause" && rule.literals.length === 0)) return { solutions, complete: true };
    rules = [...rules, ...more];
  }
  const left = cheapest({ variables: problem.variables, rules }, [open.off], { k: 1 }, budget);
  return { solutions, complete: left.proven && left.solutions.length === 0 };
}

function holdsOn({ compiled: { frame } }: OpenWays, solution: Solution, way: number, as: string): boolean {
  const on = isOn(frame, way, as);
  return on === undefined || on.values.includes(itemAt(solution, on.variable));
}

/** Every different order of the rows. */
function ordersOf(rows: readonly (readonly boolean[])[]): (readonly boolean[])[][] {
  if (rows.length === 0) return [[]];
  const seen = new Set<string>();
  return rows.flatMap((row, at) => {
    const key = row.join();
    if (seen.has(key)) return [];
    seen.add(key);
    return ordersOf(rows.filter((_, i) => i !== at)).map((rest) => [row, ...rest]);
  });
}
