// A build names revisions, slots, versions, copies and positions that its board, firmware and cards have.
import { type Build, sizeText } from "../../records/index.js";
import type { Catalogue } from "../catalogue.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { noSuch } from "../say.js";
import { type Unresolved, unresolvedNames } from "../unresolved.js";

export const buildNames: Rule = {
  name: "build-names",
  says: "A build names revisions, slots, memory, versions, copies, settings and modes that its board, firmware and cards have.",
  why: "A name nobody knows leaves the question without a machine to answer for.",
  mend: "Write the name as the board, the firmware or the card has it, or add it to their record first.",
  scope: ["build"],
  *check({ catalogue }): Iterable<Draft> {
    for (const build of catalogue.builds.values()) {
      // Records that are not there, and parts of another type, are told by rules of their own.
      for (const one of unresolvedNames(catalogue, build)) if (one.about === "name" || one.about === "memory") yield draftOf(build, one);
      yield* otherFirmware(catalogue, build);
    }
  },
};

function draftOf(build: Build, { about, path, what, name, declared, home, on }: Unresolved): Draft {
  const at = ref("build", build.id, ...path);
  if (about === "name") return { ...noSuch(what, name, declared, at, home), ...(on ? { on } : {}) };
  return {
    says: `${what} cannot be fitted with ${sizeText(Number(name))}.`,
    at,
    expected: `one of: ${declared.map((size) => sizeText(Number(size))).join(", ")}`,
    actual: sizeText(Number(name)),
    ...(home ? { related: [{ says: "The amounts are given here.", at: home }] } : {}),
    hint: "Correct the amount, or add it to the board.",
  };
}

function* otherFirmware(catalogue: Catalogue, build: Build): Iterable<Draft> {
  const board = catalogue.boards.get(build.board);
  const family = catalogue.firmware.get(build.firmware ?? "");
  if (!family || !board || board.firmware.includes(family.id)) return;
  yield {
    says: `${family.name} is not firmware of ${board.name}.`,
    at: ref("build", build.id, "firmware"),
    expected: `one of: ${board.firmware.join(", ")}`,
    actual: family.id,
    related: [{ says: "The board's firmware is named here.", at: ref("board", board.id, "firmware") }],
    hint: "Correct it, or leave it out to take the board's first family.",
  };
}
