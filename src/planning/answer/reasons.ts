// Why nothing works: every minimal set of the owner's choices that cannot stand together, each opened down to the facts behind it.

import { type Compiled, withRules } from "../../encoding/index.js";
import { itemAt } from "../../records/index.js";
import { type Budget, type ChoiceSets, type Explanation, explain, type Problem } from "../../solver/index.js";
import type { Fact, OwnersChoice, Reason } from "./answer.js";

/** Most reasons that are opened down to their facts; the sets themselves are all given. */
const opened = 12;

export function reasonsOf(
  compiled: Compiled,
  { sets, complete }: ChoiceSets,
  budget?: Budget,
): { readonly reasons: readonly Reason[]; readonly complete: boolean } {
  return { reasons: sets.map((set, i) => reasonOf(compiled, set, i < opened, budget)), complete };
}

function reasonOf(compiled: Compiled, set: readonly string[], open: boolean, budget?: Budget): Reason {
  const chosen = compiled.choices.filter((c) => set.includes(c.id));
  const choices = chosen.map((c) => c.told);
  if (!open) return { choices, facts: [], moreFacts: "unknown", says: `${together(choices)}.` };
  const { facts, others } = factsAgainst(
    compiled,
    withRules(
      compiled.facts,
      chosen.flatMap((c) => c.rules),
    ),
    budget,
  );
  return { choices, facts, moreFacts: others, says: [together(choices), ...facts.map((f) => f.says)].join(" ") };
}

/** A smallest set of facts that leave the problem without a solution, and whether other facts do as well. The problem has the rules of `facts`. */
export function factsAgainst(
  compiled: Compiled,
  problem: Problem,
  budget?: Budget,
): { readonly facts: readonly Fact[]; readonly others: Explanation["others"] } {
  const { ids, others } = explain(problem, [], budget);
  return { facts: merge(ids.map((id) => itemAt(compiled.sure, Number(id)).fact)), others };
}

/** "Tallow bus tracer and Gannet controller cannot stand together." */
function together(choices: readonly OwnersChoice[]): string {
  const names = choices.map((c) => c.says);
  if (names.length === 0) return "This machine cannot work as its record stands.";
  if (names.length === 1) return `${names[0]}: that cannot be in this machine.`;
  return `${names.slice(0, -1).join(", ")} and ${names.at(-1)} cannot stand together.`;
}

/** Facts said in the same words are one (the same rule over several modes or settings); their records are joined. */
function merge(facts: readonly Fact[]): Fact[] {
  const bySays = new Map<string, Fact>();
  for (const f of facts) {
    const before = bySays.get(f.says);
    const refs = [...(before?.refs ?? []), ...f.refs].filter(
      (r, i, all) => all.findIndex((x) => x.kind === r.kind && x.id === r.id && x.pointer === r.pointer) === i,
    );
    bySays.set(f.says, { ...f, refs });
  }
  return [...bySays.values()];
}
