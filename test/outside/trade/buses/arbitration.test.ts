// Arbitration levels: each card that may own the bus has one of its own. Fifteen levels, 0 to 14, as the 32-bit Micro Channel bus has them
// (from memory); the count is arithmetic.
import { describe, expect, it } from "vitest";
import type { Card } from "../../../../src/records/index.js";
import { askOn, backplane, busWith, cardOn, reasonOf } from "./support.js";

const levels = Array.from({ length: 15 }, (_, level) => `${level}`);
const bus = busWith({
  id: "fifteen-levels",
  name: "bus of fifteen levels",
  memory_address_bits: 24,
  io_address_bits: 16,
  dma: levels.map((id) => ({ id })),
});
/** Its arbitration level is a setting; it keeps the level to itself. */
const master = (id: string): Card =>
  cardOn(bus, id, {
    settings: [
      { id: "LEVEL", name: "arbitration level", by: "software", positions: levels.map((l) => ({ id: l, dma: [{ channel: l }] })) },
    ],
  });
const placed = (cards: readonly Card[], settings: Readonly<Record<string, string>> = {}) =>
  askOn(bus, backplane(bus, 16), cards, {
    cards: cards.map((c, i) => ({ card: c.id, slot: `${i + 1}`, ...(settings[c.id] ? { settings: { LEVEL: settings[c.id]! } } : {}) })),
  });

describe("fifteen arbitration levels", () => {
  it("give one card 15 ways, two 210, three 2730", () => {
    const [a, b, c] = ["a", "b", "c"].map(master);
    expect(placed([a!]).count).toBe("15");
    expect(placed([a!, b!]).count).toBe("210");
    expect(placed([a!, b!, c!]).count).toBe("2730");
  });
  it("are each for one card", () => {
    const same = placed(["a", "b"].map(master), { a: "3", b: "3" });
    expect(same.verdict).toBe("ruled-out");
    expect(reasonOf(same)).toBe("a with LEVEL at 3 and b with LEVEL at 3: both use DMA channel 3.");
  });
});
