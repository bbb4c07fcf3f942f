// Other buses in our record format: the S-100 bus, and an 8-bit bus on 3U Eurocards, with cards where a figure can be checked.
// Published where a source is named; the rest is from memory and says so.
import { describe, expect, it } from "vitest";
import { rules } from "../../../src/catalogue/index.js";
import type { Board, Bus, Card } from "../../../src/records/index.js";
import { answerOf, clubOf, plainBoard, plainCard } from "./support.js";

const inch = 25.4;

/**
 * IEEE 696-1983. Published (public pin tables and a bus reference page): 100 contacts, card 10 by 5 inches, 24 address bits, data 8
 * or 16, +8 V below 11 V average, +16 V below 21.5 V average, vectored interrupts VI0-VI7. From memory: that the lines are level-sensed.
 */
const s100: Bus = {
  id: "s-100",
  name: "S-100",
  memory_address_bits: 24,
  io_address_bits: 16,
  edges: [{ id: "100", name: "100 contacts", contacts: 100, fits: ["100"], address_bits: 24, data_bits: 16 }],
  interrupts: Array.from({ length: 8 }, (_, i) => ({ id: `VI${i}`, trigger: "level" as const, share: "if-shareable" as const })),
  rails: [
    { id: "+8", volts: 8 },
    { id: "+16", volts: 16 },
    { id: "-16", volts: -16 },
  ],
};

/** IEC 60297-3 as quoted by public Eurocard pages: 3U board 100 mm high, 1 HP = 5.08 mm, depths in steps of 60 mm. 4 HP a slot and 84 HP a subrack: from memory. */
const HP = 5.08;
const eurocard = { height: (U: number) => 100 + ((U - 3) / 3) * 133.35, depths: [100, 160, 220, 280, 340, 400], slot_HP: 4, rack_HP: 84 };

/** IEEE 1000-1987, from memory: 64 contacts in rows a and c, 20 address bits, 12 port bits, 8 data bits, ATNRQ0-7, at most 21 slots. */
const ste: Bus = {
  id: "eight-bit-eurocard",
  name: "8-bit Eurocard bus",
  memory_address_bits: 20,
  io_address_bits: 12,
  edges: [{ id: "ac64", name: "DIN 41612 type C, rows a and c", contacts: 64, fits: ["ac64"], address_bits: 20, data_bits: 8 }],
  interrupts: Array.from({ length: 8 }, (_, i) => ({ id: `ATNRQ${i}`, trigger: "level" as const, share: "if-shareable" as const })),
  rails: [
    { id: "+5", volts: 5 },
    { id: "+12", volts: 12 },
    { id: "-12", volts: -12 },
  ],
};

const backplane = (slots: number): Board =>
  plainBoard({
    bus: ste.id,
    slots: Array.from({ length: slots }, (_, i) => ({
      id: `${i + 1}`,
      edge: "ac64",
      position: i + 1,
      pitch_mm: eurocard.slot_HP * HP,
      longest_mm: 160,
      highest_mm: 100,
    })),
    rails: [{ rail: "+5", limit_A: 20 }],
  });
const euro = (id: string, more: Partial<Card> = {}) =>
  plainCard(id, { bus: ste.id, edge: "ac64", room: { length_mm: 160, height_mm: 100 }, ...more });

const s100Board: Board = plainBoard({
  bus: s100.id,
  slots: [1, 2, 3].map((n) => ({ id: `${n}`, edge: "100", position: n, longest_mm: 10 * inch, highest_mm: 5 * inch })),
  rails: [
    { rail: "+8", limit_A: 10 },
    { rail: "+16", limit_A: 1 },
  ],
});
const s100Card = (id: string, more: Partial<Card> = {}) =>
  plainCard(id, {
    bus: s100.id,
    edge: "100",
    room: { length_mm: 254, height_mm: 127 },
    power: [{ rail: "+8", worst_A: 1 }],
    ...more,
  });

const spaceFindings = (bus: Bus, board: Board, cards: readonly Card[]) => {
  const rule = rules.find((r) => r.name === "address-space")!;
  return [...rule.check({ catalogue: clubOf(board, cards, bus), failed: () => false })].map((d) => d.says);
};

