// Interrupt lines under all their names.
import type { Bus } from "../records/index.js";

/** The line a name stands for: its own id, or that of the line it is another name of. */
export function lineId(bus: Bus, name: string): string | undefined {
  return bus.interrupts.find((l) => l.id === name || l.also?.includes(name))?.id;
}
