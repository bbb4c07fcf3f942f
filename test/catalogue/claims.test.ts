// When two claims meet, against a slow twin that walks every address.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { meetIo, meetMemory, meetRevisions } from "../../src/catalogue/index.js";

const bits = 8;
/** Ports a window answers at, one by one: the card sees only the low bits of each address. */
function ports(w: { base: number; size: number; decoded_bits?: number }): ReadonlySet<number> {
  const seen = 2 ** Math.min(w.decoded_bits ?? bits, bits);
  const own = new Set(Array.from({ length: w.size }, (_, i) => (w.base + i) % seen));
  return new Set(Array.from({ length: 2 ** bits }, (_, a) => a).filter((a) => own.has(a % seen)));
}

test("port windows with aliases", () => {
  const window = fc
    .record(
      { base: fc.nat(255), size: fc.integer({ min: 1, max: 12 }), decoded_bits: fc.integer({ min: 4, max: 8 }) },
      { requiredKeys: ["base", "size"] },
    )
    .map((w) => ({ ...w, base: Math.min(w.base, 2 ** (w.decoded_bits ?? bits) - w.size) }))
    .filter((w) => w.base >= 0);
  const seen = { meet: 0, apart: 0 };
  fc.assert(
    fc.property(window, window, (a, b) => {
      const other = ports(b);
      const meet = [...ports(a)].some((p) => other.has(p));
      seen[meet ? "meet" : "apart"] += 1;
      expect(meetIo(a, b, bits)).toBe(meet);
      expect(meetIo(b, a, bits)).toBe(meet);
    }),
    { numRuns: 2000, seed: 1 },
  );
  expect(Math.min(seen.meet, seen.apart)).toBeGreaterThan(200);
});

// Published: a card that decodes ten of sixteen port address bits answers again every 400h (donaldkenney.x10.mx,
// GLOSSARY/PORTADDR.HTM). Ports and counts only.
describe("ten decoded bits of sixteen", () => {
  const card = { base: 0x300, size: 1, decoded_bits: 10 };
  test.each([0x700, 0xb00, 0xf00, 0x1300])("a card at 300h answers at %i too", (port) => {
    expect(meetIo(card, { base: port, size: 1 }, 16)).toBe(true);
    expect(meetIo(card, { base: port + 1, size: 1 }, 16)).toBe(false);
  });
  test("64 times in all", () => {
    let count = 0;
    for (let port = 0; port < 0x10000; port++) if (meetIo(card, { base: port, size: 1 }, 16)) count += 1;
    expect(count).toBe(64);
  });
});

test("memory windows meet when they share a byte and are not both shareable", () => {
  const window = fc.record({ base: fc.nat(40), size: fc.integer({ min: 1, max: 10 }), shareable: fc.boolean() });
  fc.assert(
    fc.property(window, window, (a, b) => {
      const bytes = new Set(Array.from({ length: a.size }, (_, i) => a.base + i));
      const share = Array.from({ length: b.size }, (_, i) => b.base + i).some((at) => bytes.has(at));
      expect(meetMemory(a, b)).toBe(share && !(a.shareable && b.shareable));
    }),
    { numRuns: 500, seed: 2 },
  );
});

test("revisions: a list left out is every revision", () => {
  expect(meetRevisions(undefined, ["A"])).toBe(true);
  expect(meetRevisions(["A", "B"], ["B"])).toBe(true);
  expect(meetRevisions(["A"], ["B"])).toBe(false);
});
