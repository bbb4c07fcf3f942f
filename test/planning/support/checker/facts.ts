// Reading values: sizes, facts that may be unknown, and what holds for one revision alone.
import type { Case, Fitted } from "./world.js";

/** The value of a fact, or undefined when it is not known. A fact that was left out is not known either. */
export function known<T>(fact: T | "unknown" | { readonly is: T | "unknown" } | undefined): T | undefined {
  if (fact === undefined || fact === "unknown") return undefined;
  if (typeof fact === "object" && fact !== null && "is" in (fact as object)) {
    const { is } = fact as { readonly is: T | "unknown" };
    return is === "unknown" ? undefined : is;
  }
  return fact as T;
}

export function bytesOf(size: number | string): number {
  if (typeof size === "number") return size;
  return Number(size.slice(0, -1)) * (size.endsWith("M") ? 1024 * 1024 : 1024);
}

/** "Holds for these revisions only; all when left out." */
export const onBoard = (thing: { readonly revisions?: readonly string[] }, { machine }: Case): boolean =>
  !thing.revisions || thing.revisions.includes(machine.revision);

export const onCard = (thing: { readonly revisions?: readonly string[] }, fitted: Fitted): boolean =>
  !thing.revisions || thing.revisions.includes(fitted.revision);

/** The slots the board has on this revision. */
export const slotsOf = (c: Case) => c.world.board.slots.filter((s) => onBoard(s, c));

/** The position a setting stands at; undefined when this revision of the card has no such setting. */
export function standsAt(fitted: Fitted, setting: string): string | undefined {
  const record = fitted.card.settings?.find((s) => s.id === setting);
  return record && onCard(record, fitted) ? fitted.settings[setting] : undefined;
}

/** "Setting id: position, or a list of positions; all must hold." */
export function settingsHold(fitted: Fitted, when: Readonly<Record<string, string | readonly string[]>> | undefined): boolean {
  return Object.entries(when ?? {}).every(([setting, positions]) => {
    const at = standsAt(fitted, setting);
    return at !== undefined && (typeof positions === "string" ? [positions] : positions).includes(at);
  });
}

/** How much memory there is stands in the board's record or in the build; 0 where neither says. */
export const memoryKnown = ({ machine }: Case): boolean => machine.memory > 0;
