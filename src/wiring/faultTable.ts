// The fault table: every fault simulated at every position, grouped by what is seen, with what tells twins apart and the one
// further observation that would tell most.
import type { BuiltModel } from "./buildModel.js";
import type { FaultCase } from "./faultCase.js";
import { separate } from "./measure.js";
import { type RawState, rawState, shownText, stateAt, type Variant } from "./model.js";
import type { FaultGroup, FaultTable, Observation } from "./types.js";

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
      const marked = seen.map((o, i) => ({ ...o, differs: keyOf([o]) !== keyOf([planned[i]!]) }));
      return {
        seen: marked,
        says: marked.flatMap((o) => (o.differs ? [`${o.position}: ${observationText(o)}`] : [])).join("; "),
        faults: of.map((c) => c.fault),
        ...separate(built, of, positions, pointName),
      };
    })
    .sort((a, b) => differing(a) - differing(b) || (a.says < b.says ? -1 : 1));
  const alone = made.filter((g) => g.faults.length === 1).length;
  const says =
    cases.length === 0
      ? "There is nothing to mistake here."
      : `Of ${cases.length} faults simulated, ${cases.length - silent.length} show at some position, in ${made.length} different ways; ${alone} stand alone, the others are told apart by the measurements given. ${silent.length} change nothing that is seen.`;
  const suggestion = suggest(built, cases, base, positions, made.length, plannedKey);
  return {
    groups: made,
    silent: silent.map((c) => c.fault),
    faults: cases.length,
    alone,
    distinct: made.length,
    says,
    ...(suggestion ? { suggestion } : {}),
  };
}

function differing(group: FaultGroup): number {
  return group.seen.filter((o) => o.differs).length;
}

export function observe(built: BuiltModel, variant: Variant, positions: readonly number[]): Observation[] {
  const { model } = built;
  return positions.map((p) => observation(built, stateAt(model, variant, p), model.positions[p]!));
}

function observation(built: BuiltModel, raw: RawState, position: string): Observation {
  const { model } = built;
  const of = (state: string) => model.cards.flatMap((card, i) => (raw.cards[i] === state ? [card.card] : []));
  // A machine that does not start, or stands on a short, shows nothing of its cards.
  const dead = raw.short || raw.version === -1;
  const shows = model.lanes === 0 && !raw.short ? "starts" : shownText(model, raw);
  return { position, shows, answers: dead ? [] : of("on"), unsure: dead ? [] : of("undefined") };
}

export function keyOf(seen: readonly Observation[]): string {
  return JSON.stringify(seen.map((o) => [o.shows, o.answers, o.unsure]));
}

export function observationText(o: Observation): string {
  const parts = [o.shows];
  if (o.answers.length > 0) parts.push(`${o.answers.join(", ")} answer${o.answers.length === 1 ? "s" : ""}`);
  else if (o.shows !== "does not start" && o.shows !== "supply shorted") parts.push("no switched card answers");
  if (o.unsure.length > 0) parts.push(`${o.unsure.join(", ")} uncertain`);
  return parts.join(", ");
}

/** One more thing to look at for every fault; the one that makes the most faults differ is suggested. */
function suggest(
  built: BuiltModel,
  cases: readonly FaultCase[],
  base: readonly string[],
  positions: readonly number[],
  before: number,
  plannedKey: string,
): FaultTable["suggestion"] {
  const { model, good } = built;
  const extras: { says: string; of: (variant: Variant) => string }[] = model.lines.map((line, i) => ({
    says: `Measure the level of ${line.line} at the device pin at every position as well.`,
    of: (variant) => positions.map((p) => stateAt(model, variant, p).levels[i]).join(" "),
  }));
  if (built.plug.length > 0) {
    const loom = new Set(built.plug.map((p) => p.b));
    extras.push({
      says: "Start the machine once with the plug pulled as well.",
      of: (variant) => {
        const joins = variant.joins.filter(([, b]) => !loom.has(b) || !built.plug.some((p) => p.b === b));
        return keyOf([observation(built, rawState(model, { ...variant, joins }, []), "plug pulled")]);
      },
    });
  }
  let best: FaultTable["suggestion"];
  for (const extra of extras) {
    const count = new Map<string, number>();
    const goodKey = `${plannedKey}#${extra.of(good)}`;
    cases.forEach((c, i) => {
      const key = `${base[i]}#${extra.of(c.variant)}`;
      if (key !== goodKey) count.set(key, (count.get(key) ?? 0) + 1);
    });
    if (count.size > (best?.distinct ?? before)) {
      best = { says: extra.says, distinct: count.size, alone: [...count.values()].filter((n) => n === 1).length };
    }
  }
  return best;
}
