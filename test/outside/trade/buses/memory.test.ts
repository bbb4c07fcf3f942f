// Memory on buses of published standards: cards that look at few of the lines, overlays, and address spaces.
import { describe, expect, it } from "vitest";
import { link } from "../../../../src/catalogue/index.js";
import type { MemoryWindow } from "../../../../src/records/index.js";
import { spellOutCard } from "../../../support/spell-out.js";
import { askOn, backplane, busWith, cardOn, reasonOf } from "./support.js";

// IEEE Std 696-1983: 16 address lines, extended to 24 (A16 to A23); a board made for 16 looks at none of the others. PHANTOM* disables
// slaves that heed it so that another can answer in their place. Lines and names only.
const s696 = busWith({
  id: "ieee-696",
  name: "IEEE 696 bus",
  memory_address_bits: 24,
  io_address_bits: 8,
  overlay_lines: [{ id: "PHANTOM", says: "Memory that heeds it keeps silent while it is low." }],
});
const memory696 = (id: string, window: MemoryWindow) => cardOn(s696, id, { claims: [{ memory: [window] }] });
const ask696 = (...windows: MemoryWindow[]) =>
  askOn(
    s696,
    backplane(s696, 4),
    windows.map((w, i) => memory696(`m${i + 1}`, w)),
  );

describe("memory cards that look at 16 of 24 lines", () => {
  const low: MemoryWindow = { base: 0x4000, size: "16K", decoded_bits: 16 };
  it("answer again every 64K, and meet a card further up", () => {
    const answer = ask696(low, { base: 0x54000, size: "16K" });
    expect(answer.verdict).toBe("ruled-out");
    expect(reasonOf(answer)).toContain("looks at too few address lines and answers again further up");
  });
  it("meet each other at every 64K, or not at all", () => {
    expect(ask696(low, { base: 0x4000, size: "16K", decoded_bits: 16 }).verdict).toBe("ruled-out");
    expect(ask696(low, { base: 0x8000, size: "16K", decoded_bits: 16 }).verdict).toBe("workable");
    expect(ask696(low, { base: 0x58000, size: "16K" }).verdict).toBe("workable");
  });
  it("of which nobody knows how many they look at are not called workable beside memory further up", () => {
    const unsure = ask696({ ...low, decoded_bits: "unknown" }, { base: 0x54000, size: "16K" });
    expect(unsure.verdict).toBe("unknown");
    expect(unsure.unknowns.map((u) => u.says)).toContain(
      "How many address lines m1 looks at is not known; with few of them m1 and m2 answer at one memory address.",
    );
    expect(ask696({ base: 0x4000, size: "16K" }, { base: 0x54000, size: "16K" }).verdict).toBe("workable");
  });
});

describe("one window over another", () => {
  const ram: MemoryWindow = { base: 0, size: "64K", is: "ram" };
  const rom: MemoryWindow = { base: 0xf000, size: "4K", is: "rom" };
  it("works where the one asserts what the other yields to", () => {
    const [over, under] = [
      { ...rom, asserts: "PHANTOM" },
      { ...ram, yields_to: ["PHANTOM"] },
    ];
    expect([ask696(over, under).verdict, ask696(under, over).verdict]).toEqual(["workable", "workable"]);
    expect([ask696(rom, under).verdict, ask696(over, ram).verdict]).toEqual(["ruled-out", "ruled-out"]);
  });
  it("does not let two memories that both yield lie under it", () => {
    const under: MemoryWindow = { ...ram, yields_to: ["PHANTOM"] };
    expect(ask696(under, under).verdict).toBe("ruled-out");
    expect(reasonOf(ask696(under, under))).toBe(
      "m1 and m2: both answer at memory 0x00000–0x0FFFF; both yield to PHANTOM, and neither asserts it.",
    );
    expect(ask696({ ...rom, asserts: "PHANTOM" }, under, under).verdict).toBe("ruled-out");
  });
  it("is open where nobody knows whether the other yields", () => {
    const answer = ask696({ ...rom, asserts: "PHANTOM" }, { ...ram, yields_to: "unknown" });
    expect(answer.verdict).toBe("unknown");
    expect(answer.unknowns[0]!.says).toContain("whether one yields to the other there is not known");
  });
});

// ANSI/IEEE Std 1014-1987, IEC 821: the address modifier tells short (A16), standard (A24) and extended (A32) addresses apart.
const vme = busWith({
  id: "iec-821",
  name: "IEC 821 bus",
  memory_address_bits: 32,
  io_address_bits: 1,
  spaces: [
    { id: "A32", name: "Extended addresses, by modifier 08 to 0F", bits: 32 },
    { id: "A24", name: "Standard addresses, by modifier 38 to 3F", bits: 24 },
    { id: "A16", name: "Short addresses, by modifier 29 and 2D", bits: 16 },
  ],
});
const askVme = (...windows: MemoryWindow[]) =>
  askOn(
    vme,
    backplane(vme, 5),
    windows.map((w, i) => cardOn(vme, `c${i + 1}`, { claims: [{ memory: [w] }] })),
  );

describe("address spaces told apart by the modifier", () => {
  const short: MemoryWindow = { space: "A16", base: 0x8000, size: 256, is: "registers" };
  it("let two cards have one number in two of them, and not in one", () => {
    expect(askVme(short, { space: "A24", base: 0x8000, size: "64K" }).verdict).toBe("workable");
    expect(askVme(short, { space: "A16", base: 0x8080, size: 256 }).verdict).toBe("ruled-out");
  });
  it("count their own lines: a card that looks at 12 of 16 answers again within its space only", () => {
    const few: MemoryWindow = { ...short, base: 0x800, decoded_bits: 12 };
    expect(askVme(few, { ...short, base: 0xf800 }).verdict).toBe("ruled-out");
    expect(askVme(few, { space: "A24", base: 0xf800, size: 256 }).verdict).toBe("workable");
  });
  it("are not guessed where a record does not say which it means", () => {
    const { space: _, ...silent } = short;
    const answer = askVme(silent, { space: "A24", base: 0x100000, size: "64K" });
    expect(answer.verdict).toBe("unknown");
    expect(answer.unknowns[0]).toMatchObject({
      says: "In which address space of IEC 821 bus c1 answers at 0x08000 is not written down.",
      how: expect.stringContaining("A32 or A24 or A16"),
    });
  });
  it("are those the bus names, and a window lies inside its own", () => {
    const wrong = (window: MemoryWindow) =>
      link([
        { kind: "bus", record: vme, file: "buses/b.yaml" },
        { kind: "card", record: spellOutCard(cardOn(vme, "c", { claims: [{ memory: [window] }] })), file: "cards/c.yaml" },
      ]).findings.map((f) => `${f.code} ${f.says}`);
    expect(wrong({ ...short, space: "A61" })).toContain("rule-bus-names A61 is no address space on IEC 821 bus.");
    expect(wrong({ ...short, base: 0xff80 })).toContain(
      "rule-address-space The window ends at 0x1007F, beyond what 16 address lines reach.",
    );
    expect(wrong({ ...short, asserts: "PHANTOM" })).toContain("rule-bus-names PHANTOM is no overlay line on IEC 821 bus.");
  });
});
