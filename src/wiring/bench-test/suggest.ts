// The one further observation that would tell the most faults apart, among those that cannot hurt: levels at the device, a meter
// between points of the machine with the power off, and a start with the plug pulled where that is a planned mode.

import type { FaultCase } from "../faults/fault-case.js";
import type { BuiltModel } from "../simulate/build-model.js";
import { isMode, rawState, solvedAt, stateAt, type Variant } from "../simulate/model.js";
import { keyOf, observation } from "../simulate/observe.js";
import type { FaultTable } from "../types.js";

interface Extra {
  readonly says: string;
  readonly of: (variant: Variant) => string;
}

export function suggest(
  built: BuiltModel,
  cases: readonly FaultCase[],
  base: readonly string[],
  plannedKey: string,
  positions: readonly number[],
  before: number,
  pointName: (node: number) => string | undefined,
): FaultTable["suggestion"] {
  let best: FaultTable["suggestion"];
  for (const extra of extras(built, positions, pointName)) {
    const count = new Map<string, number>();
    const planned = `${plannedKey}#${extra.of(built.good)}`;
    cases.forEach((c, i) => {
      const key = `${base[i]}#${extra.of(c.variant)}`;
      if (key !== planned) count.set(key, (count.get(key) ?? 0) + 1);
    });
    if (count.size > (best?.distinct ?? before)) {
      best = { says: extra.says, distinct: count.size, alone: [...count.values()].filter((n) => n === 1).length };
    }
  }
  return best;
}

function extras(built: BuiltModel, positions: readonly number[], pointName: (node: number) => string | undefined): Extra[] {
  const { model, good } = built;
  const found: Extra[] = model.lines.map((line, i) => ({
    says: `Measure the level of ${line.line} at the device pin at every position as well.`,
    of: (variant) => positions.map((p) => stateAt(model, variant, p).levels[i]).join(" "),
  }));
  const loose = new Set(built.plug.map((p) => p.b));
  const pulled = (variant: Variant) => rawState(model, { ...variant, joins: variant.joins.filter(([, b]) => !loose.has(b)) }, []);
  if (built.plug.length > 0 && model.modes.some((_, m) => isMode(model, pulled(good), m))) {
    found.push({
      says: "Start the machine once with the plug pulled as well; it must come up in a planned mode.",
      of: (variant) => keyOf([observation(built, pulled(variant), "plug pulled")]),
    });
  }
  const points = [0, ...new Set([...model.lines.flatMap((l) => l.nodes), ...model.cards.flatMap((c) => c.nodes)])].filter(
    (node) => pointName(node) !== undefined,
  );
  for (const position of positions) {
    points.forEach((a, i) => {
      for (const b of points.slice(i + 1)) {
        found.push({
          says: `Power off, device and cards out, switch at ${model.positions[position]}: measure from ${pointName(a)} to ${pointName(b)} as well.`,
          of: (variant) => {
            const { group } = solvedAt(model, variant, position);
            return group[a] === group[b] ? "joined" : "open";
          },
        });
      }
    });
  }
  return found;
}
