// From a build and what a bench test showed to a tested build. A tested build says exactly what stood on the bench, so every
// hole must be filled: by the build itself or by the combination that was built. Nothing is guessed.
import { cardsOnOrOff, copyName, mainMemory } from "../../catalogue/index.js";
import type { Board, Build, Result } from "../../records/index.js";

/** What the build leaves open, in words. */
export function holesOf(build: Build, board: Board | undefined, settingsOf: (card: string) => readonly string[]): readonly string[] {
  const holes: string[] = [];
  if (build.revision === undefined || (Array.isArray(build.revision) && build.revision.length > 1)) holes.push("the board's revision");
  if (build.memory === undefined && board && (mainMemory(board)?.options.length ?? 1) > 1) holes.push("the memory fitted");
  if (!build.modes) holes.push("the firmware version");
  for (const mode of build.modes ?? []) if (mode.firmware === undefined) holes.push(`the firmware version of ${mode.id}`);
  for (const mode of build.modes ?? [])
    for (const card of cardsOnOrOff(build.cards, mode)) holes.push(`whether ${copyName(card)} was on in ${mode.id}`);
  for (const card of build.cards) {
    const name = copyName(card);
    if (card.slot === undefined) holes.push(`the slot of ${name}`);
    const open = settingsOf(card.card).filter((setting) => card.settings?.[setting] === undefined);
    if (open.length > 0) holes.push(`${open.join(", ")} of ${name}`);
  }
  return holes;
}

/** A tested build. What the owner wished for and had at hand, and how the machine stood before, belong to the question, not to the test. */
export function testedBuild(build: Build, board: Board | undefined, id: string, name: string | undefined, result: Result): Build {
  const { at_hand: _, stands: __, wishes: ___, ...rest } = build;
  // Where the board can have one amount of memory only, that is what was fitted.
  const only = board && mainMemory(board)?.options;
  const memory = build.memory ?? (only?.length === 1 ? only[0] : undefined);
  return { ...rest, ...(memory === undefined ? {} : { memory }), id, name: name ?? `${build.name}, tested ${result.date}`, result };
}

/** The modes' outcomes together: all worked, all failed, or partly. */
export function overall(outcomes: readonly Result["outcome"][]): Result["outcome"] | undefined {
  if (outcomes.length === 0) return undefined;
  if (outcomes.every((outcome) => outcome === "worked")) return "worked";
  return outcomes.every((outcome) => outcome === "failed") ? "failed" : "partly";
}
