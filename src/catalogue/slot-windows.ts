// Windows that follow the slot of their card: where each begins, slot by slot.
import { type Claims, type IoWindow, known, listed, type MemoryWindow, type Slot, unknown } from "../records/index.js";

const follows = (w: IoWindow | MemoryWindow) => w.slot_step !== undefined;

/** Some window of the claims begins elsewhere in each slot. */
export function followsSlot(claims: Claims): boolean {
  return listed(claims.io).some(follows) || listed(claims.memory).some(follows);
}

/** The claims without the windows that follow the slot. */
export function claimsAnywhere(claims: Claims): Claims {
  const stay = <W extends IoWindow | MemoryWindow>(of: readonly W[] | string | undefined) =>
    Array.isArray(of) ? of.filter((w: W) => !follows(w)) : of;
  return { ...claims, ...(claims.io ? { io: stay(claims.io) } : {}), ...(claims.memory ? { memory: stay(claims.memory) } : {}) } as Claims;
}

/** The windows that follow the slot, where they lie in this one; undefined where nobody knows its number. */
export function claimsInSlot(claims: Claims, slot: Pick<Slot, "number">): Pick<Claims, "io" | "memory"> | undefined {
  const number = known(slot.number);
  if (number === unknown) return undefined;
  const placed = <W extends IoWindow | MemoryWindow>(of: readonly W[]) =>
    of.filter(follows).map(({ slot_step = 0, ...w }) => ({ ...w, base: w.base + slot_step * number }));
  return { io: placed(listed(claims.io)), memory: placed(listed(claims.memory)) } as Pick<Claims, "io" | "memory">;
}
