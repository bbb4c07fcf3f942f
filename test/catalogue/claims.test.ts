// When two claims meet, against a slow twin that walks every address.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { meetIo, meetMemory, meetRevisions, overlay } from "../../src/catalogue/index.js";

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

/** Every address a memory window answers at, one by one. */
const answered = (w: { base: number; size: number; decoded_bits?: number }) => ports(w);
const overlays = ["O1", "O2"];

test("memory windows fight when they share an address, aliases included, and not just one keeps silent", () => {
  const window = fc
    .record(
      {
        base: fc.nat(60),
        size: fc.integer({ min: 1, max: 10 }),
        decoded_bits: fc.integer({ min: 5, max: 8 }),
        asserts: fc.constantFrom(...overlays),
        yields_to: fc.subarray(overlays, { minLength: 1 }),
        space: fc.constantFrom("LOW", "HIGH"),
        takes_turns: fc.boolean(),
      },
      { requiredKeys: ["base", "size"] },
    )
    .map((w) => ({ ...w, base: Math.min(w.base, 2 ** (w.decoded_bits ?? bits) - w.size) }));
  const one = { memory_address_bits: bits };
  const two = { ...one, spaces: ["LOW", "HIGH"].map((id) => ({ id, name: id, bits })) };
  const seen = { fight: 0, apart: 0, overlaid: 0, elsewhere: 0 };
  fc.assert(
    fc.property(window, window, fc.boolean(), (a, b, spaced) => {
      const other = answered(b);
      const share = [...answered(a)].some((at) => other.has(at));
      const quiet = (under: typeof a, over: typeof a) => over.asserts !== undefined && (under.yields_to ?? []).includes(over.asserts);
      const overlaid = quiet(a, b) !== quiet(b, a) || (a.takes_turns === true && b.takes_turns === true);
      const together = !spaced || (a.space !== undefined && a.space === b.space);
      const fight = share && together && !overlaid;
      seen[fight ? "fight" : !share ? "apart" : overlaid ? "overlaid" : "elsewhere"] += 1;
      expect(meetMemory(a, b, spaced ? two : one)).toBe(fight);
      expect(meetMemory(b, a, spaced ? two : one)).toBe(fight);
    }),
    { numRuns: 2000, seed: 2 },
  );
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(50);
});

test("what is not known of an overlay is neither yes nor no", () => {
  const at = { base: 0, size: 16 };
  const asserts = { ...at, asserts: "O1" };
  const yields = { ...at, yields_to: ["O1"] };
  expect([overlay(asserts, yields), overlay(asserts, asserts), overlay(yields, yields)]).toEqual(["yes", "no", "no"]);
  expect(overlay({ ...at, asserts: "unknown" }, yields)).toBe("perhaps");
  expect(overlay(asserts, { ...at, yields_to: "unknown" })).toBe("perhaps");
  expect(overlay({ ...at, asserts: "unknown" }, at)).toBe("no");
  // Each silences the other: then neither answers.
  expect(overlay({ ...asserts, yields_to: ["O2"] }, { ...yields, asserts: "O2" })).toBe("no");
});

test("revisions: a list left out is every revision", () => {
  expect(meetRevisions(undefined, ["A"])).toBe(true);
  expect(meetRevisions(["A", "B"], ["B"])).toBe(true);
  expect(meetRevisions(["A"], ["B"])).toBe(false);
});