describe("S-100", () => {
  it("takes a card of 10 by 5 inches, and none that is higher", () => {
    expect(answerOf(s100Board, [s100Card("a")], {}, s100).verdict).toBe("workable");
    const high = answerOf(s100Board, [s100Card("a", { room: { length_mm: 254, height_mm: 128 } })], {}, s100);
    expect(high.reasons[0]!.facts[0]!.says).toMatch(/128 mm high; slot 1 takes at most 127 mm/);
  });
  it("has 16 MiB: a window may end there, not above it", () => {
    const at = (base: number) => s100Card("ram", { claims: [{ memory: [{ base, size: 0x10000, is: "ram" }] }] });
    expect(spaceFindings(s100, s100Board, [at(0xff0000)])).toEqual([]);
    expect(spaceFindings(s100, s100Board, [at(0xff8000)])).toHaveLength(1);
  });
  it("has unregulated rails only: a card that draws from +5 V finds none", () => {
    const card = s100Card("a", { power: [{ rail: "+5", worst_A: 0.1 }] });
    const answer = answerOf(s100Board, [card], {}, s100);
    expect(answer.reasons[0]!.facts[0]!.says).toMatch(/needs \+5 V, which Plain board does not have/);
  });
  it("sums the unregulated currents of all cards", () => {
    const cards = [4, 4, 3].map((worst_A, i) => s100Card(`c${i}`, { power: [{ rail: "+8", worst_A }] }));
    expect(answerOf(s100Board, cards, {}, s100).verdict).toBe("ruled-out");
    expect(answerOf(s100Board, cards.slice(0, 2), {}, s100).verdict).toBe("workable");
  });
  it("lets two willing cards share a vectored interrupt, and not two unwilling ones", () => {
    const on = (id: string, shareable: boolean) => s100Card(id, { claims: [{ interrupts: [{ line: "VI3", mode: "level", shareable }] }] });
    expect(answerOf(s100Board, [on("a", true), on("b", true)], {}, s100).verdict).toBe("workable");
    expect(answerOf(s100Board, [on("a", true), on("b", false)], {}, s100).verdict).toBe("ruled-out");
  });
});

describe("Eurocards", () => {
  it("of 3, 6 and 9 U are 100, 233.35 and 366.7 mm high (published)", () => {
    expect([3, 6, 9].map((U) => Number(eurocard.height(U).toFixed(2)))).toEqual([100, 233.35, 366.7]);
  });
  it("21 slots of 4 HP fill a subrack of 84 HP; 10 slots are 203.2 mm wide", () => {
    const width = (slots: number) => backplane(slots).slots.reduce((sum, s) => sum + s.pitch_mm!, 0);
    expect(width(21)).toBeCloseTo(eurocard.rack_HP * HP, 6);
    expect(width(10)).toBeCloseTo(203.2, 6);
  });
  it("of 3 U and 160 mm go in; longer and higher ones do not", () => {
    const verdicts = eurocard.depths.map(
      (length_mm) => answerOf(backplane(2), [euro("a", { room: { length_mm, height_mm: 100 } })], {}, ste).verdict,
    );
    expect(verdicts).toEqual(["workable", "workable", "ruled-out", "ruled-out", "ruled-out", "ruled-out"]);
    expect(answerOf(backplane(2), [euro("a", { room: { length_mm: 160, height_mm: eurocard.height(6) } })], {}, ste).verdict).toBe(
      "ruled-out",
    );
  });
  it("21 cards fill 21 slots; four slots take two cards of one slot and one of two, and not one card more", () => {
    const cards = Array.from({ length: 21 }, (_, i) => euro(`c${i}`));
    const inOrder = (some: readonly Card[]) => ({ cards: some.map((c, i) => ({ card: c.id, slot: `${i + 1}` })) });
    expect(answerOf(backplane(21), cards, inOrder(cards), ste).count).toBe("1");
    const wide = [euro("wide", { room: { length_mm: 160, height_mm: 100, slots: 2 } }), ...cards.slice(0, 2)];
    // By hand: the wide card at 1, 2 or 3; the other two in either order in the two slots left.
    expect(answerOf(backplane(4), wide, {}, ste).count).toBe("6");
    expect(answerOf(backplane(4), [...wide, cards[2]!], {}, ste).verdict).toBe("ruled-out");
    const why = answerOf(backplane(4), wide, inOrder(wide), ste)
      .reasons.flatMap((r) => r.facts)
      .map((f) => f.says);
    expect(why).toContain("wide is 2 slots wide and covers the slot that c0 would stand in.");
  });
  it("on 12 port bits a card at 0x1300 lies outside, and one that looks at 10 bits meets 0x700", () => {
    const at = (id: string, base: number, decoded_bits?: number) =>
      euro(id, { claims: [{ io: [{ base, size: 16, ...(decoded_bits ? { decoded_bits } : {}) }] }] });
    expect(spaceFindings(ste, backplane(2), [at("a", 0xff0)])).toEqual([]);
    expect(spaceFindings(ste, backplane(2), [at("a", 0x1300)])).toHaveLength(1);
    expect(answerOf(backplane(2), [at("a", 0x300, 10), at("b", 0x700)], {}, ste).verdict).toBe("ruled-out");
    expect(answerOf(backplane(2), [at("a", 0x300), at("b", 0x700)], {}, ste).verdict).toBe("workable");
  });
  it("has 1 MiB: a window may end there, not above it", () => {
    const at = (base: number) => euro("ram", { claims: [{ memory: [{ base, size: 0x8000, is: "ram" }] }] });
    expect(spaceFindings(ste, backplane(2), [at(0xf8000)])).toEqual([]);
    expect(spaceFindings(ste, backplane(2), [at(0xfc000)])).toHaveLength(1);
  });
});
