// Windows lie inside the address space, and inside what a card's edge can reach.
import { type Bus, bytes, type Claims, hex, type IoWindow, listed, type MemoryWindow } from "../../records/index.js";
import { claimSites, fixedSites, type Path } from "../claims.js";
import { type Ref, ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { spaceBits } from "../windows.js";

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
      const limits = limitsOf(bus);
      for (const { path, claims } of fixedSites(board)) yield* inNoSlot(claims, (...p) => ref("board", board.id, ...path, ...p));
      for (const { path, claims } of fixedSites(board)) yield* beyond(claims, limits, (...p) => ref("board", board.id, ...path, ...p));
      for (const [i, socket] of board.firmware_sockets.entries())
        yield* beyond({ memory: [socket.window] }, limits, () => ref("board", board.id, "firmware_sockets", i, "window", "base"));
    }
    for (const card of catalogue.cards.values()) {
      const bus = catalogue.buses.get(card.bus);
      if (!bus) continue;
      const limits = limitsOf(bus, card.edge);
      for (const { path, claims } of claimSites(card)) yield* beyond(claims, limits, (...p) => ref("card", card.id, ...path, ...p));
    }
  },
};

/** A part of the board stands in no slot. */
function* inNoSlot(claims: Claims, place: (...path: Path) => Ref): Iterable<Draft> {
  for (const kind of ["io", "memory"] as const)
    for (const [i, window] of listed<IoWindow | MemoryWindow>(claims[kind]).entries())
      if (window.slot_step !== undefined)
        yield {
          says: "A part of the board stands in no slot, so its addresses follow none.",
          at: place(kind, i, "slot_step"),
          hint: "Leave slot_step out, or claim the window in the record of the card.",
        };
}

interface Lines {
  readonly bits: number;
  readonly home: Ref;
}

interface Limits {
  /** Of a window in this space, or in the only one. */
  readonly memory: (space: string | undefined) => Lines;
  readonly io: Lines;
}

/** What the bus carries, and the edge of a card, if that is fewer lines. */
function limitsOf(bus: Bus, edge?: string): Limits {
  const at = bus.edges.findIndex((e) => e.id === edge);
  const onEdge = bus.edges[at]?.address_bits;
  const memory = (space: string | undefined): Lines => {
    const bits = spaceBits(bus, space);
    if (onEdge !== undefined && onEdge < bits) return { bits: onEdge, home: ref("bus", bus.id, "edges", at, "address_bits") };
    const named = bus.spaces?.findIndex((s) => s.id === space) ?? -1;
    return { bits, home: named < 0 ? ref("bus", bus.id, "memory_address_bits") : ref("bus", bus.id, "spaces", named, "bits") };
  };
  return { memory, io: { bits: bus.io_address_bits, home: ref("bus", bus.id, "io_address_bits") } };
}

function* beyond(claims: Claims, limits: Limits, place: (...path: Path) => Ref): Iterable<Draft> {
  for (const [i, w] of listed(claims.memory).entries()) {
    const lines = limits.memory(w.space);
    const told = { lines, what: "window", kind: "memory", related: "The number of lines is given here." };
    yield* oneWindow({ ...w, size: bytes(w.size) }, told, (field) => place("memory", i, field));
  }
  for (const [i, w] of listed(claims.io).entries()) {
    const told = { lines: limits.io, what: "ports", kind: "ports", related: "The number of port address lines is given here." };
    yield* oneWindow(w, told, (field) => place("io", i, field));
  }
}

interface Told {
  readonly lines: Lines;
  readonly what: string;
  readonly kind: string;
  readonly related: string;
}

interface Run {
  readonly base: number;
  readonly size: number;
  readonly decoded_bits?: number | "unknown" | undefined;
}

function* oneWindow({ base, size, decoded_bits: looked }: Run, told: Told, at: (field: string) => Ref): Iterable<Draft> {
  const { bits, home } = told.lines;
  const related = [{ says: told.related, at: home }];
  const [end, many] = [base + size - 1, told.what === "ports"];
  if (end >= 2 ** bits) {
    const says = `The ${told.what} ${many ? "end" : "ends"} at ${hex(end)}, beyond what ${bits} address lines reach.`;
    const hint = "Count the digits of the address: a hex digit is four lines.";
    yield { says, at: at("base"), expected: `at most ${hex(2 ** bits - 1)}`, related, hint };
  } else if (typeof looked === "number" && looked > bits) {
    const says = `It cannot look at ${looked} address bits: the bus has ${bits} for ${told.kind}.`;
    yield { says, at: at("decoded_bits"), related, hint: "Leave decoded_bits out when all are looked at." };
  } else if (typeof looked === "number" && end >= 2 ** looked) {
    const reach = `The ${told.what} ${many ? "reach" : "reaches"} up to ${hex(end)}, but with ${looked} bits decoded`;
    yield {
      says: `${reach} ${many ? "they lie" : "it lies"} below ${hex(2 ** looked)}.`,
      at: at("decoded_bits"),
      hint: "Give the lowest address it answers at; the aliases follow from decoded_bits.",
    };
  }
}
