// The 16-bit ISA bus as a catalogue in our own record format: bus, an AT-class board, and the nine published jumper tables as
// cards whose settings are the switches themselves. Card names are neutral; sources stand in tables.ts.
import { type Catalogue, gather } from "../../../../src/catalogue/index.js";
import type { Board, Build, Bus, Card, Claims, ConditionalClaims, Firmware, Loaded, Setting } from "../../../../src/records/index.js";
import { spellOutBoard, spellOutCard } from "../../../support/spell-out.js";
import { type Claimed, eth16I, fixed, lt8G, net8A, net8B, net8C, net8F, net16D, net16E, sndH } from "./tables.js";

const at = (hex: string) => Number.parseInt(hex, 16);

/** Lines on the 62-way and the 98-way edge; IRQ 2 of an 8-bit card is IRQ 9 (Linux kernel, arcnet-hardware.rst). Edge-triggered (IBM AIX, "Interrupt Trigger"). */
export const isa: Bus = {
  id: "isa",
  name: "ISA",
  memory_address_bits: 24,
  io_address_bits: 16,
  edges: [
    {
      id: "8-bit",
      name: "62 contacts",
      contacts: 62,
      fits: ["8-bit", "16-bit"],
      interrupts: ["IRQ9", "IRQ3", "IRQ4", "IRQ5", "IRQ6", "IRQ7"],
      dma: ["1", "2", "3"],
    },
    { id: "16-bit", name: "62 and 36 contacts", contacts: 98, fits: ["16-bit"] },
  ],
  interrupts: [3, 4, 5, 6, 7, 9, 10, 11, 12, 14, 15].map((n) => ({
    id: `IRQ${n}`,
    ...(n === 9 ? { also: ["IRQ2"] } : {}),
    trigger: "edge" as const,
    share: "never" as const,
  })),
  dma: ["0", "1", "2", "3", "5", "6", "7"].map((id) => ({ id, width: Number(id) < 4 ? 8 : 16 })),
  rails: [
    { id: "+5", volts: 5 },
    { id: "-5", volts: -5 },
    { id: "+12", volts: 12 },
    { id: "-12", volts: -12 },
  ],
};

export function claimsOf(c: Claimed): Claims {
  return {
    ...(c.io?.length ? { io: c.io.map(([a, b]) => ({ base: at(a!), size: at(b!) - at(a!) + 1 })) } : {}),
    ...(c.mem?.length ? { memory: c.mem.map(([a, b]) => ({ base: at(a!), size: at(b!) - at(a!) + 1 })) } : {}),
    ...(c.irq?.length ? { interrupts: c.irq.map((n) => ({ line: `IRQ${n}` })) } : {}),
    ...(c.dma?.length ? { dma: c.dma.map((n) => ({ channel: `${n}` })) } : {}),
  };
}

export const board: Board = spellOutBoard({
  id: "at-class",
  name: "AT-class board",
  maker: "none",
  model: "plain",
  bus: "isa",
  revisions: [{ id: "1", tell: "There is one." }],
  clock_MHz: 8,
  slots: [
    { id: "A", edge: "8-bit", position: 1 },
    ...["B", "C", "D", "E", "F", "G"].map((id, i) => ({ id, edge: "16-bit", position: i + 2 })),
  ],
  fixed: fixed.map((f) => ({ name: f.id, ...(claimsOf(f) as Omit<Board["fixed"][number], "name">) })),
  rails: [{ rail: "+5", limit_A: 20 }],
  firmware: ["plain"],
  firmware_sockets: [{ id: "U1", pins: 28, data_width: 8, window: { base: 0xf0000, size: 0x10000 }, wired_for: "27C512", slowest_ns: 200 }],
});

const firmware: Firmware = {
  id: "plain",
  name: "Plain firmware",
  maker: "none",
  boards: [{ board: "at-class" }],
  versions: [{ id: "1", image: { size: 65536, crc32: "unknown" } }],
};

