// Buses on which the slot gives a card its addresses, and the ways to fill them that follow by counting.
import { describe, expect, it } from "vitest";
import { link } from "../../../../src/catalogue/index.js";
import type { Board, Card } from "../../../../src/records/index.js";
import { askOn, backplane, busWith, cardOn, reasonOf } from "./support.js";

// IEEE Std 1196-1987: sixteen slots of 16M each in the upper sixteenth of 4G, slot s at Fs000000h, told by four contacts of the connector.
const nubus = busWith({ id: "ieee-1196", name: "IEEE 1196 bus", memory_address_bits: 32, io_address_bits: 1 });
const M16 = 0x1000000;
const inItsSlot = (id: string) =>
  cardOn(nubus, id, { claims: [{ memory: [{ base: 0xf0000000, slot_step: M16, size: M16, is: "registers" }] }] });
const at = (id: string, base: number): Card => cardOn(nubus, id, { claims: [{ memory: [{ base, size: "64K" }] }] });
/** So many slots, numbered from the first; the firmware lies outside every slot's space. */
const rack = (slots: number, first = 0): Board => {
  const board = backplane(nubus, slots);
  const [socket] = board.firmware_sockets;
  return {
    ...board,
    slots: board.slots.map((s, i) => ({ ...s, number: first + i })),
    firmware_sockets: [{ ...socket!, window: { base: 0x40000000, size: 0x10000 } }],
  };
};

describe("addresses that follow the slot", () => {
  it("let any number of cards of one kind stand side by side: 7 ways for one, 42 for two, 240 in sixteen", () => {
    const [a, b] = [inItsSlot("a"), inItsSlot("b")];
    expect(askOn(nubus, rack(7), [a])).toMatchObject({ verdict: "workable", count: "7" });
    expect(askOn(nubus, rack(7), [a, b])).toMatchObject({ verdict: "workable", count: "42" });
    expect(askOn(nubus, rack(16), [a, b])).toMatchObject({ verdict: "workable", count: "240" });
    const twice = askOn(nubus, rack(7), [a], {
      cards: [
        { card: "a", as: "left" },
        { card: "a", as: "right" },
      ],
    });
    expect(twice.verdict).toBe("workable");
  });
  it("leave 36 ways beside a card that answers in the space of one slot, wherever it stands itself", () => {
    // The other in slot 3: six places for the first. The other elsewhere: six times the five that are neither its own nor 3.
    expect(askOn(nubus, rack(7), [inItsSlot("a"), at("b", 0xf3000000)]).count).toBe(String(6 + 6 * 5));
    const there = askOn(nubus, rack(7), [inItsSlot("a"), at("b", 0xf3000000)], { cards: [{ card: "a", slot: "4" }, { card: "b" }] });
    expect(there.verdict).toBe("ruled-out");
    expect(reasonOf(there)).toBe("a in 4 and b: both answer at memory 0xF3000000–0xF300FFFF.");
  });
  it("begin where the number of the slot says, not its place in the row", () => {
    const board = rack(6, 9);
    expect(askOn(nubus, board, [inItsSlot("a"), at("b", 0xf9000000)], { cards: [{ card: "a", slot: "1" }, { card: "b" }] }).verdict).toBe(
      "ruled-out",
    );
    expect(askOn(nubus, board, [inItsSlot("a"), at("b", 0xf1000000)]).count).toBe("30");
  });
  it("are open where nobody knows the number of the slot, even where nothing else stands", () => {
    const board = rack(2);
    const { number: _, ...silent } = board.slots[0]!;
    const unnumbered = { ...board, slots: [silent, board.slots[1]!] };
    const [first, second] = ["1", "2"].map((slot) => askOn(nubus, unnumbered, [inItsSlot("a")], { cards: [{ card: "a", slot }] }));
    expect([first!.verdict, second!.verdict]).toEqual(["unknown", "workable"]);
    expect(first!.unknowns[0]).toMatchObject({
      says: "a answers at addresses that follow the slot; which number 1 of Plain board gives it is not known.",
      how: expect.stringContaining("contacts that number the slot"),
    });
    // What does not follow the slot asks for no number.
    expect(askOn(nubus, unnumbered, [at("b", 0x1000)]).verdict).toBe("workable");
  });
  it("belong to cards: a part of the board stands in no slot", () => {
    const board = { ...rack(2), fixed: [{ name: "timer", memory: [{ base: 0, size: 16, slot_step: 16 }] }] } as unknown as Board;
    const { findings } = link([
      { kind: "bus", record: nubus, file: "buses/b.yaml" },
      { kind: "board", record: board, file: "boards/board.yaml" },
    ]);
    expect(findings.map((f) => f.says)).toContain("A part of the board stands in no slot, so its addresses follow none.");
  });
});
