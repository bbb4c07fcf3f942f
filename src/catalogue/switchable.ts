// Which cards the modes of a machine can switch.
import type { Card } from "../records/index.js";

/** True when the modes of a machine can switch this card off. A jumper inside the case is no switch. */
export function switchable(card: Card): boolean {
  if (!card.enable) return false;
  if (card.enable.by === "contacts") return true;
  return card.settings?.find((s) => s.id === card.enable?.setting)?.by === "software";
}
