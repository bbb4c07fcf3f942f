// Conflicts that are said to explain a result are about the cards, board or firmware of that build.
import { type Build, bytes, type Conflict } from "../../records/index.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const resultConflicts: Rule = {
  name: "result-conflicts",
  says: "A conflict that explains a result could arise in that build.",
  why: "A conflict about another machine explains nothing, and the failure stays unexplained.",
  mend: "Name the conflict that could arise in this build, or correct the conditions of the conflict.",
  scope: ["build", "conflict"],
  *check({ catalogue }): Iterable<Draft> {
    for (const build of catalogue.builds.values()) {
      for (const [i, id] of (build.result?.conflicts ?? []).entries()) {
        const conflict = catalogue.conflicts.get(id);
        const why = conflict && cannot(conflict, build);
        if (!why) continue;
        yield {
          says: `${conflict.name} cannot explain this result: ${why[0]}.`,
          at: ref("build", build.id, "result", "conflicts", i),
          related: [{ says: "Its condition.", at: ref("conflict", id, "when", why[1]) }],
          hint: "Name another conflict, or correct its condition or this build.",
        };
      }
    }
    for (const conflict of catalogue.conflicts.values()) {
      for (const [i, e] of conflict.evidence.entries()) {
        const build = e.build === undefined ? undefined : catalogue.builds.get(e.build);
        if (!build) continue;
        const at = ref("conflict", conflict.id, "evidence", i, "build");
        const related = [{ says: "The build.", at: ref("build", build.id, "id") }];
        if (!build.result) {
          yield {
            says: `${build.id} is no evidence: it carries no bench result.`,
            at,
            related,
            hint: "Add the result to the build, or name a tested build.",
          };
          continue;
        }
        // What shows a conflict to be no conflict may well be another machine.
        const why = conflict.status === "disproved" ? undefined : cannot(conflict, build);
        if (why)
          yield {
            says: `${build.id} cannot show this conflict: ${why[0]}.`,
            at,
            related,
            hint: "Name another build, or correct the condition.",
          };
      }
    }
  },
};

/** Why a conflict cannot arise in a build, as far as the build says; what it leaves open may be. */
function cannot(
  conflict: Conflict,
  build: Build,
): readonly [says: string, field: "boards" | "cards" | "firmware" | "memory_at_least" | "memory_at_most"] | undefined {
  const { when } = conflict;
  const revisions = build.revision === undefined ? undefined : typeof build.revision === "string" ? [build.revision] : build.revision;
  if (
    when.boards &&
    !when.boards.some((m) => m.board === build.board && (!m.revisions || !revisions || m.revisions.some((r) => revisions.includes(r))))
  )
    return ["it is about another board or revision", "boards"];
  for (const c of when.cards ?? []) {
    const mine = build.cards.filter((b) => b.card === c.card);
    if (mine.length === 0) return [`${c.card} is not in the build`, "cards"];
    const so = mine.some((m) =>
      Object.entries(c.settings ?? {}).every(
        ([s, wanted]) =>
          m.settings?.[s] === undefined || wanted === m.settings[s] || (typeof wanted !== "string" && wanted.includes(m.settings[s])),
      ),
    );
    if (!so) return [`${c.card} is set otherwise`, "cards"];
  }
  if (build.memory !== undefined) {
    if (when.memory_at_least !== undefined && bytes(build.memory) < bytes(when.memory_at_least))
      return ["the build has less memory", "memory_at_least"];
    if (when.memory_at_most !== undefined && bytes(build.memory) > bytes(when.memory_at_most))
      return ["the build has more memory", "memory_at_most"];
  }
  return undefined;
}
