// Chains from slot to slot on buses of published standards: bridged gaps, cards over two places, and how many a chain serves.
import { describe, expect, it } from "vitest";
import type { Board, Build, Bus, Card } from "../../../../src/records/index.js";
import { askOn, backplane, busWith, cardOn, reasonOf } from "./support.js";

// ANSI/IEEE Std 1014-1987, IEC 821: four bus-grant chains (BG0IN* to BG3OUT*) and one acknowledge chain (IACKIN* to IACKOUT*) run from slot 1
// to slot 21; a slot without a board needs a jumper for each of them on the backplane, and a board passes on those it does not use.
const grants = ["BG0", "BG1", "BG2", "BG3", "IACK"];
const vme = busWith({
  id: "iec-821",
  name: "IEC 821 bus",
  memory_address_bits: 32,
  io_address_bits: 1,
  chains: grants.map((id) => ({ id, name: `${id} chain` })),
});
type OnChains = NonNullable<Card["chain"]>;
type Empty = "breaks" | "passes" | "jumper" | "plug";
const rack = (bus: Bus, slots: number, empty: Empty): Board =>
  backplane(bus, slots, {
    chains: bus.chains!.map(({ id }) => ({ chain: id, slots: Array.from({ length: slots }, (_, i) => `${i + 1}`), empty })),
  });
const onChains = (uses: readonly string[]) =>
  Object.fromEntries(grants.map((id) => [id, uses.includes(id) ? "uses" : "passes"])) as OnChains;
const master = cardOn(vme, "master", { chain: onChains(["BG3"]) });
const talker = cardOn(vme, "talker", { chain: onChains(["IACK"]) });
const wide = cardOn(vme, "wide", { room: { length_mm: 160, height_mm: 233, slots: 2 }, chain: onChains([]) });
const at = (places: Readonly<Record<string, string>>): Pick<Build, "cards"> => ({
  cards: Object.entries(places).map(([card, slot]) => ({ card, slot })),
});
const ask = (empty: Empty, cards: readonly Card[], places: Readonly<Record<string, string>>) =>
  askOn(vme, rack(vme, 5, empty), cards, at(places));
const toDo = (answer: ReturnType<typeof ask>) => answer.combinations[0]!.conditions.flatMap((c) => c.ways.map((w) => w.says.split(";")[0]));

describe("an empty slot before a card that uses a chain", () => {
  it("takes a jumper for that chain, and the answer says which", () => {
    const answer = ask("jumper", [master, talker], { master: "1", talker: "3" });
    expect(answer.verdict).toBe("conditional");
    expect(toDo(answer)).toEqual(["Fit the jumper of the IACK chain at 2"]);
  });
  it("takes one for each chain that is used behind it", () => {
    const answer = ask("jumper", [master, talker], { master: "4", talker: "2" });
    expect(toDo(answer).sort()).toEqual([
      "Fit the jumper of the BG3 chain at 1",
      "Fit the jumper of the BG3 chain at 3",
      "Fit the jumper of the IACK chain at 1",
    ]);
  });
  it("needs nothing on a backplane that bridges it, and cannot be on one that nothing bridges", () => {
    expect(ask("passes", [talker], { talker: "3" }).verdict).toBe("workable");
    const broken = ask("breaks", [talker], { talker: "3" });
    expect(broken.verdict).toBe("ruled-out");
    expect(reasonOf(broken)).toBe("talker in 3 needs a card in 1: an empty slot breaks the IACK chain.");
  });
  it("is open where nobody knows what the backplane does", () => {
    const board = rack(vme, 5, "passes");
    const silent: Board = { ...board, chains: board.chains!.map((c) => ({ ...c, empty: "unknown" as const })) };
    const answer = askOn(vme, silent, [talker], at({ talker: "3" }));
    expect(answer.verdict).toBe("unknown");
    expect(answer.unknowns[0]).toMatchObject({
      says: "talker in 3 needs the IACK chain through 1; whether an empty slot passes it on is not known.",
      how: expect.stringContaining("Measure with the power off"),
    });
    expect(askOn(vme, silent, [talker], at({ talker: "1" })).verdict).toBe("workable");
  });
  it("is taken up by any card that passes the chain on", () => {
    const answer = ask("jumper", [master, talker, wide], { master: "1", wide: "2", talker: "4" });
    // The wide card stands in 2 and covers 3, where the backplane needs its jumper.
    expect(toDo(answer)).toEqual(["Fit the jumper of the IACK chain at 3"]);
  });
  it("that is covered takes no plug", () => {
    const covered = ask("plug", [talker, wide], { wide: "1", talker: "3" });
    expect(covered.verdict).toBe("ruled-out");
    expect(covered.reasons.flatMap((r) => r.facts.map((f) => f.says))).toContain(
      "talker in 3 needs a plug in 2 for the IACK chain; wide covers that slot.",
    );
    const open = ask("plug", [talker, wide], { wide: "4", talker: "2" });
    expect([open.verdict, toDo(open)]).toEqual(["conditional", ["Put a plug for the IACK chain into 1"]]);
  });
});

describe("a card before it", () => {
  it("may break one chain and pass another on", () => {
    const half = cardOn(vme, "half", { chain: { ...(onChains([]) as object), BG3: "breaks" } as OnChains });
    expect(ask("jumper", [half, talker], { half: "1", talker: "2" }).verdict).toBe("workable");
    expect(ask("jumper", [half, master], { half: "1", master: "2" }).verdict).toBe("ruled-out");
  });
  it("that is silent of the chain leaves it open", () => {
    const { IACK: _, ...others } = onChains([]) as Record<string, "passes">;
    const silent = cardOn(vme, "silent", { chain: others });
    const answer = ask("jumper", [silent, talker], { silent: "1", talker: "2" });
    expect(answer.verdict).toBe("unknown");
    expect(ask("jumper", [silent, master], { silent: "1", master: "2" }).verdict).toBe("workable");
  });
});

// IEEE Std 796-1983: serial priority (BPRN/ to BPRO/) must settle within one bus clock; at 10 MHz three masters can be chained.
describe("serial priority", () => {
  const multibus = busWith({
    id: "ieee-796",
    name: "IEEE 796 bus",
    memory_address_bits: 24,
    io_address_bits: 16,
    chains: [{ id: "BPRN", name: "serial priority chain", most: 3 }],
  });
  const masters = Array.from({ length: 5 }, (_, i) => cardOn(multibus, `m${i + 1}`, { chain: "uses" }));
  const asked = (count: number) => askOn(multibus, rack(multibus, 6, "passes"), masters.slice(0, count));
  it("serves three, in every order", () => {
    expect(asked(3)).toMatchObject({ verdict: "workable", count: "120" });
  });
  it("refuses a fourth, told once and counted once", () => {
    const answer = asked(4);
    expect(answer).toMatchObject({ verdict: "ruled-out", count: "0" });
    expect(answer.reasons.map((r) => r.facts.map((f) => f.says))).toEqual([
      ["The serial priority chain serves at most 3 cards; m1, m2, m3 and m4 use it."],
    ]);
  });
  it("does not count a card that passes the chain on", () => {
    const slave = cardOn(multibus, "slave", { chain: "passes" });
    expect(askOn(multibus, rack(multibus, 6, "passes"), [...masters.slice(0, 3), slave]).verdict).toBe("workable");
  });
});
