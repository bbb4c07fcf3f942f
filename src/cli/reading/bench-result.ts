// From a build and what a bench test showed to a tested build. A tested build says exactly what stood on the bench, so every
// hole must be filled: by the build itself or by the combination that was built. Nothing is guessed.
import type { Combination } from "../../planning/index.js";
import type { Board, Build, BuildCard, Result } from "../../records/index.js";

/** What the build leaves open, in words. */
export function holesOf(build: Build, board: Board | undefined, settingsOf: (card: string) => readonly string[]): readonly string[] {
  const holes: string[] = [];
  if (build.revision === undefined || (Array.isArray(build.revision) && build.revision.length > 1)) holes.push("the board's revision");
  if (build.memory === undefined && board?.memory) holes.push("the memory fitted");
  const modes = build.modes ?? [{ id: "the one mode" }];
  for (const mode of modes) if (!("firmware" in mode) || mode.firmware === undefined) holes.push(`the firmware version of ${mode.id}`);
  for (const card of build.cards) {
    const name = card.as ?? card.card;
    if (card.slot === undefined) holes.push(`the slot of ${name}`);
    const open = settingsOf(card.card).filter((setting) => card.settings?.[setting] === undefined);
    if (open.length > 0) holes.push(`${open.join(", ")} of ${name}`);
  }
  return holes;
}

/** The build with every hole filled as the combination stands. */
export function filled(build: Build, combination: Combination): Build {
  const placed = new Map(combination.cards.map((card) => [card.as, card]));
  const cards = build.cards.map((card): BuildCard => {
    const as = placed.get(card.as ?? card.card);
    if (!as) return card;
    const settings = Object.keys(as.settings).length > 0 ? { ...as.settings } : card.settings;
    return { ...card, ...(as.revision === "" ? {} : { revision: as.revision }), slot: as.slot, ...(settings ? { settings } : {}) };
  });
  const named = new Map((build.modes ?? []).map((mode) => [mode.id, mode]));
  const modes = combination.modes.map((mode) => ({ ...(named.get(mode.id) ?? { id: mode.id }), firmware: mode.firmware }));
  return {
    ...build,
    revision: combination.revision,
    ...(!combination.memory ? {} : { memory: combination.memory }),
    firmware: combination.firmwareFamily,
    cards,
    modes,
  };
}

/** A tested build. What the owner had at hand and how the machine stood before belong to the question, not to the test. */
export function testedBuild(build: Build, id: string, name: string | undefined, result: Result): Build {
  const { at_hand: _, stands: __, ...rest } = build;
  return { ...rest, id, name: name ?? `${build.name}, tested ${result.date}`, result };
}

/** The modes' outcomes together: all worked, all failed, or partly. */
export function overall(outcomes: readonly Result["outcome"][]): Result["outcome"] | undefined {
  if (outcomes.length === 0) return undefined;
  if (outcomes.every((outcome) => outcome === "worked")) return "worked";
  return outcomes.every((outcome) => outcome === "failed") ? "failed" : "partly";
}
