// What a random card, or a position of its settings, takes: ports, memory, interrupt lines and DMA channels.
import { tidy } from "../../support/loose.js";
import type { Random } from "../../support/solver/random.js";

interface Where {
  readonly r: Random;
  /** How much of what can stand in the way does. */
  readonly tight: number;
  /** An address space of the bus, or none where it has one only, or where the record does not say. */
  readonly space: () => string | undefined;
}

/** Makes claims of a bus with 6 port and 8 memory address lines, lines I1 to I3 and channels D1 and D2. */
export function claimsIn({ r, tight, space }: Where) {
  const maybe = <T>(p: number, make: () => T): T | undefined => (r.next() < p * tight ? make() : undefined);
  // Few windows assert and yield at once: of two that silence each other, neither answers.
  const memoryWindow = () =>
    tidy({
      ...r.pick([{ base: r.int(0, 14) * 16 }, { base: r.int(0, 14) * 16 }, { base: r.int(0, 6) * 16, slot_step: 16 }]),
      size: r.pick([16, 32]),
      space: space(),
      main: r.next() < 0.4,
      decoded_bits: maybe(0.3, () => r.pick([5, 6, 7, "unknown"] as const)),
      ...r.pick([
        {},
        {},
        { asserts: r.pick(["O1", "O1", "O2", "unknown"]) },
        { yields_to: r.pick([["O1"], ["O1", "O2"], "unknown" as const]) },
        { takes_turns: r.next() < 0.7 },
      ]),
    });
  return () =>
    tidy({
      io: maybe(0.5, () => [
        {
          ...r.pick([{ base: r.int(0, 60) }, { base: r.int(0, 60) }, { base: r.int(0, 15), slot_step: 4 }]),
          size: r.int(1, 4),
          decoded_bits: maybe(0.3, () => r.pick([3, 4, 5, "unknown"] as const)),
        },
      ]),
      memory: maybe(0.35, () => [memoryWindow()]),
      interrupts: maybe(0.3, () => [
        {
          line: r.pick(["I1", "L1", "I2", "I3"]),
          mode: maybe(0.4, () => r.pick(["edge", "level"] as const)),
          shareable: maybe(0.5, () => true),
        },
      ]),
      dma: maybe(0.2, () => [{ channel: r.pick(["D1", "D2"]), shareable: maybe(0.3, () => true) }]),
    });
}
