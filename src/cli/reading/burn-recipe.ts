// What is to be burned for a build: the wiring plan's device and banks, or, when every mode runs one version, that version
// alone in the device that stands in the socket.

import type { BurnPlan } from "../../images/index.js";
import type { Firmware } from "../../records/index.js";
import { type PinWork, planSingleVersion, wiringOptions } from "../../wiring/index.js";
import { UsageError } from "../usage-error.js";
import type { AskedBuild } from "./build-question.js";
import type { Club } from "./club.js";
import { answerFor } from "./planner.js";
import { builtOf, wiringFor } from "./wiring-for.js";

export interface BurnRecipe {
  readonly plan: BurnPlan;
  readonly family: Firmware;
  /** Bank: positions of the switch that choose it. */
  readonly positions: Readonly<Record<string, readonly string[]>>;
  /** Where no switch is wired, so that no sheet tells it: the device and how fast it must be, and what is to be done to its pins. */
  readonly device?: string;
  readonly pinWork?: readonly PinWork[];
}

/** Of the combination that is built, or of the one with this number. */
export function burnRecipe(club: Club, asked: AskedBuild, which?: string): BurnRecipe {
  const { answer, built } = builtOf(club, asked, answerFor(club, asked));
  const name = asked.file ?? asked.build.id;
  const number = Number(which ?? (built?.kind === "built" ? built.number : 1));
  const combination = answer.combinations[number - 1];
  if (!combination) {
    if (answer.combinations.length === 0) throw new UsageError(`${name}: ${answer.says}`, `See why: slotwright plan ${name}`);
    throw new UsageError(
      `There is no combination ${which}; the planner names ${answer.combinations.length}.`,
      `See them with: slotwright plan ${name}`,
    );
  }
  const family = club.catalogue.firmware.get(combination.firmwareFamily);
  if (!family) throw new UsageError(`${name} names no firmware that the records have.`, `See: slotwright plan ${name}`);
  const wiring = wiringFor(club, asked, combination, false);
  if (wiring.kind === "refused")
    throw new UsageError(
      `${name}: ${wiring.says}`,
      wiring.waysOut[0]?.says ?? `See: slotwright plan ${name}`,
      wiring.reasons.map((r) => r.says),
    );
  if (wiring.kind === "wiring" && wiring.plan.device) {
    const positions: Record<string, string[]> = {};
    for (const { bank, position } of wiring.plan.contacts) if (bank !== undefined) positions[bank] = [...(positions[bank] ?? []), position];
    return { plan: { device: wiring.plan.device, banks: wiring.plan.banks }, family, positions };
  }
  const single = planSingleVersion(club.catalogue, combination, wiringOptions(asked.build));
  if (single.kind === "refused")
    throw new UsageError(
      `${name} cannot be burned. ${single.reasons[0]?.says ?? ""}`.trimEnd(),
      single.waysOut[0]?.says ?? `See: slotwright plan ${name}`,
      single.reasons.slice(1).map((r) => r.says),
    );
  return {
    plan: { device: single.device, banks: single.banks },
    family,
    positions: {},
    device: single.device.says,
    pinWork: single.pinWork,
  };
}
