// What is to be burned for a build: the wiring plan's device and banks, or, when every mode runs one version, that version alone.
import type { Combination } from "../../planning/index.js";
import { bytes, type Firmware, known, sizeText, unknown } from "../../records/index.js";
import type { BurnPlan } from "../../wiring/index.js";
import { WrongUse } from "../wrong-use.js";
import type { AskedBuild } from "./build-question.js";
import type { Club } from "./club.js";
import { answerFor } from "./planner.js";
import { wiringFor } from "./wiring-for.js";

export interface BurnRecipe {
  readonly plan: BurnPlan;
  readonly family: Firmware;
  /** Bank: positions of the switch that choose it. */
  readonly positions: Readonly<Record<string, readonly string[]>>;
}

export function burnRecipe(club: Club, asked: AskedBuild, which: string): BurnRecipe {
  const answer = answerFor(club, asked);
  const name = asked.file ?? asked.build.id;
  const combination = answer.combinations[Number(which) - 1];
  if (!combination) {
    if (answer.combinations.length === 0) throw new WrongUse(`${name}: ${answer.says}`, `See why: slotwright plan ${name}`);
    throw new WrongUse(
      `There is no combination ${which}; the planner names ${answer.combinations.length}.`,
      `See them with: slotwright plan ${name}`,
    );
  }
  const family = club.catalogue.firmware.get(combination.firmwareFamily);
  if (!family) throw new WrongUse(`${name} names no firmware that the records have.`, `See: slotwright plan ${name}`);
  const wiring = wiringFor(club, asked, combination, false);
  if (wiring.kind === "refused")
    throw new WrongUse(
      `${name}: ${wiring.says}`,
      wiring.waysOut[0]?.says ?? `See: slotwright plan ${name}`,
      wiring.reasons.map((r) => r.says),
    );
  if (wiring.kind === "wiring" && wiring.plan.device) {
    const positions: Record<string, string[]> = {};
    for (const { bank, position } of wiring.plan.contacts) if (bank !== undefined) positions[bank] = [...(positions[bank] ?? []), position];
    return { plan: { device: wiring.plan.device, banks: wiring.plan.banks }, family, positions };
  }
  return { plan: plainPlan(club, combination, family, name), family, positions: {} };
}

/** One version in every mode: its image fills the board's own socket, split where two sockets share the width. */
function plainPlan(club: Club, combination: Combination, family: Firmware, name: string): BurnPlan {
  const board = club.catalogue.boards.get(combination.board);
  const sockets = (board?.firmware_sockets ?? []).filter((s) => !s.revisions || s.revisions.includes(combination.revision));
  const version = combination.modes[0]?.firmware ?? "";
  const size = known(family.versions.find((v) => v.id === version)?.image.size);
  if (sockets.length === 0)
    throw new WrongUse(`The records know no firmware socket on ${board?.name ?? combination.board}.`, "Add it to the board's record.");
  if (size === unknown)
    throw new WrongUse(`The size of ${family.name} ${version} is not known.`, `Add it to the firmware record, then ask again for ${name}.`);
  const lanes = sockets.some((s) => s.lane === "even" || s.lane === "odd") ? 2 : 1;
  const window = bytes(sockets[0]!.window.size);
  const repeats = window / bytes(size);
  if (!Number.isInteger(repeats))
    throw new WrongUse(
      `The image of ${version} (${sizeText(bytes(size))}) does not fill the window of ${sizeText(window)} evenly.`,
      "Check the sizes in the board's and the firmware's records.",
    );
  const capacity = window / lanes;
  return {
    device: {
      family: sockets[0]!.wired_for,
      capacity,
      width: sockets[0]!.data_width,
      sockets: sockets.map((s) => ({ socket: s.id, lane: s.lane ?? "whole" })),
    },
    banks: [{ index: 0, offset: 0, size: capacity, version, repeats, use: "mode", modes: combination.modes.map((m) => m.id) }],
  };
}
