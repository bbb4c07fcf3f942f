// What is worth finding out: the missing facts behind unknown verdicts over a part of the matrix, those that settle most first.
// A fact settles a cell when knowing it alone could make the cell certain; else it is one of several that would be needed.

import { allOf, type Catalogue } from "../../catalogue/index.js";
import { compile, forbids, type Unsettled, withRules } from "../../encoding/index.js";
import { resolveBuild } from "../../machine/index.js";
import { itemAt } from "../../records/index.js";
import { type Budget, decide } from "../../solver/index.js";
import type { Ref } from "../answer/answer.js";
import { verdictOf } from "../answer/verdict.js";
import { type CellQuestion, cellBuild } from "./cell.js";

export interface OpenFact {
  readonly says: string;
  /** How to find it out: what to measure, which marking to read. */
  readonly how: string;
  /** Where it is missing: the places to fill in. */
  readonly refs: readonly Ref[];
  /** Cells it could settle alone. */
  readonly settles: readonly CellQuestion[];
  /** Cells in which it decides only together with others. */
  readonly among: readonly CellQuestion[];
}

export function openFacts(catalogue: Catalogue, cells: Iterable<CellQuestion>, budget: Budget = { steps: 100_000 }): OpenFact[] {
  const found = new Map<string, { said: Unsettled; refs: readonly Ref[]; settles: CellQuestion[]; among: CellQuestion[] }>();
  for (const q of cells) {
    const asked = resolveBuild(catalogue, cellBuild(q), { narrow: true });
    if (asked.kind !== "question") continue;
    const compiled = compile(asked.question);
    if (compiled.unsettled.length === 0 || verdictOf(compiled, budget) !== "unknown") continue;
    for (const [key, group] of byMissing(catalogue, compiled.unsettled)) {
      const others = compiled.unsettled.filter((u) => !group.drafts.includes(u)).flatMap((u) => forbids(u.when));
      const alone = decide(withRules(compiled.possible, others), budget).kind === "found";
      const fact = found.get(key) ?? { said: itemAt(group.drafts, 0), refs: group.refs, settles: [], among: [] };
      found.set(key, fact);
      (alone ? fact.settles : fact.among).push(q);
    }
  }
  return [...found.values()]
    .map(({ said, refs, settles, among }) => ({ says: said.fact.says, how: said.how, refs, settles, among }))
    .sort((a, b) => b.settles.length - a.settles.length || b.among.length - a.among.length || a.says.localeCompare(b.says));
}

/** Drafts that hang on one place in the records hang on one fact, in however many words they say so. */
function byMissing(catalogue: Catalogue, drafts: readonly Unsettled[]) {
  const out = new Map<string, { readonly refs: readonly Ref[]; readonly drafts: Unsettled[] }>();
  for (const draft of drafts) {
    const missing = draft.fact.refs.filter((r) => isMissing(catalogue, r));
    const refs = missing.length > 0 ? missing : draft.fact.refs;
    const key = refs.length > 0 ? refs.map((r) => `${r.kind}/${r.id}${r.pointer}`).join(" ") : draft.fact.says;
    const group = out.get(key);
    if (group) group.drafts.push(draft);
    else out.set(key, { refs, drafts: [draft] });
  }
  return out;
}

/** The place holds an unknown, or something with an unknown directly in it; a conflict is missing its settlement. */
function isMissing(catalogue: Catalogue, { kind, id, pointer }: Ref): boolean {
  let value: unknown = allOf(catalogue, kind).get(id);
  if (kind === "conflict") return (value as { status?: string } | undefined)?.status === "suspected";
  for (const step of pointer.split("/").slice(1)) value = (value as Record<string, unknown> | undefined)?.[step.replaceAll("~1", "/")];
  if (unknownFact(value)) return true;
  return typeof value === "object" && value !== null && Object.values(value).some(unknownFact);
}

function unknownFact(value: unknown): boolean {
  return value === "unknown" || (typeof value === "object" && value !== null && (value as { is?: unknown }).is === "unknown");
}
