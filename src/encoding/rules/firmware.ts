// Firmware on the board: which versions run on which revision, and how much memory they need.

import { memoryNeeded, runsOn, versionIndex } from "../../catalogue/index.js";
import { type FirmwareVersion, itemAt, lastOf, sizeText } from "../../records/index.js";
import { type ConstraintDraft, fact, memoryUnknown, never, ref, refusedByMemory, type TradeRule } from "../draft.js";
import { eachMode, type Frame, onRevisions, runsVersion } from "../frame.js";
import { knowsMachineMemory, lessThan, memoryHolds } from "../machine-memory.js";

export const firmware: TradeRule = {
  name: "firmware",
  says: "A firmware version runs only on boards and revisions its record names, with the memory it needs.",
  drafts: (frame) => [...strangers(frame), ...hungry(frame)],
};

/** Versions that the same revisions do not take are one fact. */
function strangers(frame: Frame): ConstraintDraft[] {
  const { family, board, versions, revisions } = frame.question;
  const groups = new Map<string, { readonly not: readonly string[]; readonly group: FirmwareVersion[] }>();
  for (const version of versions) {
    const not = revisions.filter((r) => !runsOn(family, version, board, r));
    const key = JSON.stringify(not);
    if (not.length > 0) groups.set(key, { not, group: [...(groups.get(key)?.group ?? []), version] });
  }
  return [...groups.values()].flatMap(({ not, group }) => {
    const refused = onRevisions(frame, (r) => not.includes(r));
    const says = `${family.name} ${spanText(frame, group)} ${group.length === 1 ? "is" : "are"} not for ${board.name} revision ${not.join(", ")}.`;
    const refs = group.map((v) => ref("firmware", family.id, `/versions/${versionIndex(family, v.id)}`));
    return never(
      frame,
      fact("firmware", says, ...refs),
      ...eachMode(frame).map(({ at }) => [runsVersion(frame, at, (id) => group.some((v) => v.id === id)), refused]),
    );
  });
}

/** "R2", "R2 to R4A", "R2 and R5 to R6": versions in the declared order, runs of three or more drawn together. */
function spanText(frame: Frame, group: readonly FirmwareVersion[]): string {
  const { versions } = frame.question;
  const runs: FirmwareVersion[][] = [];
  for (const version of group) {
    const last = runs.at(-1);
    if (last && versions.indexOf(version) === versions.indexOf(lastOf(last)) + 1) last.push(version);
    else runs.push([version]);
  }
  const words = runs.flatMap((run) => (run.length > 2 ? [`${itemAt(run, 0).id} to ${lastOf(run).id}`] : run.map((v) => v.id)));
  return words.length === 1 ? itemAt(words, 0) : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

function hungry(frame: Frame): ConstraintDraft[] {
  const { family, versions } = frame.question;
  return versions.flatMap((version) => {
    const pointer = ref("firmware", family.id, `/versions/${versionIndex(family, version.id)}`);
    if (memoryNeeded(version) === 0) return [];
    const says = `${family.name} ${version.id} needs ${sizeText(memoryNeeded(version))} of memory.`;
    const told = fact("firmware", says, pointer);
    const modes = eachMode(frame).map(({ at }) => ({ at, runs: runsVersion(frame, at, (id) => id === version.id) }));
    if (!knowsMachineMemory(frame)) return memoryUnknown(frame, told, ...modes.map(({ runs }) => [runs]));
    const short = lessThan(memoryNeeded(version));
    return modes.flatMap(({ at, runs }) => refusedByMemory(frame, told, memoryHolds(frame, at, short), [runs]));
  });
}
