// The 16-bit ISA bus as an outside check: published jumper tables, worked coexistence cases and exact counts.
import { describe, expect, it } from "vitest";
import { compile } from "../../../../src/encoding/index.js";
import { resolveBuild } from "../../../../src/machine/index.js";
import { plan } from "../../../../src/planning/index.js";
import { type Card, hex, listed } from "../../../../src/records/index.js";
import { spellOutCard } from "../../../support/spell-out.js";
import { board, buildOf, cardTaking, catalogueOf, published } from "./catalogue.js";
import { coexistence, fixed, workedJumpers } from "./tables.js";

const idsOf = (cards: readonly Card[]) => cards.map(({ id }) => ({ id }));

describe("published jumper tables, switch by switch", () => {
  it.each(workedJumpers)("$card $what at $setting gives $result", ({ card: id, what, setting, result }) => {
    const card = published.find((c) => c.id === id)!;
    const code = setting.includes(" ") && !setting.startsWith("jumper") ? setting.split(" ") : [...setting];
    const names: Record<string, Record<string, string[]>> = {
      "net8-A": { io: ["S1", "S2", "S3"], ram: ["S4", "S5", "S6", "S7", "S8"], rom: ["S4", "S5", "S6", "S7", "S8"] },
      "net8-B": { io: ["S6", "S7", "S8"] },
      "net8-C": { io: ["S6", "S7", "S8"] },
      "net16-E": { io: ["S6", "S5", "S4", "S3", "S2", "S1"], irq: ["S10", "S9", "S8", "S7"] },
      "net8-F": { io: ["S2", "S1", "S0"] },
    };
    const set: Record<string, string> = { ROM: "in" };
    const switches = names[id]?.[what];
    if (switches) for (const [i, s] of switches.entries()) set[s] = code[i]!;
    else if (setting.startsWith("jumper")) set.IRQ = setting.replace("jumper ", "");
    else for (const s of setting.split("+")) set[s] = "closed";
    const holds = (when: Readonly<Record<string, unknown>> | undefined) => Object.entries(when ?? {}).every(([s, p]) => set[s] === p);
    const inClaims = listed(card.claims).filter((c) => holds(c.when));
    const inPositions = (card.settings ?? []).flatMap((s) => s.positions.filter((p) => set[s.id] === p.id));
    const all = [...inClaims, ...inPositions];
    const got = {
      io: all
        .flatMap((c) => [...listed(c.io)])
        .map((w) =>
          (result.includes("-") ? `${w.base.toString(16)}-${(w.base + w.size - 1).toString(16)}` : w.base.toString(16)).toUpperCase(),
        ),
      ram: all
        .flatMap((c) => [...listed(c.memory)])
        .filter((m) => m.is === "ram")
        .map((m) => m.base.toString(16).toUpperCase()),
      rom: all
        .flatMap((c) => [...listed(c.memory)])
        .filter((m) => m.is === "option-rom")
        .map((m) => m.base.toString(16).toUpperCase()),
      irq: all.flatMap((c) => [...listed(c.interrupts)]).map((i) => i.line.replace("IRQ", "")),
      dma: all.flatMap((c) => [...listed(c.dma)]).map((d) => d.channel),
    };
    expect(got[what as keyof typeof got]).toEqual([result]);
  });
});

describe("worked coexistence cases", () => {
  it.each(coexistence)("$name", ({ settings, conflicts, together }) => {
    const cards = settings.map(cardTaking);
    const answer = plan(catalogueOf(cards), buildOf(idsOf(cards)), { brief: true });
    if (answer.kind !== "answer") throw new Error("misasked");
    expect(answer.verdict).toBe(together ? "workable" : "ruled-out");
    // Every pair that meets, found by the rules one by one.
    const asked = resolveBuild(catalogueOf(cards), buildOf(idsOf(cards)));
    if (asked.kind !== "question") throw new Error("misasked");
    const found = compile(asked.question)
      .sure.filter((d) => ["io-windows", "memory-windows", "interrupts", "dma"].includes(d.fact.rule))
      .map((d) => d.fact.says);
    expect(found).toHaveLength(conflicts.length);
    for (const c of conflicts) {
      const where =
        c.resource === "irq"
          ? `IRQ${c.at}`
          : c.resource === "dma"
            ? `DMA channel ${c.at}`
            : c.at
                .split("-")
                .map((a) => hex(Number.parseInt(a, 16), c.resource === "io" ? 3 : 5))
                .join("–");
      const said = found.filter((f) => c.between.every((b) => f.toLowerCase().includes(b.toLowerCase())) && f.includes(where));
      expect(said, `${c.resource} ${c.at} between ${c.between}`).toHaveLength(1);
    }
  });
});