const card = (id: string, edge: string, settings: Setting[], claims: ConditionalClaims[], more: Partial<Card> = {}): Card =>
  spellOutCard({
    id,
    name: id,
    maker: "none",
    model: id,
    does: ["test"],
    bus: "isa",
    edge,
    room: { length_mm: 150, height_mm: 100 },
    power: [{ rail: "+5", worst_A: 0.5 }],
    settings,
    ...(claims.length > 0 ? { claims } : {}),
    ...more,
  });
const bit = (id: string): Setting => ({ id, name: id, by: "dip", positions: [{ id: "1" }, { id: "0" }] });
const onOff = (id: string): Setting => ({ id, name: id, by: "dip", positions: [{ id: "OFF" }, { id: "ON" }] });
const when = (switches: readonly string[], code: readonly string[]) => Object.fromEntries(switches.map((s, i) => [s, code[i]!]));
const ports = (base: string, size: number) => ({ io: [{ base: at(base), size }] });
const irqJumper = (table: Readonly<Record<string, number>>): Setting => ({
  id: "IRQ",
  name: "interrupt",
  by: "jumper",
  positions: Object.entries(table).map(([id, n]) => ({ id, interrupts: [{ line: `IRQ${n}` }] })),
});
const own = (numbers: readonly number[]) => Object.fromEntries(numbers.map((n) => [`${n}`, n]));

export const published: readonly Card[] = [
  card(
    "net8-A",
    "8-bit",
    [
      ...["S1", "S2", "S3", "S4", "S5", "S6", "S7", "S8"].map(bit),
      irqJumper(own(net8A.irq)),
      { id: "ROM", name: "boot ROM", by: "jumper", positions: [{ id: "out" }, { id: "in" }] },
    ],
    [
      ...Object.entries(net8A.io).map(([code, base]) => ({ when: when(["S1", "S2", "S3"], [...code]), ...ports(base, 16) })),
      ...Object.entries(net8A.memory).flatMap(([code, [ram, rom]]) => {
        const w = when(["S4", "S5", "S6", "S7", "S8"], [...code]);
        return [
          { when: w, memory: [{ base: at(ram), size: 2048, is: "ram" as const }] },
          { when: { ...w, ROM: "in" }, memory: [{ base: at(rom), size: 8192, is: "option-rom" as const }] },
        ];
      }),
    ],
  ),
  card(
    "net8-B",
    "8-bit",
    [...["S6", "S7", "S8"].map(bit), irqJumper(own(net8B.irq))],
    Object.entries(net8B.io).map(([code, [a, b]]) => ({ when: when(["S6", "S7", "S8"], [...code]), ...ports(a, at(b) - at(a) + 1) })),
  ),
  card(
    "net8-C",
    "8-bit",
    [...["S6", "S7", "S8"].map(onOff), irqJumper(net8C.irq)],
    Object.entries(net8C.io).map(([code, base]) => ({ when: when(["S6", "S7", "S8"], code.split(" ")), ...ports(base, 16) })),
  ),
  card(
    "net16-D",
    "16-bit",
    [...["S7", "S8", "S9", "S10"].map(onOff), irqJumper(net16D.irq)],
    Object.entries(net16D.memory).map(([code, [ram, prom]]) => ({
      when: when(["S7", "S8", "S9", "S10"], code.split(" ")),
      memory: [
        { base: at(ram), size: 2048 },
        { base: at(prom), size: 8192 },
      ],
    })),
  ),
  card("net16-E", "16-bit", ["S10", "S9", "S8", "S7", "S6", "S5", "S4", "S3", "S2", "S1"].map(bit), [
    ...Object.entries(net16E.irq).map(([code, n]) => ({
      when: when(["S10", "S9", "S8", "S7"], [...code]),
      interrupts: [{ line: `IRQ${n}` }],
    })),
    ...[0, 1].flatMap((six) =>
      Array.from({ length: 16 }, (_, low) => ({
        when: when(["S6", "S4", "S3", "S2", "S1"], [`${six}`, ...low.toString(2).padStart(4, "0")]),
        ...ports((0x200 + low * 0x10 + six * 0x100).toString(16), 16),
      })),
    ),
  ]),
  card(
    "net8-F",
    "8-bit",
    ["S2", "S1", "S0"].map(bit),
    Object.entries(net8F.io).map(([code, base]) => ({ when: when(["S2", "S1", "S0"], [...code]), ...ports(base, 16) })),
  ),
  card(
    "lt8-G",
    "8-bit",
    [
      { id: "IO", name: "ports", by: "dip", positions: lt8G.io.map((id) => ({ id, ...ports(id, 8) })) },
      ...Object.entries(lt8G.irq).map(
        ([id, n]): Setting => ({
          id,
          name: "interrupt",
          by: "dip",
          positions: [{ id: "open" }, { id: "closed", interrupts: [{ line: `IRQ${n}` }] }],
        }),
      ),
      ...["SW4", "SW5", "SW6", "SW7"].map((id): Setting => ({ id, name: "DMA", by: "dip", positions: [{ id: "open" }, { id: "closed" }] })),
    ],
    Object.entries(lt8G.dma).map(([channel, pair]) => ({ when: when(pair, ["closed", "closed"]), dma: [{ channel }] })),
    {
      impossible: [
        ...[
          ["SW1", "SW2"],
          ["SW1", "SW3"],
          ["SW2", "SW3"],
        ].map((p) => ({ when: when(p, ["closed", "closed"]), why: "at most one interrupt switch" })),
        ...Object.values(lt8G.dma).flatMap((p) =>
          [
            ["open", "closed"],
            ["closed", "open"],
          ].map((c) => ({ when: when(p, c), why: "both switches of a pair go together" })),
        ),
        { when: { SW4: "closed", SW5: "closed" }, why: "one pair only" },
        { when: { SW4: "open", SW5: "open" }, why: "one pair must be closed" },
      ],
    },
  ),
  card(
    "snd-H",
    "16-bit",
    [
      { id: "IO", name: "ports", by: "jumper", positions: sndH.io.map((id) => ({ id, ...ports(id, 16) })) },
      irqJumper(own(sndH.irq)),
      ...(["dma8", "dma16"] as const).map(
        (id): Setting => ({ id, name: id, by: "jumper", positions: sndH[id].map((n) => ({ id: `${n}`, dma: [{ channel: `${n}` }] })) }),
      ),
    ],
    [],
  ),
  card(
    "eth16-I",
    "16-bit",
    [{ id: "IO", name: "ports", by: "jumper", positions: eth16I.io.map((id) => ({ id, ...ports(id, 32) })) }, irqJumper(own(eth16I.irq))],
    [],
  ),
];

