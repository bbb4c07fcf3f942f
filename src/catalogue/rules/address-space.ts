// Windows lie inside the address space, and inside what a card's edge can reach.
import { bytes, type Claims, hex, listed } from "../../records/index.js";
import { claimSites, fixedSites, type Path } from "../claims.js";
import { type Ref, ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

export const addressSpace: Rule = {
  name: "address-space",
  says: "Every window lies inside the address space of the bus, and of the card's edge.",
  why: "An address no line can carry is a slip of a digit, and the clash at the address that was meant goes unseen.",
  mend: "Count the digits of the address against the lines of the bus and of the card's edge; correct the address, or the number of lines.",
  scope: ["board", "card"],
  *check({ catalogue }): Iterable<Draft> {
    for (const board of catalogue.boards.values()) {
      const bus = catalogue.buses.get(board.bus);
      if (!bus) continue;
      const home = (field: string) => ref("bus", bus.id, field);
      const limits = {
        memory: bus.memory_address_bits,
        io: bus.io_address_bits,
        memoryHome: home("memory_address_bits"),
        ioHome: home("io_address_bits"),
      };
      for (const { path, claims } of fixedSites(board)) yield* beyond(claims, limits, (...p) => ref("board", board.id, ...path, ...p));
      for (const [i, socket] of board.firmware_sockets.entries())
        yield* beyond({ memory: [socket.window] }, limits, () => ref("board", board.id, "firmware_sockets", i, "window", "base"));
    }
    for (const card of catalogue.cards.values()) {
      const bus = catalogue.buses.get(card.bus);
      if (!bus) continue;
      const at = bus.edges.findIndex((e) => e.id === card.edge);
      const bits = bus.edges[at]?.address_bits;
      const narrow = bits !== undefined && bits < bus.memory_address_bits;
      const limits = {
        memory: narrow ? bits : bus.memory_address_bits,
        io: bus.io_address_bits,
        memoryHome: narrow ? ref("bus", bus.id, "edges", at, "address_bits") : ref("bus", bus.id, "memory_address_bits"),
        ioHome: ref("bus", bus.id, "io_address_bits"),
      };
      for (const { path, claims } of claimSites(card)) yield* beyond(claims, limits, (...p) => ref("card", card.id, ...path, ...p));
    }
  },
};

interface Limits {
  readonly memory: number;
  readonly io: number;
  readonly memoryHome: Ref;
  readonly ioHome: Ref;
}

function* beyond(claims: Claims, limits: Limits, place: (...path: Path) => Ref): Iterable<Draft> {
  const hint = "Count the digits of the address: a hex digit is four lines.";
  for (const [i, w] of listed(claims.memory).entries()) {
    const end = w.base + bytes(w.size);
    if (end <= 2 ** limits.memory) continue;
    yield {
      says: `The window ends at ${hex(end - 1)}, beyond what ${limits.memory} address lines reach.`,
      at: place("memory", i, "base"),
      expected: `at most ${hex(2 ** limits.memory - 1)}`,
      related: [{ says: "The number of lines is given here.", at: limits.memoryHome }],
      hint,
    };
  }
  for (const [i, w] of listed(claims.io).entries()) {
    const related = [{ says: "The number of port address lines is given here.", at: limits.ioHome }];
    if (w.base + w.size > 2 ** limits.io) {
      const says = `The ports end at ${hex(w.base + w.size - 1)}, beyond what ${limits.io} address lines reach.`;
      yield { says, at: place("io", i, "base"), expected: `at most ${hex(2 ** limits.io - 1)}`, related, hint };
    } else if (typeof w.decoded_bits === "number" && w.decoded_bits > limits.io) {
      const says = `It cannot look at ${w.decoded_bits} address bits: the bus has ${limits.io} for ports.`;
      yield { says, at: place("io", i, "decoded_bits"), related, hint: "Leave decoded_bits out when all are looked at." };
    } else if (typeof w.decoded_bits === "number" && w.base + w.size > 2 ** w.decoded_bits) {
      yield {
        says: `The ports reach up to ${hex(w.base + w.size - 1)}, but with ${w.decoded_bits} bits decoded they lie below ${hex(2 ** w.decoded_bits)}.`,
        at: place("io", i, "decoded_bits"),
        hint: "Give the lowest address it answers at; the aliases follow from decoded_bits.",
      };
    }
  }
}
