// A conflict record drafted from a failure on the bench: every condition the tested build names is kept, what the keeper must find out is
// said in words. A condition that does not matter is easily taken out; one that was never written down is missed by nobody.
import { type Catalogue, cardsOn, mayBeMain, modesOf } from "../../catalogue/index.js";
import {
  type Build,
  type BuildCard,
  bytes,
  type Conflict,
  definedFields,
  listed,
  type MemoryWindow,
  type Mode,
  sizeText,
} from "../../records/index.js";

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
      ...memoryCondition(catalogue, build, failing),
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

/** The main memory there was, that of cards with that of the board; where it is not known to the byte, from the least to the most. */
function memoryCondition(
  catalogue: Catalogue,
  build: Build,
  failing: readonly Mode[],
): Pick<Conflict["when"], "memory_at_least" | "memory_at_most"> {
  if (build.memory === undefined) return {};
  const onBoard = bytes(build.memory);
  // Of a board without memory of its own the build names what there is in all.
  if (catalogue.boards.get(build.board)?.memory === "none") return { memory_at_least: build.memory, memory_at_most: build.memory };
  const amounts = failing.map((mode) => {
    const each = build.cards.map((c) => addedBy(catalogue, c, cardsOn(build.cards, mode).includes(c)));
    return { least: each.reduce((n, a) => n + a.least, onBoard), most: each.reduce((n, a) => n + a.most, onBoard) };
  });
  const least = Math.min(...amounts.map((a) => a.least));
  const most = Math.max(...amounts.map((a) => a.most));
  const written = (n: number) => (n === onBoard ? build.memory : sizeText(n));
  return definedFields({ memory_at_least: written(least), memory_at_most: written(most) });
}

/** Bytes of main memory that a card adds as it was set, at least and at most. */
function addedBy({ cards }: Catalogue, copy: BuildCard, on: boolean): { readonly least: number; readonly most: number } {
  const card = cards.get(copy.card);
  if (!card) return { least: 0, most: 0 };
  const there = (revisions: readonly string[] | undefined) =>
    !revisions || copy.revision === undefined || revisions.includes(copy.revision);
  const amount = (memory: readonly MemoryWindow[], test: (is: ReturnType<typeof mayBeMain>) => boolean) =>
    memory.reduce((sum, w) => sum + (test(mayBeMain(w)) ? bytes(w.size) : 0), 0);
  const range = (memory: readonly MemoryWindow[]) => ({
    least: amount(memory, (is) => is === "yes"),
    most: amount(memory, (is) => is !== "no"),
  });
  const fixed = listed(card.claims)
    .filter((c) => there(c.revisions))
    .map((c) => range(listed(c.memory)));
  const set = (card.settings ?? [])
    .filter((s) => there(s.revisions))
    .map((s) => {
      const at = copy.settings?.[s.id];
      const all = s.positions.filter((p) => at === undefined || p.id === at).map((p) => range(listed(p.memory)));
      return { least: Math.min(...all.map((a) => a.least)), most: Math.max(...all.map((a) => a.most)) };
    });
  const parts = [...fixed, ...set];
  const off = !on && card.enable?.releases.includes("memory") === true;
  return off ? { least: 0, most: 0 } : { least: parts.reduce((n, a) => n + a.least, 0), most: parts.reduce((n, a) => n + a.most, 0) };
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
