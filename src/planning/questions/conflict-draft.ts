// A conflict record drafted from a failure on the bench: every condition the tested build names is kept, what the keeper must find out is
// said in words. A condition that does not matter is easily taken out; one that was never written down is missed by nobody.
import { type Catalogue, cardsOn, modesOf } from "../../catalogue/index.js";
import { type Build, type BuildCard, type Conflict, definedFields, type Mode } from "../../records/index.js";

/** Suspected, never more: one failure on one bench proves nothing about the cause. */
export function draftConflict(catalogue: Catalogue, build: Build): Conflict {
  const { result } = build;
  const notWorking = (result?.modes ?? []).filter((m) => m.outcome !== "worked");
  const symptoms = [...(result?.symptoms ?? []), ...notWorking.flatMap((m) => m.symptoms ?? [])];
  const modes = modesOf(build);
  const named = modes.filter((m) => notWorking.some((n) => n.mode === m.id));
  const failing = named.length > 0 ? named : modes;
  return {
    id: `${build.id}-failure`.slice(0, 80),
    name: `What made ${build.name} fail`,
    class: "timing",
    when: {
      boards: [boardCondition(build)],
      ...firmwareCondition(catalogue, build, failing),
      cards: build.cards.map((c) => cardCondition(c, failing, build.cards)),
      ...(build.memory === undefined ? {} : { memory_at_least: build.memory, memory_at_most: build.memory }),
      ...(modes.length > 1 ? { modes_at_least: modes.length } : {}),
    },
    effect: "blocks",
    symptoms: symptoms.length > 0 ? symptoms : ["Say what was seen, in the words people would search for."],
    cause: "Not known yet. Take out conditions above that do not matter, then say why it happens.",
    status: "suspected",
    settle: "Change one thing at a time from this build and say which change makes it work.",
    evidence: [
      definedFields({ grade: "bench" as const, says: `Seen in ${build.name}.`, by: result?.by, date: result?.date, build: build.id }),
    ],
  };
}

function boardCondition({ board, revision }: Build): NonNullable<Conflict["when"]["boards"]>[number] {
  if (revision === undefined) return { board };
  return { board, revisions: typeof revision === "string" ? [revision] : [...revision] };
}

/** The versions of the modes that failed; of a mode that names none, every version of the family. */
function firmwareCondition(catalogue: Catalogue, build: Build, failing: readonly Mode[]): Pick<Conflict["when"], "firmware"> {
  const family = build.firmware ?? catalogue.boards.get(build.board)?.firmware[0];
  const versions = [...new Set(failing.map((m) => m.firmware))];
  if (family === undefined || versions.every((v) => v === undefined)) return {};
  const only = versions.filter((v) => v !== undefined);
  return { firmware: [only.length < versions.length ? { family } : { family, only }] };
}

/** A card that was off in a mode that failed is a condition too: it keeps its slot and its current. */
function cardCondition(
  card: BuildCard,
  failing: readonly Mode[],
  all: readonly BuildCard[],
): NonNullable<Conflict["when"]["cards"]>[number] {
  return {
    card: card.card,
    ...(card.revision === undefined ? {} : { revisions: [card.revision] }),
    ...(card.settings ? { settings: { ...card.settings } } : {}),
    ...(card.slot === undefined ? {} : { slots: [card.slot] }),
    ...(failing.every((m) => cardsOn(all, m).includes(card)) ? {} : { even_disabled: true }),
  };
}
