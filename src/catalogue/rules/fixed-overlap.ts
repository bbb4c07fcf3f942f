// A board does not take one resource twice: two of its own things at one address would fight on every machine.
import { type Board, type Bus, bytes, hex, itemAt, listed } from "../../records/index.js";
import { type ClaimSite, fixedSites, meetRevisions } from "../claims.js";
import { lineId } from "../lines.js";
import { ref } from "../ref.js";
import type { Draft, Rule } from "../rule.js";
import { meetIo, meetMemory } from "../windows.js";

export const fixedOverlap: Rule = {
  name: "fixed-overlap",
  says: "Resources the board itself takes do not overlap.",
  why: "Two things of a board at one address would fight on every such machine; one of the addresses is a slip.",
  mend: "Correct one of them, or say for which revisions or which memory each of them holds.",
  scope: ["board"],
  *check({ catalogue }): Iterable<Draft> {
    for (const board of catalogue.boards.values()) {
      const bus = catalogue.buses.get(board.bus);
      if (!bus) continue;
      const sites = fixedSites(board);
      for (const [i, a] of sites.entries()) {
        for (const [j, b] of sites.slice(0, i).entries()) {
          if (!meetRevisions(a.revisions, b.revisions) || !sameMemory(board, i, j)) continue;
          const clash = clashOf(a, b, bus);
          if (!clash) continue;
          const [says, mine, other] = clash;
          yield {
            says: `${itemAt(board.fixed, i).name} and ${itemAt(board.fixed, j).name} both take ${says}.`,
            at: ref("board", board.id, "fixed", i, ...mine),
            related: [{ says: `${itemAt(board.fixed, j).name} takes it here.`, at: ref("board", board.id, "fixed", j, ...other) }],
            hint: "Correct one of them, limit it to some revisions, or say which window asserts an overlay line that the other yields to.",
          };
        }
      }
      yield* sockets(board, bus);
    }
  },
};

/** Things that need different amounts of memory are never there together. */
function sameMemory(board: Board, i: number, j: number): boolean {
  const a = itemAt(board.fixed, i).when_memory?.map(bytes);
  const b = itemAt(board.fixed, j).when_memory?.map(bytes);
  return !a || !b || a.some((m) => b.includes(m));
}

type Path = readonly (string | number)[];

function clashOf(a: ClaimSite, b: ClaimSite, bus: Bus): [string, Path, Path] | undefined {
  const line = (name: string) => lineId(bus, name) ?? name;
  for (const [i, x] of listed(a.claims.io).entries())
    for (const [j, y] of listed(b.claims.io).entries())
      if (meetIo(x, y, bus.io_address_bits)) return [`ports at ${hex(x.base)}`, ["io", i], ["io", j]];
  for (const [i, x] of listed(a.claims.memory).entries())
    for (const [j, y] of listed(b.claims.memory).entries())
      if (meetMemory(x, y, bus)) return [`memory at ${hex(x.base)}`, ["memory", i], ["memory", j]];
  for (const [i, x] of listed(a.claims.interrupts).entries())
    for (const [j, y] of listed(b.claims.interrupts).entries())
      if (line(x.line) === line(y.line) && !(x.shareable && y.shareable))
        return [`interrupt line ${x.line}`, ["interrupts", i], ["interrupts", j]];
  for (const [i, x] of listed(a.claims.dma).entries())
    for (const [j, y] of listed(b.claims.dma).entries())
      if (x.channel === y.channel && !(x.shareable && y.shareable)) return [`DMA channel ${x.channel}`, ["dma", i], ["dma", j]];
  return undefined;
}

/** Two firmware sockets at one window must hold different bytes of it (even and odd). */
function* sockets(board: Board, bus: Bus): Iterable<Draft> {
  for (const [i, a] of board.firmware_sockets.entries()) {
    for (const [j, b] of board.firmware_sockets.slice(0, i).entries()) {
      const lanes = new Set([a.lane ?? "whole", b.lane ?? "whole"]);
      const apart = lanes.size === 2 && !lanes.has("whole");
      if (apart || !meetRevisions(a.revisions, b.revisions) || !meetMemory(a.window, b.window, bus)) continue;
      yield {
        says: `Firmware sockets ${a.id} and ${b.id} answer at the same addresses.`,
        at: ref("board", board.id, "firmware_sockets", i, "window", "base"),
        related: [{ says: `${b.id} answers here.`, at: ref("board", board.id, "firmware_sockets", j, "window", "base") }],
        hint: "Correct a window, or say with lane which one holds the even and which the odd bytes.",
      };
    }
  }
}
