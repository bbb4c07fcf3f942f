// A conflict record drafted from a failure on the bench: what is known is filled in, what the keeper must find out is said in words.
import type { Build, Conflict } from "../../records/index.js";

/** Suspected, never more: one failure on one bench proves nothing about the cause. */
export function draftConflict(build: Build): Conflict {
  const result = build.result!;
  const failed = result.modes?.filter((m) => m.outcome !== "worked") ?? [];
  const symptoms = [...(result.symptoms ?? []), ...failed.flatMap((m) => m.symptoms ?? [])];
  const versions = (build.modes ?? [])
    .filter((m) => failed.length === 0 || failed.some((f) => f.mode === m.id))
    .flatMap((m) => m.firmware ?? []);
  const revisions = build.revision === undefined ? undefined : typeof build.revision === "string" ? [build.revision] : [...build.revision];
  const family = build.firmware;
  return {
    id: `${build.id}-failure`.slice(0, 80),
    name: `What made ${build.name} fail`,
    class: "timing",
    when: {
      boards: [{ board: build.board, ...(revisions ? { revisions } : {}) }],
      ...(family && versions.length > 0 ? { firmware: [{ family, only: [...new Set(versions)] }] } : {}),
      cards: build.cards.map((c) => ({
        card: c.card,
        ...(c.revision ? { revisions: [c.revision] } : {}),
        ...(c.settings ? { settings: { ...c.settings } } : {}),
      })),
    },
    effect: "blocks",
    symptoms: symptoms.length > 0 ? symptoms : ["Say what was seen, in the words people would search for."],
    cause: "Not known yet. Take out conditions above that do not matter, then say why it happens.",
    status: "suspected",
    settle: "Change one thing at a time from this build and say which change makes it work.",
    evidence: [{ grade: "bench", says: `Seen in ${build.name}.`, by: result.by, date: result.date, build: build.id }],
  };
}