describe("exact counts of settings that work", () => {
  // "RAM block 8 (offset 0)" of the published choice set: switches 7 and 8 at 0; ROM not fitted.
  const net8A = { id: "net8-A", settings: { S7: "0", S8: "0", ROM: "out" } };
  it.each([
    { cards: [net8A], workable: "84", of: 320 },
    { cards: [net8A, { id: "lt8-G" }], workable: "504", of: 5120 },
    { cards: [{ id: "eth16-I" }, { id: "lt8-G" }], workable: "176", of: 640 },
    { cards: [{ id: "eth16-I" }, { id: "snd-H" }], workable: "2025", of: 5760 },
  ])("$workable of $of", ({ cards, workable, of }) => {
    const catalogue = catalogueOf(published);
    const answer = plan(catalogue, buildOf(cards));
    if (answer.kind !== "answer") throw new Error(answer.faults[0]!.says);
    expect({ count: answer.count, exact: answer.exact }).toEqual({ count: workable, exact: true });
    // Without the machine's own resources, and each card alone, every published choice is there.
    const bare = {
      ...catalogue,
      boards: new Map([
        [
          board.id,
          {
            ...board,
            fixed: [{ name: "nothing", io: "none" as const, memory: "none" as const, interrupts: "none" as const, dma: "none" as const }],
          },
        ],
      ]),
    };
    const choices = cards.map((c) => {
      const alone = plan(bare, buildOf([c]));
      return alone.kind === "answer" ? Number(alone.count) : 0;
    });
    expect(choices.reduce((a, b) => a * b, 1)).toBe(of);
  });
});

describe("what the bus itself decides", () => {
  const one = (id: string, slot: string, settings: Record<string, string>) =>
    plan(catalogueOf(published), { ...buildOf([{ id, settings }]), cards: [{ card: id, slot, settings }] }, { brief: true });

  it("a card marked IRQ 2 shares the line with one set to IRQ 9", () => {
    const cards = [cardTaking({ id: "old", irq: [2] }), cardTaking({ id: "new", irq: [9] })];
    const a = plan(catalogueOf(cards), buildOf(idsOf(cards)), { brief: true });
    expect(a.kind === "answer" && a.reasons[0]!.facts[0]!.says).toMatch(/IRQ2 and IRQ9 are two names of one interrupt line/);
  });
  it("a 16-bit card does not go into an 8-bit slot", () => {
    const a = one("eth16-I", "A", { IO: "300", IRQ: "10" });
    expect(a.kind === "answer" && a.verdict).toBe("ruled-out");
  });
  it("IRQ 10 and above do not reach an 8-bit edge", () => {
    const card = { ...cardTaking({ id: "short", irq: [10] }), edge: "8-bit" };
    const a = plan(catalogueOf([card]), buildOf(idsOf([card])), { brief: true });
    expect(a.kind === "answer" && a.reasons[0]!.facts[0]!.rule).toBe("lines");
  });
  // D. Kenney, "Port Addresses": a card at base B that decodes 10 bits answers again at B + n * 400h.
  it("a card that decodes ten address lines answers again every 400h", () => {
    const old = spellOutCard({ ...cardTaking({ id: "old" }), claims: [{ io: [{ base: 0x300, size: 16, decoded_bits: 10 }] }] });
    for (const base of [0x700, 0xb00, 0xf00, 0x1300]) {
      const far = cardTaking({ id: "far", io: [[base.toString(16), (base + 7).toString(16)]] });
      const a = plan(catalogueOf([old, far]), buildOf(idsOf([old, far])), { brief: true });
      expect(a.kind === "answer" && a.verdict, hex(base)).toBe("ruled-out");
    }
    const beside = cardTaking({ id: "far", io: [["710", "717"]] });
    const a = plan(catalogueOf([old, beside]), buildOf(idsOf([old, beside])), { brief: true });
    expect(a.kind === "answer" && a.verdict).toBe("workable");
  });
  it("names what the machine itself takes", () => {
    expect(fixed.length).toBe(board.fixed.length);
  });
});
