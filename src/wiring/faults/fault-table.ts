// The fault table: every fault simulated at every position, grouped by what is seen, with what tells twins apart and the one
// further observation that would tell most.

import { itemAt } from "../../records/index.js";
import { separate } from "../bench-test/measure.js";
import { suggest } from "../bench-test/suggest.js";
import type { BuiltModel } from "../simulate/build-model.js";
import { stateAt } from "../simulate/model.js";
import { keyOf, observationText, observe } from "../simulate/observe.js";
import type { FaultGroup, FaultTable, Observation } from "../types.js";
import type { FaultCase } from "./fault-case.js";

export function faultTable(built: BuiltModel, cases: readonly FaultCase[], pointName: (node: number) => string | undefined): FaultTable {
  const { model, good } = built;
  const positions = model.positions.flatMap((_, p) => (model.modeAt[p] === undefined ? [] : [p]));
  const planned = observe(built, good, positions);
  const plannedKey = keyOf(planned);
  const groups = new Map<string, { seen: Observation[]; cases: FaultCase[] }>();
  const silent: FaultCase[] = [];
  const base: string[] = [];
  for (const c of cases) {
    const seen = observe(built, c.variant, positions);
    const key = keyOf(seen);
    base.push(key);
    if (key === plannedKey) silent.push(c);
    else {
      const group = groups.get(key) ?? { seen, cases: [] };
      groups.set(key, group);
      group.cases.push(c);
    }
  }
  const made = [...groups.values()]
    .map(({ seen, cases: of }): FaultGroup => {
      const marked = seen.map((o, i) => ({ ...o, differs: keyOf([o]) !== keyOf([itemAt(planned, i)]) }));
      return {
        seen: marked,
        mayLookRight: marked.every((o, i) => mayLook(o, itemAt(planned, i))),
        harm: harmOf(built, of, positions),
        says: marked.flatMap((o) => (o.differs ? [`${o.position}: ${observationText(built, o)}`] : [])).join("; "),
        faults: of.map((c) => c.fault),
        ...separate(built, of, positions, pointName),
      };
    })
    .sort((a, b) => differing(a) - differing(b) || (a.says < b.says ? -1 : 1));
  const doubtful = made.filter((g) => g.mayLookRight).reduce((sum, g) => sum + g.faults.length, 0);
  const alone = made.filter((g) => g.faults.length === 1).length;
  const shown = cases.length - silent.length;
  const apart = shown - made.reduce((sum, g) => sum + g.twins.flat().length, 0);
  const says =
    cases.length === 0
      ? "There is nothing to mistake here."
      : `Of ${cases.length} faults simulated, ${shown} show at some position, in ${made.length} different ways. ` +
        `${alone} are known from what is seen alone, ${apart} with the measurements given; the other ${shown - apart} have a twin that no meter tells apart. ` +
        `${silent.length} change nothing that is seen.` +
        (doubtful === 0 ? "" : ` ${doubtful} may look like the good build, as no record says what their cards do then.`);
  const suggestion = suggest(built, cases, base, plannedKey, positions, made.length, pointName);
  return {
    groups: made,
    silent: silent.map((c) => c.fault),
    faults: cases.length,
    alone,
    apart,
    distinct: made.length,
    says,
    ...(suggestion ? { suggestion } : {}),
  };
}

/** The same firmware, and cards that answer for certain or perhaps make up those that should. */
function mayLook(seen: Observation, planned: Observation): boolean {
  const perhaps = new Set([...seen.answers, ...seen.unsure]);
  return (
    seen.shows === planned.shows &&
    seen.answers.every((card) => planned.answers.includes(card)) &&
    planned.answers.every((card) => perhaps.has(card))
  );
}

function harmOf(built: BuiltModel, cases: readonly FaultCase[], positions: readonly number[]): string[] {
  const judged = cases.flatMap((c) => positions.map((p) => built.judge?.(stateAt(built.model, c.variant, p))));
  return [...new Set(judged.flatMap((j) => (j?.verdict === "ruled-out" ? j.says : [])))];
}

function differing(group: FaultGroup): number {
  return group.seen.filter((o) => o.differs).length;
}
