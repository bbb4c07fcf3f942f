// Which cards run in a mode, and what a card that is switched off still takes and needs.
import type { Card } from "../../../../src/records/index.js";
import { onCard } from "./facts.js";
import type { Fitted, ModeOfUse } from "./world.js";

type Released = NonNullable<Card["enable"]>["releases"][number];

/** A mode can switch the card off: by contacts, or by a setting that software makes. A jumper inside the case is no switch. */
function canSwitchOff(fitted: Fitted): boolean {
  const { enable, settings } = fitted.card;
  if (!enable || !onCard(enable, fitted)) return false;
  return enable.by === "contacts" || settings?.find((s) => s.id === enable.setting)?.by === "software";
}

/** A card that the mode leaves out and that nothing can switch off runs all the same. */
export function runs(fitted: Fitted, mode: ModeOfUse): boolean {
  return mode.named.includes(fitted) || !canSwitchOff(fitted);
}

/** "What it lets go of when off": all else it keeps. */
export function keeps(fitted: Fitted, mode: ModeOfUse, what: Released): boolean {
  return runs(fitted, mode) || !fitted.card.enable?.releases.includes(what);
}
