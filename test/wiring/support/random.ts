// Random numbers that are the same every time, and random machines: modes, versions, cards, a few parts.
import type { Catalogue } from "../../../src/catalogue/index.js";
import type { Combination } from "../../../src/planning/index.js";
import type { Part, Switch } from "../../../src/records/index.js";
import type { WiringOptions } from "../../../src/wiring/index.js";
import {
  cable,
  centreOff,
  changeOver,
  coded,
  combination,
  dpst,
  grounding,
  header,
  m27c010,
  m27c020,
  m27c040,
  pair,
  resistor,
  rotary,
  socket32,
  spst,
  world,
} from "./world.js";

/** 32-bit xorshift. */
export class Random {
  constructor(private state: number) {
    this.state = (Math.imul(state + 1, 2654435761) | 1) >>> 0;
  }
  whole(below: number): number {
    this.state ^= this.state << 13;
    this.state ^= this.state >>> 17;
    this.state ^= this.state << 5;
    return (this.state >>> 0) % below;
  }
  flip(): boolean {
    return this.whole(1000) < 500;
  }
  pick<T>(list: readonly T[]): T {
    return list[this.whole(list.length)]!;
  }
}

export interface Machine {
  readonly catalogue: Catalogue;
  readonly combination: Combination;
  readonly options: WiringOptions;
  readonly switches: readonly Switch[];
}

const complement = (part: Switch): Switch => {
  const all: [string, string][] = ["1", "2", "4", "8"].map((t) => ["C", t]);
  const closes = Object.fromEntries(
    part.positions.map((p) => [p, all.filter(([, t]) => !(part.closes[p] ?? []).some(([, u]) => u === t))]),
  );
  return { ...part, id: `${part.id}-complement`, closes };
};

const pool: readonly Switch[] = [
  rotary(1, 12),
  rotary(2, 6),
  rotary(2, 6, "rotary", "make-before-break"),
  rotary(3, 4),
  rotary(4, 3),
  rotary(2, 2, "toggle"),
  rotary(1, 2, "toggle"),
  rotary(3, 3, "slide"),
  dpst,
  spst,
  centreOff(1),
  centreOff(2),
  coded(10),
  coded(16),
  complement(coded(10)),
];

/** Rotaries large enough for nearly every machine: with one of them few are refused. */
const large: readonly Switch[] = [rotary(8, 6), rotary(6, 4)];

/** One socket, one for even and one for odd bytes, or two in a row. */
export type Layout = "one" | "pair" | "row";

function socketsAs(layout: Layout, socket: typeof socket32): (typeof socket32)[] {
  if (layout === "one") return [socket];
  const second = { ...socket, id: "IC8" };
  if (layout === "row")
    return [
      { ...second, window: { base: 0xf0000, size: "64K" } },
      { ...socket, window: { base: 0xe0000, size: "64K" } },
    ];
  const window = { base: 0xe0000, size: "128K" };
  return [
    { ...second, lane: "odd", window },
    { ...socket, lane: "even", window },
  ];
}

export function machine(random: Random, layout: Layout = "one"): Machine {
  const modes = 2 + random.whole(5);
  const versionCount = 1 + random.whole(Math.min(modes, 4));
  const names = ["R2", "R4", "R4A", "R5", "R6"].slice(0, versionCount);
  const cardCount = random.whole(4);
  const kinds = Array.from({ length: cardCount }, () =>
    random.pick([grounding(true), grounding(false), pair(true), pair(false), changeOver]),
  );
  const cards = kinds.map((_, i) => `card-${i + 1}`);
  const wanted = Array.from({ length: modes }, () => ({ firmware: random.pick(names), on: cards.filter(() => random.flip()) }));
  const switches = [...new Set(Array.from({ length: 1 + random.whole(3) }, () => random.pick(pool)))];
  if (random.whole(4) === 0) switches.push(random.pick(large));
  const devices = [m27c010, m27c020, m27c040].filter(() => random.whole(3) > 0);
  // The pin order the socket is wired for is always known: an unknown one is refused in a test of its own.
  const parts: Part[] = [...new Set([m27c010, ...devices]), ...switches, resistor];
  if (random.flip()) parts.push(...header(random.pick([10, 16])));
  if (random.flip()) parts.push(cable(random.pick([4, 8, 16])));
  const carries = () => random.pick(["driven", "high", "low", "open", "supply"] as const);
  const upper = [2, 30, 31].filter(() => random.whole(4) > 0).map((pin) => ({ pin, carries: carries() }));
  const catalogue = world({
    parts,
    cards: Object.fromEntries(kinds.map((kind, i) => [cards[i]!, kind])),
    versions: Object.fromEntries(names.map((name) => [name, random.pick([0x4000, 0x8000, 0x10000])])),
    sockets: socketsAs(layout, { ...socket32, upper_pins: [{ pin: 1, carries: "supply" }, ...upper] }),
  });
  return {
    catalogue,
    combination: combination(wanted, cards),
    options: random.flip() ? { safest: `m${1 + random.whole(modes)}` } : {},
    switches,
  };
}
