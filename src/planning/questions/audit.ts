// The bench audits the rules: a tested build that worked though the rules rule it out, or failed though they allow it,
// means that a record is wrong. Both places are named; nobody is believed beforehand.
import type { Catalogue } from "../../catalogue/index.js";
import { ref } from "../../encoding/index.js";
import type { Build, Conflict } from "../../records/index.js";
import type { Reason, Ref, Verdict } from "../answer/answer.js";
import { plan } from "../answer/plan.js";
import { draftConflict } from "./conflict-draft.js";

export interface Disagreement {
  readonly kind: "worked-but-ruled-out" | "failed-but-allowed";
  readonly build: string;
  readonly says: string;
  /** The tested build first, then the records that say otherwise. */
  readonly refs: readonly Ref[];
  /** The fewest records of which at least one must be wrong, the tested build among them. */
  readonly suspects: readonly Ref[];
  /** For a failure nobody has explained: a conflict record to finish. */
  readonly draft?: Conflict;
  /** The record declares why, so it is known and open. */
  readonly declared?: string | undefined;
  readonly verdict: Verdict;
}

export function auditBench(catalogue: Catalogue): Disagreement[] {
  return [...catalogue.builds.values()].flatMap((build) => (build.result ? (auditOne(catalogue, build, build.result) ?? []) : []));
}

function auditOne(catalogue: Catalogue, build: Build, result: NonNullable<Build["result"]>): Disagreement | undefined {
  const answer = plan(catalogue, build, { brief: true, most: 1 });
  if (answer.kind === "misasked") return undefined;
  const own = ref("build", build.id, "/result");
  const declared = result.open_question;
  if (result.outcome === "worked" && answer.verdict === "ruled-out") {
    const facts = answer.reasons[0]?.facts ?? [];
    return {
      kind: "worked-but-ruled-out",
      build: build.id,
      says: `It worked on the bench (${result.by}, ${result.date}), and the records rule it out: ${facts.map((f) => f.says).join(" ")}`,
      refs: [own, ...facts.flatMap((f) => f.refs)],
      suspects: [ref("build", build.id), ...fewestRecords(answer.reasons)],
      declared,
      verdict: answer.verdict,
    };
  }
  const failed = result.outcome === "failed";
  if (failed && answer.verdict === "workable" && !explained(catalogue, build)) {
    const symptoms = (result.symptoms ?? result.modes?.flatMap((m) => m.symptoms ?? []) ?? []).join("; ");
    return {
      kind: "failed-but-allowed",
      build: build.id,
      says: `It failed on the bench (${result.by}, ${result.date})${symptoms ? `: ${symptoms}` : ""}; the records find nothing against it.`,
      refs: [own, ref("board", build.board), ...build.cards.map((c) => ref("card", c.card))],
      suspects: [ref("build", build.id), ref("board", build.board), ...build.cards.map((c) => ref("card", c.card))],
      draft: draftConflict(catalogue, build),
      declared,
      verdict: answer.verdict,
    };
  }
  return undefined;
}

/** Each reason rules the build out by itself, so a wrong record must be among the records of every one; the smallest set is told. */
function fewestRecords(reasons: readonly Reason[]): Ref[] {
  const sets = reasons.map((r) => {
    const seen = new Map(r.facts.flatMap((f) => f.refs).map((x) => [`${x.kind}/${x.id}`, ref(x.kind, x.id)]));
    return [...seen.values()];
  });
  return sets.filter((s) => s.length > 0).sort((a, b) => a.length - b.length)[0] ?? [];
}

/** A conflict record that the build names and that is not disproved explains a failure. */
function explained(catalogue: Catalogue, build: Build): boolean {
  return (build.result?.conflicts ?? []).some((id) => {
    const conflict = catalogue.conflicts.get(id);
    return conflict !== undefined && conflict.status !== "disproved";
  });
}
