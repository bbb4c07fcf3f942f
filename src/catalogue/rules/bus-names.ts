// Edges, lines, channels and rails that boards and cards name are those of their bus.
import { type Bus, type Claims, listed } from "../../records/index.js";
import { claimSites, fixedSites, type Path } from "../claims.js";
import { type Ref, ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { noSuch } from "../say.js";
import { mainMemory } from "../unsaid.js";

export const busNames: Rule = {
  name: "bus-names",
  says: "Edges, interrupt lines, DMA channels, rails, address spaces and overlay lines are those the bus has.",
  why: "A line, rail, channel, edge or space the bus does not have takes part in no comparison, so its clashes go unseen.",
  mend: "Write the name as the bus has it (any of its other names will do), or add it to the record of the bus.",
  scope: ["bus", "board", "card"],
  *check({ catalogue }): Iterable<Draft> {
    for (const bus of catalogue.buses.values()) {
      const see = seeker(bus, (...path) => ref("bus", bus.id, ...path));
      for (const [i, edge] of bus.edges.entries()) {
        yield* see("edge", edge.fits, "edges", i, "fits");
        yield* see("line", edge.interrupts, "edges", i, "interrupts");
        yield* see("channel", edge.dma, "edges", i, "dma");
      }
    }
    for (const board of catalogue.boards.values()) {
      const bus = catalogue.buses.get(board.bus);
      if (!bus) continue;
      const see = seeker(bus, (...path) => ref("board", board.id, ...path));
      for (const [i, slot] of board.slots.entries()) {
        yield* see("edge", [slot.edge], "slots", i, "edge");
        yield* see("line", slot.interrupts, "slots", i, "interrupts");
        yield* see("channel", slot.dma, "slots", i, "dma");
      }
      for (const [i, rail] of board.rails.entries()) yield* see("rail", [rail.rail], "rails", i, "rail");
      for (const { path, claims } of fixedSites(board)) yield* claimed(see, claims, path);
      for (const [i, { window }] of board.firmware_sockets.entries())
        yield* see("space", names(window.space), "firmware_sockets", i, "window", "space");
      yield* see("space", names(mainMemory(board)?.space), "memory", "space");
    }
    for (const card of catalogue.cards.values()) {
      const bus = catalogue.buses.get(card.bus);
      if (!bus) continue;
      const see = seeker(bus, (...path) => ref("card", card.id, ...path));
      yield* see("edge", [card.edge], "edge");
      for (const [i, draw] of card.power.entries()) yield* see("rail", [draw.rail], "power", i, "rail");
      yield* see("rail", card.needs?.rails, "needs", "rails");
      for (const { path, claims } of claimSites(card)) yield* claimed(see, claims, path);
    }
  },
};

type Sort = "edge" | "line" | "channel" | "rail" | "space" | "overlay";
type Seek = (sort: Sort, names: readonly string[] | undefined, ...path: (string | number)[]) => Iterable<Draft>;

const sorts = {
  edge: { what: "edge", field: "edges", names: (bus: Bus) => bus.edges.map((e) => e.id) },
  line: { what: "interrupt line", field: "interrupts", names: (bus: Bus) => bus.interrupts.flatMap((l) => [l.id, ...(l.also ?? [])]) },
  channel: { what: "DMA channel", field: "dma", names: (bus: Bus) => listed(bus.dma).map((d) => d.id) },
  rail: { what: "rail", field: "rails", names: (bus: Bus) => bus.rails.map((r) => r.id) },
  space: { what: "address space", field: "spaces", names: (bus: Bus) => listed(bus.spaces).map((s) => s.id) },
  overlay: { what: "overlay line", field: "overlay_lines", names: (bus: Bus) => listed(bus.overlay_lines).map((l) => l.id) },
} as const;

function seeker(bus: Bus, place: (...path: Path) => Ref): Seek {
  return function* (sort, names, ...path) {
    const { what, field, names: of } = sorts[sort];
    const known = of(bus);
    // A list is pointed into; a lone name is where it stands.
    const inList = ["fits", "interrupts", "dma", "rails", "yields_to"].includes(String(path.at(-1)));
    for (const [i, name] of (names ?? []).entries()) {
      if (known.includes(name)) continue;
      const home = bus.id === place().id && place().kind === "bus" ? undefined : ref("bus", bus.id, field);
      yield noSuch(`${what} on ${bus.name}`, name, known, inList ? place(...path, i) : place(...path), home);
    }
  };
}

/** The names a field gives: one, several, or none where nobody knows. */
function names(given: string | readonly string[] | undefined): readonly string[] {
  return given === undefined || given === "unknown" ? [] : [given].flat();
}

function* claimed(see: Seek, claims: Claims, path: Path): Iterable<Draft> {
  for (const [i, w] of listed(claims.memory).entries()) {
    yield* see("space", names(w.space), ...path, "memory", i, "space");
    yield* see("overlay", names(w.asserts), ...path, "memory", i, "asserts");
    yield* see("overlay", names(w.yields_to), ...path, "memory", i, "yields_to");
  }
  for (const [i, c] of listed(claims.interrupts).entries()) yield* see("line", [c.line], ...path, "interrupts", i, "line");
  for (const [i, c] of listed(claims.dma).entries()) yield* see("channel", [c.channel], ...path, "dma", i, "channel");
}
