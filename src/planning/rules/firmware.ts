// Firmware on the board: which versions run on which revision, and how much memory they need.
import { memoryNeeded, runsOn, versionIndex } from "../../catalogue/index.js";
import { sizeText } from "../../records/index.js";
import { fact, never, ref, type TradeRule } from "../draft.js";
import { eachMode, onRevisions, runsVersion, withMemory } from "../frame.js";

export const firmware: TradeRule = {
  name: "firmware",
  says: "A firmware version runs only on boards and revisions its record names, with the memory it needs.",
  drafts(frame) {
    const { family, board, versions } = frame.question;
    return versions.flatMap((version) => {
      const pointer = ref("firmware", family.id, `/versions/${versionIndex(family, version.id)}`);
      const stranger = onRevisions(frame, (r) => !runsOn(family, version, board, r));
      const hungry = withMemory(frame, (m) => m > 0 && m < memoryNeeded(version));
      return eachMode(frame).flatMap(({ at }) => {
        const run = runsVersion(frame, at, (v) => v === version.id);
        const bad = stranger.values.map((r) => frame.question.revisions[r]).join(", ");
        return [
          ...never(frame, fact("firmware", `${family.name} ${version.id} is not for ${board.name} revision ${bad}.`, pointer), [
            run,
            stranger,
          ]),
          ...never(frame, fact("firmware", `${family.name} ${version.id} needs ${sizeText(memoryNeeded(version))} of memory.`, pointer), [
            run,
            hungry,
          ]),
        ];
      });
    });
  },
};
