// Inside a record, things of one sort have names of their own: two slots S1 could not be told apart.
import type { Kind } from "../../records/index.js";
import { meetRevisions } from "../claims.js";
import { copyName } from "../copies.js";
import { type Ref, ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";

type Named = { readonly id: string; readonly revisions?: readonly string[] };
type List = readonly [what: string, things: readonly Named[] | undefined, ...path: (string | number)[]];

const named = (names: readonly (string | number)[] | undefined): readonly Named[] | undefined => names?.map((id) => ({ id: String(id) }));

export const doubleName: Rule = {
  name: "double-name",
  says: "Inside a record, things of one sort have names of their own.",
  why: "Two things of one name cannot be told apart, and what is said of one is taken for the other.",
  mend: "Give one of them another name, as it is printed on the thing.",
  scope: ["bus", "board", "firmware", "card", "build", "part"],
  *check({ catalogue }): Iterable<Draft> {
    for (const bus of catalogue.buses.values()) {
      const lines = bus.interrupts.flatMap((l) => [l.id, ...(l.also ?? [])]);
      yield* doubles("bus", bus.id, [
        ["source", bus.sources, "sources"],
        ["edge", bus.edges, "edges"],
        ["rail", bus.rails, "rails"],
        ["DMA channel", bus.dma, "dma"],
      ]);
      // Other names of a line count too: a jumper marked with one must mean one line.
      for (const name of repeated(lines)) yield draft("interrupt line", name, ref("bus", bus.id, "interrupts"));
    }
    for (const board of catalogue.boards.values())
      yield* doubles("board", board.id, [
        ["source", board.sources, "sources"],
        ["revision", board.revisions, "revisions"],
        ["slot", board.slots, "slots"],
        ["firmware socket", board.firmware_sockets, "firmware_sockets"],
        ["firmware family", named(board.firmware), "firmware"],
      ]);
    for (const family of catalogue.firmware.values())
      yield* doubles("firmware", family.id, [
        ["source", family.sources, "sources"],
        ["version", family.versions, "versions"],
        ["feature", family.features, "features"],
      ]);
    for (const card of catalogue.cards.values())
      yield* doubles("card", card.id, [
        ["source", card.sources, "sources"],
        ["revision", card.revisions, "revisions"],
        ["setting", card.settings, "settings"],
        ["point", card.enable?.points, "enable", "points"],
        ...(card.settings ?? []).map((s, i): List => ["position", s.positions, "settings", i, "positions"]),
      ]);
    for (const build of catalogue.builds.values())
      yield* doubles("build", build.id, [
        ["mode", build.modes, "modes"],
        ["card (name the copies with as)", named(build.cards.map(copyName)), "cards"],
        ["mode's result", named(build.result?.modes?.map((m) => m.mode)), "result", "modes"],
      ]);
    for (const part of catalogue.parts.values()) {
      yield* doubles("part", part.id, [["source", part.sources, "sources"]]);
      if (part.type === "memory") yield* doubles("part", part.id, [["pin", named(part.pins.map((p) => p.pin)), "pins"]]);
      if (part.type === "connector") yield* doubles("part", part.id, [["contact", named(part.face.map((c) => c.contact)), "face"]]);
      if (part.type === "switch")
        yield* doubles("part", part.id, [
          ["position", named(part.positions), "positions"],
          ["terminal", named(part.terminals), "terminals"],
        ]);
    }
  },
};

/** Two things of one name are two unless they stand on different revisions: IC7 of revision B and IC7 of C are one place. */
function* doubles(kind: Kind, id: string, lists: readonly List[]): Iterable<Draft> {
  for (const [what, things, ...path] of lists) {
    if (!things) continue;
    for (const [second, thing] of things.entries()) {
      const first = things.findIndex((t) => t.id === thing.id && meetRevisions(t.revisions, thing.revisions));
      if (first < 0 || first >= second) continue;
      yield {
        ...draft(what, thing.id, ref(kind, id, ...path, second)),
        related: [{ says: "The first one.", at: ref(kind, id, ...path, first) }],
      };
    }
  }
}

function draft(what: string, name: string, at: Ref): Draft {
  return {
    says: `Two things here bear the name ${name}: each ${what} needs a name of its own.`,
    at,
    hint: "Rename or remove one of them.",
  };
}

function repeated(names: readonly string[]): ReadonlySet<string> {
  return new Set(names.filter((n, i) => names.indexOf(n) !== i));
}
