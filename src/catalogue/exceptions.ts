// Exceptions: a record may be allowed a breach of a rule, with a reason. Once it is no longer needed, or its
// time is up, the exception itself becomes a finding, so that none outlives its reason.
import { type Finding, type Kind, kinds, nearest } from "../records/index.js";
import { allOf, type Catalogue } from "./catalogue.js";
import { placeOf, ref } from "./ref.js";
import type { Draft, Told } from "./rule.js";

/** Findings of what was told, without those a record is allowed to have, and with exceptions that went stale. */
export function applyExceptions(catalogue: Catalogue, told: readonly Told[], rules: readonly string[], today?: string): readonly Finding[] {
  const used = new Set<string>();
  const out: Finding[] = [];
  for (const { rule, draft } of told) {
    const { kind, id } = draft.at;
    const allow = allOf(catalogue, kind).get(id)?.allow ?? [];
    const i = allow.findIndex((a) => a.rule === rule);
    const entry = allow[i];
    if (!entry) out.push(findingOf(catalogue, rule, draft));
    else {
      used.add(`${kind}/${id}/${i}`);
      if (!over(entry.until, today)) continue;
      const related = [
        ...(draft.related ?? []),
        { says: `It was allowed until ${entry.until}: ${entry.reason}`, at: ref(kind, id, "allow", i, "until") },
      ];
      out.push(findingOf(catalogue, rule, { ...draft, related }));
    }
  }
  return [...out, ...stale(catalogue, used, rules)];
}

/** Looks up the places of a draft. */
export function findingOf(catalogue: Catalogue, rule: string, draft: Draft): Finding {
  const { at, on, level, related, ...rest } = draft;
  return {
    code: `rule-${rule}`,
    level: level ?? "error",
    ...rest,
    at: placeOf(catalogue, at, { on }),
    ...(related ? { related: related.map((r) => ({ says: r.says, at: placeOf(catalogue, r.at) })) } : {}),
  };
}

/** The last day counts: until 1991-05 means to the end of May. */
function over(until: string | undefined, today: string | undefined): boolean {
  return until !== undefined && today !== undefined && today.slice(0, until.length) > until;
}

function* stale(catalogue: Catalogue, used: ReadonlySet<string>, rules: readonly string[]): Iterable<Finding> {
  for (const kind of Object.keys(kinds) as Kind[]) {
    for (const record of allOf(catalogue, kind).values()) {
      for (const [i, { rule }] of (record.allow ?? []).entries()) {
        const at = ref(kind, record.id, "allow", i, "rule");
        if (!rules.includes(rule)) {
          const near = nearest(rule, rules);
          yield findingOf(catalogue, "stale-exception", {
            says: `There is no house rule ${rule}, so there can be no exception to it.`,
            at,
            actual: rule,
            hint: near ? `Did you mean ${near}?` : "Name the rule as the finding does, without rule-.",
          });
        } else if (!used.has(`${kind}/${record.id}/${i}`)) {
          yield findingOf(catalogue, "stale-exception", {
            says: `The exception to ${rule} is no longer needed: the record keeps the rule.`,
            at,
            hint: "Take the exception out.",
          });
        }
      }
    }
  }
}