/** A card that takes just what a worked case says, each window a claim of its own. */
export function cardTaking(c: Claimed): Card {
  const one = (k: Partial<Claimed>): ConditionalClaims => claimsOf({ id: c.id, ...k });
  return card(
    c.id,
    "16-bit",
    [],
    [
      ...(c.io ?? []).map((w) => one({ io: [w] })),
      ...(c.mem ?? []).map((w) => one({ mem: [w] })),
      ...(c.irq ?? []).map((n) => one({ irq: [n] })),
      ...(c.dma ?? []).map((n) => one({ dma: [n] })),
    ],
  );
}

export function catalogueOf(cards: readonly Card[], others: readonly Loaded[] = []): Catalogue {
  return gather([
    { kind: "bus", record: isa, file: "" },
    { kind: "board", record: board, file: "" },
    { kind: "firmware", record: firmware, file: "" },
    ...cards.map((record) => ({ kind: "card" as const, record, file: "" })),
    ...others,
  ]);
}

const slots = ["B", "C", "D", "E", "F", "G"];

/** The cards in slots of their own, so that a count is one of settings alone. */
export function buildOf(cards: readonly { readonly id: string; readonly settings?: Readonly<Record<string, string>> }[]): Build {
  return {
    id: "q",
    name: "q",
    board: "at-class",
    cards: cards.map((c, i) => ({ card: c.id, slot: slots[i]!, ...(c.settings ? { settings: { ...c.settings } } : {}) })),
  };
}
