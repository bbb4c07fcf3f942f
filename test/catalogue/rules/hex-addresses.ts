// Cases of the rule hex-addresses.
import type { TestClub } from "../../support/club.js";
import type { RuleCases } from "../../support/rule-cases.js";

/** The card with nothing but the positions of one setting, each at its ports, written as given. */
function ports(c: TestClub, ...positions: readonly (readonly [id: string, base: string, size: number])[]): void {
  if (!c.card.tc) throw new Error("the small club lost its card");
  const io = positions.map(([id], i) => ({ id, io: [{ base: 0x400 + i, size: positions[i]?.[2] ?? 1 }] }));
  const { claims: _c, impossible: _i, enable: _e, ...tc } = c.card.tc;
  c.card.tc = { ...tc, settings: [{ id: "J1", name: "Ports", by: "jumper", positions: [...io, { id: "off" }] }] };
  c.texts["card/tc"] = (text) => positions.reduce((all, [, base], i) => all.replace(`base: 0x40${i}`, `base: ${base}`), text);
  // What other records of the small club say of its settings goes with them.
  for (const build of Object.values(c.build)) for (const card of build.cards) Object.assign(card, { settings: undefined });
  for (const conflict of Object.values(c.conflict))
    for (const card of conflict.when.cards ?? []) Object.assign(card, { settings: undefined });
  Object.assign(c.build.tbd ?? {}, { result: undefined });
}

export default {
  good: {
    "decimal throughout, at multiples of the size": (c) => ports(c, ["low", "768", 8], ["high", "784", 8]),
    "one digit, the same either way": (c) => ports(c, ["low", "8", 8], ["high", "0x310", 8]),
    "hexadecimal throughout": (c) => ports(c, ["300", "0x300", 8], ["310", "0x310", 8]),
    "digits that are no address of the bus in hexadecimal": (c) => ports(c, ["low", "65528", 8]),
  },
  bad: {
    "a position marked with the same digits": (c) => ports(c, ["30", "30", 2], ["31", "0x40", 2]),
    "the same digits as the marking, and no neighbour in hexadecimal": (c) => ports(c, ["30", "30", 2]),
    "the marking with an h": (c) => ports(c, ["300h", "300", 4]),
    "a neighbour in hexadecimal": (c) => ports(c, ["low", "0x300", 8], ["high", "310", 8]),
    "a window that lies at no multiple of its size": (c) => ports(c, ["low", "300", 8]),
    "an address that reads as a power of ten": (c) => ports(c, ["low", "1E3", 1]),
    "a zero in front": (c) => ports(c, ["low", "0280", 8]),
    "an address the board takes in hexadecimal": (c) => {
      ports(c, ["low", "378", 2]);
      const fixed = c.board["tb-1"]?.fixed[0];
      Object.assign(fixed ?? {}, { io: [{ base: 0x378, size: 2 }] });
    },
    "a size in the same record as a hexadecimal base": (c) => {
      c.texts["card/tc"] = (text) => text.replace("size: 8}", "size: 10}");
    },
    "the window of a firmware socket": (c) => {
      c.texts["board/tb-1"] = (text) => text.replace(/base: 0xf0000/i, "base: 98304");
    },
  },
} satisfies RuleCases;
